/** A rectangle to be placed: `across` the roll or sheet, `along` its length. */
export interface Rectangle {
  readonly across: number;
  readonly along: number;
}

/** Where a rectangle lies: its near corner, and which sheet. */
export interface Place {
  readonly sheet: number;
  readonly across: number;
  readonly along: number;
}

/** The space that rectangles are placed on. */
export interface Stock {
  /** Width of roll or sheet. */
  readonly width: number;
  /** Length of a sheet; Infinity for a roll. */
  readonly length: number;
}

/** Rectangles placed in shelves. */
export interface Shelving {
  /** One place for each rectangle, in the order given. */
  readonly places: readonly Place[];
  /** Length used of the last sheet, or of the roll. */
  readonly lengthUsed: number;
  /** Sheets used; 1 for a roll. */
  readonly sheets: number;
}

interface Shelf {
  readonly sheet: number;
  readonly along: number;
  readonly depth: number;
  used: number;
}

/** Slack for pieces that fill the width exactly but for rounding. */
const ROUNDING = 1e-9;

/**
 * Places rectangles in shelves across the width, the longest first, each on the first shelf with
 * room. Each rectangle must fit the stock.
 */
export function placeInShelves(rectangles: readonly Rectangle[], stock: Stock): Shelving {
  const order = rectangles.map((_, i) => i).toSorted((a, b) =>
    rectangles[b]!.along - rectangles[a]!.along || rectangles[b]!.across - rectangles[a]!.across ||
    a - b
  );
  const shelves: Shelf[] = [];
  /** Length used of each sheet. */
  const filled: number[] = [];
  const places: Place[] = [];
  for (const index of order) {
    const { across, along } = rectangles[index]!;
    let shelf = shelves.find((one) =>
      along <= one.depth && one.used + across <= stock.width * (1 + ROUNDING)
    );
    if (shelf === undefined) {
      let sheet = filled.findIndex((used) => used + along <= stock.length * (1 + ROUNDING));
      if (sheet < 0) sheet = filled.push(0) - 1;
      shelf = { sheet, along: filled[sheet]!, depth: along, used: 0 };
      filled[sheet]! += along;
      shelves.push(shelf);
    }
    places[index] = { sheet: shelf.sheet, across: shelf.used, along: shelf.along };
    shelf.used += across;
  }
  return { places, lengthUsed: filled.at(-1)!, sheets: filled.length };
}
