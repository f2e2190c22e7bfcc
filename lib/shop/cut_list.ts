import { checksFor } from "../check/mod.ts";
import { placeInShelves, type Rectangle } from "./_shelves.ts";
import { blankOf, type BlankPiece, type ClothPiece } from "./cloth_piece.ts";

const check = checksFor("plan the cutting");

/** A roll of cloth and what is to be cut from it. */
export interface RollTask {
  /** Name of the cloth. */
  readonly name: string;
  /** Usable width of the roll [m]. */
  readonly rollWidth: number;
  /** Dry mass per area [kg/m²]. */
  readonly arealWeight: number;
  /** Whether warp and weft are alike, so that a piece may be turned by 90°. */
  readonly balanced: boolean;
  /** Overlap where a piece wider than the roll is joined [m]. */
  readonly joinOverlap: number;
  /** The pieces. */
  readonly pieces: readonly ClothPiece[];
}

/** A piece on the roll. */
export interface PlacedPiece extends BlankPiece {
  /** From the edge of the roll to the blank [m]. */
  readonly fromEdge: number;
  /** From the start of the roll to the blank [m]. */
  readonly fromStart: number;
}

/** What to cut from one roll. */
export interface CutList {
  /** Name of the cloth. */
  readonly name: string;
  /** Usable width of the roll [m]. */
  readonly rollWidth: number;
  /** The blanks with their places, for a sketch. */
  readonly pieces: readonly PlacedPiece[];
  /** Length of roll that they take [m]. */
  readonly rollLength: number;
  /** Cloth in the pieces, trim and joins included [m²]. */
  readonly pieceArea: number;
  /** Mass of that cloth [kg]. */
  readonly pieceMass: number;
  /** Share of the roll's length used that is not in a piece [1]. */
  readonly waste: number;
  /** What to know about it. */
  readonly notes: readonly string[];
}

/**
 * Pieces to cut from a roll and where they lie on it.
 *
 * Each piece is laid out by the upright rectangle around it; the rectangles stand in shelves across
 * the roll, the longest first. A bias piece wastes the corners of its rectangle: a patient cutter
 * saves some of that.
 *
 * Formula: waste = 1 − area of pieces/(width × length used)
 *
 * Range: a piece wider than the roll is cut in strips with an overlap; stagger the joins from ply to
 * ply.
 *
 * Source: first-fit shelves in order of decreasing height (E. G. Coffman and others, SIAM J. Comput.
 * 9, 1980), from memory.
 *
 * @param task The roll and its pieces.
 * @returns Blanks with places, length of roll, area, mass and waste.
 * @throws {InputError} If a size is not above 0 or there is no piece.
 *
 * @example
 * ```ts
 * import { cutFromRoll } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const list = cutFromRoll({
 *   name: "200 g cloth", rollWidth: 1, arealWeight: 0.2, balanced: true, joinOverlap: 0.05,
 *   pieces: [{ name: "skin", shape: { length: 0.9, width: 0.5 }, angleDeg: 0, trim: 0, count: 4 }],
 * });
 * assertAlmostEquals(list.rollLength, 1.8, 1e-12);
 * assertAlmostEquals(list.waste, 0, 1e-12);
 * ```
 */
export function cutFromRoll(task: RollTask): CutList {
  check.object("task", task);
  const { name, rollWidth, arealWeight, balanced, joinOverlap } = task;
  check.text("name of the cloth", name);
  check.positive("width of the roll", rollWidth, "m");
  check.positive("areal weight", arealWeight, "kg/m²");
  check.nonNegative("overlap at a join", joinOverlap, "m");
  if (!(joinOverlap < rollWidth)) {
    check.refuse(
      "overlap at a join",
      joinOverlap,
      `must be below the roll's width, ${rollWidth} m`,
    );
  }
  const roll = { width: rollWidth, joinOverlap };
  const asGiven = check.list("pieces", task.pieces).flatMap((piece) => blankOf(piece, roll));
  // A balanced cloth may be turned: all given ways are tried, and the shortest roll is kept.
  const ways = balanced
    ? [
      asGiven,
      task.pieces.flatMap((piece) => blankOf(turned(piece), roll)),
      task.pieces.flatMap((piece) => flatter(blankOf(piece, roll), blankOf(turned(piece), roll))),
      task.pieces.flatMap((piece) => flatter(blankOf(turned(piece), roll), blankOf(piece, roll))),
    ]
    : [asGiven];
  const best = ways
    .map((blanks) => ({ blanks, shelving: shelve(blanks, rollWidth) }))
    .reduce((a, b) => b.shelving.lengthUsed < a.shelving.lengthUsed ? b : a);
  const pieceArea = best.blanks.reduce((sum, { area }) => sum + area, 0);
  const rollLength = best.shelving.lengthUsed;
  return check.results({
    name,
    rollWidth,
    pieces: best.blanks.map((blank, i) => ({
      ...blank,
      fromEdge: best.shelving.places[i]!.across,
      fromStart: best.shelving.places[i]!.along,
    })),
    rollLength,
    pieceArea,
    pieceMass: pieceArea * arealWeight,
    // Pieces that fill the roll leave a waste of rounding, maybe below nothing.
    waste: Math.max(0, 1 - pieceArea / (rollWidth * rollLength)),
    notes: best.blanks.some(({ strips }) => strips > 1)
      ? ["Some pieces are wider than the roll: stagger their joins from ply to ply."]
      : [],
  });
}

function turned(piece: ClothPiece): ClothPiece {
  return { ...piece, angleDeg: check.finite("angle", piece.angleDeg, "°") + 90 };
}

/** Of two ways to lay a piece, the first unless the second makes fewer or lower blanks. */
function flatter(a: readonly BlankPiece[], b: readonly BlankPiece[]): readonly BlankPiece[] {
  if (a.length !== b.length) return a.length < b.length ? a : b;
  return a[0]!.length <= b[0]!.length ? a : b;
}

function shelve(blanks: readonly BlankPiece[], width: number): ReturnType<typeof placeInShelves> {
  const rectangles = blanks.map((blank): Rectangle => ({
    across: blank.width,
    along: blank.length,
  }));
  return placeInShelves(rectangles, { width, length: Infinity });
}
