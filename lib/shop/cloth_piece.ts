import { checksFor } from "../check/mod.ts";

const check = checksFor("plan a piece of cloth");

/** A corner of an outline. */
export interface OutlinePoint {
  /** Along the part's x direction [m]. */
  readonly x: number;
  /** Along the part's y direction [m]. */
  readonly y: number;
}

/** A rectangle along the part's axes. */
export interface RectangleShape {
  /** Along x [m]. */
  readonly length: number;
  /** Along y [m]. */
  readonly width: number;
}

/** A closed outline, its corners in order either way round. */
export interface OutlineShape {
  /** The corners. */
  readonly outline: readonly OutlinePoint[];
}

/** A piece of cloth of a ply or a patch. */
export interface ClothPiece {
  /** Which ply or patch it is. */
  readonly name: string;
  /** Shape of what it has to cover. */
  readonly shape: RectangleShape | OutlineShape;
  /** From the part's x to the warp, positive towards y [deg]. */
  readonly angleDeg: number;
  /** Extra cloth all around, trimmed after cure [m]. */
  readonly trim: number;
  /** Pieces of this kind [1]. */
  readonly count: number;
}

/** One blank on the roll: the upright rectangle around a piece or a strip of it. */
export interface BlankPiece {
  /** Which piece it is, and which strip of how many. */
  readonly name: string;
  /** From the part's x to the warp [deg]. */
  readonly angleDeg: number;
  /** Along the roll [m]. */
  readonly length: number;
  /** Across the roll [m]. */
  readonly width: number;
  /** Cloth in the piece itself, trim included; a strip with its overlap [m²]. */
  readonly area: number;
  /** Strips that its piece is cut in; 1 if it fits the roll [1]. */
  readonly strips: number;
  /** Corners of the piece within the blank, from its near corner; empty for a strip [m]. */
  readonly corners: readonly OutlinePoint[];
}

/** More blanks of one piece than this are a slip of the unit. */
const MOST_BLANKS = 10_000;

/** Area and perimeter of an outline. */
export interface OutlineMeasures {
  /** Area [m²]. */
  readonly area: number;
  /** Perimeter [m]. */
  readonly perimeter: number;
}

/**
 * Area and perimeter of a closed outline.
 *
 * Formula: area ½|Σ(x_i y_{i+1} − x_{i+1} y_i)|
 *
 * Range: three corners or more, no crossing.
 *
 * Source: the surveyor's formula.
 *
 * @param outline Corners in order [m].
 * @returns Area [m²] and perimeter [m].
 * @throws {InputError} If there are fewer than three corners, one is no number, or there is no area.
 *
 * @example
 * ```ts
 * import { outlineMeasures } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const triangle = [{ x: 0, y: 0 }, { x: 3, y: 0 }, { x: 0, y: 4 }];
 * assertAlmostEquals(outlineMeasures(triangle).area, 6, 1e-12);
 * assertAlmostEquals(outlineMeasures(triangle).perimeter, 12, 1e-12);
 * ```
 */
export function outlineMeasures(outline: readonly OutlinePoint[]): OutlineMeasures {
  check.list("outline", outline, 3);
  for (const point of outline) {
    check.object("corner", point);
    check.finite("x of a corner", point.x, "m");
    check.finite("y of a corner", point.y, "m");
  }
  // From the first corner, so that an outline far from the origin keeps its digits.
  const origin = outline[0]!;
  let [twice, perimeter] = [0, 0];
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    twice += (a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y);
    perimeter += Math.hypot(b.x - a.x, b.y - a.y);
  });
  const area = check.result("area of the outline", Math.abs(twice) / 2, "m²");
  check.positive("area of the outline", area, "m²");
  return check.results({ area, perimeter });
}

/**
 * Blanks of a piece on a roll: the piece turned so that its warp runs along the roll, with its trim,
 * in strips where it is wider than the roll. One entry a blank, all pieces of its count.
 *
 * Formula: a rectangle L × W at angle θ takes L|cos θ| + W|sin θ| along the roll and
 * L|sin θ| + W|cos θ| across; strips ⌈(B − o)/(R − o)⌉ of (B + (n − 1)o)/n
 *
 * Range: trim of an outline with hollow corners is counted a little too large.
 *
 * Source: plane geometry; area of a widened outline A + P t + π t².
 *
 * @param piece Shape, angle, trim and count.
 * @param roll Width of the roll and overlap at a join [m].
 * @returns The blanks.
 * @throws {InputError} If a size is not above 0 or the angle no number.
 *
 * @example A square at 45° has its diagonal along the roll
 * ```ts
 * import { blankOf } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const square = { length: 0.5, width: 0.5 };
 * const [blank] = blankOf(
 *   { name: "patch", shape: square, angleDeg: 45, trim: 0, count: 1 },
 *   { width: 1.2, joinOverlap: 0.05 },
 * );
 * assertAlmostEquals(blank!.length, Math.SQRT1_2, 1e-12);
 * ```
 */
export function blankOf(
  piece: ClothPiece,
  roll: { readonly width: number; readonly joinOverlap: number },
): readonly BlankPiece[] {
  const { name, angleDeg, trim, count } = check.object("piece", piece);
  check.text("name of a piece", name);
  check.finite("angle", angleDeg, "°");
  check.nonNegative("trim", trim, "m");
  check.count(`count of ${name}`, count, 1);
  check.positive("width of the roll", check.object("roll", roll).width, "m");
  const { outline, area, margin } = trimmed(piece);
  const turnedOutline = outline.map((point) => alongRoll(point, angleDeg));
  const [left, bottom] = [
    Math.min(...turnedOutline.map(({ x }) => x)) - margin,
    Math.min(...turnedOutline.map(({ y }) => y)) - margin,
  ];
  const length = Math.max(...turnedOutline.map(({ x }) => x)) + margin - left;
  const across = Math.max(...turnedOutline.map(({ y }) => y)) + margin - bottom;
  const { width, joinOverlap } = roll;
  // A hair above a whole number is rounding, not a strip.
  const strips = Math.max(
    1,
    Math.ceil((across - joinOverlap) / (width - joinOverlap) * (1 - 1e-12)),
  );
  const stripWidth = (across + (strips - 1) * joinOverlap) / strips;
  if (!(strips * count <= MOST_BLANKS)) {
    check.refuse(`blanks of ${name}`, strips * count, `must be ${MOST_BLANKS} at most`);
  }
  const blank = (label: string): BlankPiece =>
    check.results({
      name: label,
      angleDeg,
      length,
      width: stripWidth,
      area: strips === 1 ? area : area / strips + joinOverlap * length * (strips - 1) / strips,
      strips,
      corners: strips > 1 ? [] : turnedOutline.map(({ x, y }) => ({ x: x - left, y: y - bottom })),
    });
  return Array.from(
    { length: count },
    () =>
      strips === 1
        ? [blank(name)]
        : Array.from({ length: strips }, (_, i) => blank(`${name}, strip ${i + 1} of ${strips}`)),
  )
    .flat();
}

/** The outline with its trim: a rectangle grows itself, an outline gets a margin all around. */
function trimmed(
  piece: ClothPiece,
): { outline: readonly OutlinePoint[]; area: number; margin: number } {
  const { shape, trim } = piece;
  check.object("shape", shape);
  if ("outline" in shape) {
    const { area, perimeter } = outlineMeasures(shape.outline);
    return {
      outline: shape.outline,
      area: area + perimeter * trim + Math.PI * trim ** 2,
      margin: trim,
    };
  }
  const length = check.positive("length", shape.length, "m") + 2 * trim;
  const width = check.positive("width", shape.width, "m") + 2 * trim;
  return {
    outline: [{ x: 0, y: 0 }, { x: length, y: 0 }, { x: length, y: width }, { x: 0, y: width }],
    area: length * width,
    margin: 0,
  };
}

/** A point of the part seen from the roll: along the warp, and across it. */
function alongRoll({ x, y }: OutlinePoint, angleDeg: number): OutlinePoint {
  const { sin, cos } = exactSineCosine(angleDeg);
  return { x: x * cos + y * sin, y: y * cos - x * sin };
}

/** Sine and cosine that are 0 and ±1 exactly at multiples of 90°. */
function exactSineCosine(angleDeg: number): { sin: number; cos: number } {
  const quarter = angleDeg / 90;
  if (!Number.isInteger(quarter)) {
    const angle = angleDeg * Math.PI / 180;
    return { sin: Math.sin(angle), cos: Math.cos(angle) };
  }
  const turn = ((quarter % 4) + 4) % 4;
  return { sin: [0, 1, 0, -1][turn]!, cos: [1, 0, -1, 0][turn]! };
}
