import { checksFor } from "../check/mod.ts";
import { placeInShelves } from "./_shelves.ts";

const check = checksFor("plan the core");

/** A rectangle of core, its edges ramped down to the skin. */
export interface CorePiece {
  /** Which piece it is. */
  readonly name: string;
  /** Along the sheet's length, at the foot of the ramp [m]. */
  readonly length: number;
  /** Across the sheet, at the foot of the ramp [m]. */
  readonly width: number;
  /** Length of the ramp on each edge; 0 for a square edge [m]. */
  readonly rampLength: number;
  /** Pieces of this kind [1]. */
  readonly count: number;
}

/** Core sheets and what is to be cut from them. */
export interface CoreTask {
  /** Name of the core. */
  readonly name: string;
  /** Length of a sheet [m]. */
  readonly sheetLength: number;
  /** Width of a sheet [m]. */
  readonly sheetWidth: number;
  /** Thickness [m]. */
  readonly thickness: number;
  /** Density [kg/m³]. */
  readonly density: number;
  /** Whether the core is alike both ways (a foam), so that a piece may be turned by 90°. */
  readonly turnable: boolean;
  /** The pieces. */
  readonly pieces: readonly CorePiece[];
}

/** A tile of core on its sheet. */
export interface CoreTile {
  /** Which piece, and which tile of how many. */
  readonly name: string;
  /** Sheet it is cut from, from 1 [1]. */
  readonly sheet: number;
  /** Along the sheet [m]. */
  readonly length: number;
  /** Across the sheet [m]. */
  readonly width: number;
  /** From the sheet's end [m]. */
  readonly fromStart: number;
  /** From the sheet's side [m]. */
  readonly fromEdge: number;
}

/** What to cut from the core sheets. */
export interface CoreList {
  /** Name of the core. */
  readonly name: string;
  /** The tiles with their places, for a sketch. */
  readonly tiles: readonly CoreTile[];
  /** Sheets to buy [1]. */
  readonly sheets: number;
  /** Area of the pieces at the foot of their ramps [m²]. */
  readonly footArea: number;
  /** Core that stays in the part, ramps cut off [m³]. */
  readonly volume: number;
  /** Mass of that core [kg]. */
  readonly mass: number;
  /** Length of butt joints between tiles, to be glued and taped [m]. */
  readonly jointLength: number;
  /** Share of the sheets' area that is not in a piece [1]. */
  readonly waste: number;
}

/**
 * Core sheets for the pieces of a part, each in tiles where it is larger than a sheet.
 *
 * Formula: volume of a piece c (A_foot + 4 A_middle + A_top)/6, with sides shorter by one ramp in
 * the middle and by two at the top; waste = 1 − foot area/(sheets × area of a sheet)
 *
 * Range: ramps on all four edges, up to half of the shorter side.
 *
 * Source: prismoid formula (exact here); first-fit shelves in order of decreasing height.
 *
 * @param task Sheets and pieces.
 * @returns Tiles with places, number of sheets, volume, mass, joints and waste.
 * @throws {InputError} If a size is not above 0 or a ramp longer than half of its side.
 *
 * @example
 * ```ts
 * import { cutCore } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const list = cutCore({
 *   name: "foam", sheetLength: 1.2, sheetWidth: 0.6, thickness: 0.006, density: 80,
 *   turnable: true,
 *   pieces: [{ name: "sole", length: 1, width: 0.5, rampLength: 0, count: 2 }],
 * });
 * assertEquals(list.sheets, 2);
 * assertAlmostEquals(list.mass, 2 * 0.5 * 0.006 * 80, 1e-12);
 * ```
 */
export function cutCore(task: CoreTask): CoreList {
  check.object("task", task);
  const { name, sheetLength, sheetWidth, thickness, density, turnable } = task;
  check.text("name of the core", name);
  check.positive("length of a sheet", sheetLength, "m");
  check.positive("width of a sheet", sheetWidth, "m");
  check.positive("thickness", thickness, "m");
  check.positive("density", density, "kg/m³");
  const stock = { length: sheetLength, width: sheetWidth };
  const pieces = check.list("pieces", task.pieces);
  const cut = pieces.map((piece) => {
    checkPiece(piece);
    return bestTiling(piece, { stock, turnable });
  });
  const tiles = cut.flatMap(({ tiles }, i) =>
    Array.from({ length: pieces[i]!.count }, () => tiles).flat()
  );
  const shelving = placeInShelves(
    tiles.map(({ length, width }) => ({ along: length, across: width })),
    stock,
  );
  const total = (pick: (piece: CorePiece) => number): number =>
    pieces.reduce((sum, piece) => sum + piece.count * pick(piece), 0);
  const footArea = total(({ length, width }) => length * width);
  const volume = total((piece) => rampedVolume(piece, thickness));
  return check.results({
    name,
    tiles: tiles.map((tile, i) => ({
      ...tile,
      sheet: shelving.places[i]!.sheet + 1,
      fromStart: shelving.places[i]!.along,
      fromEdge: shelving.places[i]!.across,
    })),
    sheets: shelving.sheets,
    footArea,
    volume,
    mass: volume * density,
    jointLength: cut.reduce((sum, { joint }, i) => sum + joint * pieces[i]!.count, 0),
    waste: Math.max(0, 1 - footArea / (shelving.sheets * sheetLength * sheetWidth)),
  });
}

/** Volume of a slab whose four edges slope up to its full thickness. */
function rampedVolume({ length, width, rampLength }: CorePiece, thickness: number): number {
  const area = (inset: number): number => (length - 2 * inset) * (width - 2 * inset);
  return thickness / 6 * (area(0) + 4 * area(rampLength / 2) + area(rampLength));
}

type Tile = Pick<CoreTile, "name" | "length" | "width">;

interface Tiling {
  readonly tiles: readonly Tile[];
  readonly joint: number;
}

/** The piece as given or turned, whichever takes fewer tiles; as given if alike. */
function bestTiling(
  piece: CorePiece,
  { stock, turnable }: {
    readonly stock: { readonly length: number; readonly width: number };
    readonly turnable: boolean;
  },
): Tiling {
  const asGiven = tiling(piece, stock);
  if (!turnable) return asGiven;
  const turned = tiling({ ...piece, length: piece.width, width: piece.length }, stock);
  return turned.tiles.length < asGiven.tiles.length ? turned : asGiven;
}

function tiling(
  { name, length, width, count: pieces }: CorePiece,
  stock: { readonly length: number; readonly width: number },
): Tiling {
  // A hair above a whole number is rounding, not a tile.
  const parts = (size: number, sheet: number): number =>
    check.result("number of tiles", Math.max(1, Math.ceil(size / sheet * (1 - 1e-12))));
  const [along, across] = [parts(length, stock.length), parts(width, stock.width)];
  const count = along * across;
  if (!(count * pieces <= MOST_TILES)) {
    check.refuse(`tiles of ${name}`, count * pieces, `must be ${MOST_TILES} at most`);
  }
  return {
    tiles: Array.from({ length: count }, (_, i) => ({
      name: count === 1 ? name : `${name}, tile ${i + 1} of ${count}`,
      length: length / along,
      width: width / across,
    })),
    joint: (along - 1) * width + (across - 1) * length,
  };
}

/** More tiles of one piece than this are a slip of the unit. */
const MOST_TILES = 10_000;

function checkPiece(piece: CorePiece): void {
  const { name, length, width, rampLength, count } = check.object("piece", piece);
  check.text("name of a piece", name);
  check.positive(`length of ${name}`, length, "m");
  check.positive(`width of ${name}`, width, "m");
  check.nonNegative(`ramp of ${name}`, rampLength, "m");
  check.count(`count of ${name}`, count, 1);
  const most = Math.min(length, width) / 2;
  if (!(rampLength <= most)) {
    check.refuse(`ramp of ${name}`, rampLength, `must not be above half of a side, ${most} m`);
  }
}
