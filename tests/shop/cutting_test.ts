import { assert, assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import {
  blankOf,
  type ClothPiece,
  type CoreTask,
  cutCore,
  cutFromRoll,
  outlineMeasures,
  planBag,
  type RollTask,
} from "../../lib/shop/mod.ts";

const roll = { width: 1.2, joinOverlap: 0.05 };
const piece: ClothPiece = {
  name: "skin",
  shape: { length: 1, width: 0.4 },
  angleDeg: 0,
  trim: 0.02,
  count: 1,
};

Deno.test("a blank along the roll, across it and on the bias", () => {
  const along = blankOf(piece, roll)[0]!;
  assertClose([along.length, along.width, along.area], [1.04, 0.44, 0.4576], { relative: 1e-14 });
  const across = blankOf({ ...piece, angleDeg: 90 }, roll)[0]!;
  assertClose([across.length, across.width], [0.44, 1.04], { relative: 1e-14 });
  // 1.04 cos 30° + 0.44 sin 30° and 1.04 sin 30° + 0.44 cos 30°
  const bias = blankOf({ ...piece, angleDeg: -30 }, roll)[0]!;
  assertClose(
    [bias.length, bias.width],
    [1.04 * Math.sqrt(0.75) + 0.22, 0.52 + 0.44 * Math.sqrt(0.75)],
    { relative: 1e-13 },
  );
  assertClose(bias.area, 0.4576, { relative: 1e-14 });
  // Quarter turns leave no rounding, however often.
  for (const angleDeg of [180, 360, -180, 90, 270, -90, 450]) {
    const [blank] = blankOf({ ...piece, angleDeg }, roll);
    const { length, width, corners } = blank!;
    const upright = angleDeg % 180 === 0 ? along : across;
    assertEquals([length, width], [upright.length, upright.width], `${angleDeg}°`);
    assertClose(outlineMeasures(corners).area, 0.4576, { relative: 1e-14 });
    assertClose(outlineMeasures(corners).perimeter, 2.96, { relative: 1e-14 });
  }
});

Deno.test("in a balanced cloth each piece may lie its own way", () => {
  // Both lie 0.9 m across a roll of 1 m only if one is turned and the other is not: 0.3 + 0.3 m of it;
  // all as given or all turned it is 0.9 + 0.3 m.
  const strip = { name: "strip", angleDeg: 0, trim: 0, count: 1 };
  const pieces = [
    { ...strip, shape: { length: 0.9, width: 0.3 } },
    { ...strip, shape: { length: 0.3, width: 0.9 } },
  ];
  const cloth = { name: "twill", rollWidth: 1, arealWeight: 0.2, joinOverlap: 0.05, pieces };
  assertClose(cutFromRoll({ ...cloth, balanced: true }).rollLength, 0.6, { relative: 1e-14 });
  assertClose(cutFromRoll({ ...cloth, balanced: false }).rollLength, 1.2, { relative: 1e-14 });
});

Deno.test("the corners of a blank span it and have the piece's area", () => {
  const [blank] = blankOf({ ...piece, angleDeg: 37 }, roll);
  const { corners, length, width, area } = blank!;
  assertClose(outlineMeasures(corners).area, area, { relative: 1e-13 });
  assertClose(Math.min(...corners.map(({ x }) => x)), 0, { absolute: 1e-15 });
  assertClose(Math.min(...corners.map(({ y }) => y)), 0, { absolute: 1e-15 });
  assertClose(Math.max(...corners.map(({ x }) => x)), length, { relative: 1e-14 });
  assertClose(Math.max(...corners.map(({ y }) => y)), width, { relative: 1e-14 });
});

Deno.test("an outline gets its trim all around", () => {
  const outline = [{ x: 1, y: 1 }, { x: 1.6, y: 1 }, { x: 1.6, y: 1.8 }];
  const [blank] = blankOf(
    { name: "web", shape: { outline }, angleDeg: 0, trim: 0.1, count: 1 },
    roll,
  );
  // Triangle of 0.6, 0.8 and 1 m: area 0.24, perimeter 2.4; widened 0.24 + 0.24 + 0.01π.
  assertClose(blank!.area, 0.48 + 0.01 * Math.PI, { relative: 1e-13 });
  assertClose([blank!.length, blank!.width], [0.8, 1], { relative: 1e-13 });
});

Deno.test("a piece wider than the roll is cut in strips that overlap", () => {
  const wide = { ...piece, shape: { length: 1, width: 2.46 }, trim: 0 };
  // (2.46 − 0.05)/1.15 = 2.1: three strips of (2.46 + 0.1)/3 m.
  const strips = blankOf(wide, roll);
  // Which part of the outline a strip has is not told.
  assertEquals(strips.map(({ corners }) => corners.length), strips.map(() => 0));
  assertEquals(strips.map(({ name }) => name), [
    "skin, strip 1 of 3",
    "skin, strip 2 of 3",
    "skin, strip 3 of 3",
  ]);
  assertClose(strips[0]!.width, 2.56 / 3, { relative: 1e-14 });
  assertClose(strips.reduce((sum, { area }) => sum + area, 0), 2.56, { relative: 1e-14 });
  const exact = { ...piece, shape: { length: 1, width: 2.35 }, trim: 0 };
  assertEquals(blankOf(exact, roll).length, 2);
});

const task: RollTask = {
  name: "twill 200",
  rollWidth: 1.2,
  arealWeight: 0.2,
  balanced: false,
  joinOverlap: 0.05,
  pieces: [
    { ...piece, trim: 0, count: 3 },
    { name: "patch", shape: { length: 0.3, width: 0.3 }, angleDeg: 45, trim: 0, count: 2 },
  ],
};

Deno.test("shelves by hand: three skins side by side, two bias patches on the next shelf", () => {
  const list = cutFromRoll(task);
  const diagonal = 0.3 * Math.SQRT2;
  assertClose(list.rollLength, 1 + diagonal, { relative: 1e-13 });
  assertClose(list.pieceArea, 1.38, { relative: 1e-13 });
  assertClose(list.pieceMass, 0.276, { relative: 1e-13 });
  assertClose(list.waste, 1 - 1.38 / (1.2 * (1 + diagonal)), { relative: 1e-12 });
  assertClose(list.pieces.map(({ fromEdge }) => fromEdge), [0, 0.4, 0.8, 0, diagonal], {
    absolute: 1e-13,
  });
  assertClose(list.pieces.map(({ fromStart }) => fromStart), [0, 0, 0, 1, 1], {
    absolute: 1e-13,
  });
  assertEquals(list.notes.length, 0);
});

Deno.test("a balanced cloth is turned where that saves cloth, others never", () => {
  const two = { ...task, pieces: [{ ...piece, trim: 0, count: 2 }] };
  assertClose(cutFromRoll(two).rollLength, 1, { relative: 1e-14 });
  assertClose(cutFromRoll({ ...two, balanced: true }).rollLength, 0.8, { relative: 1e-14 });
  assertEquals(cutFromRoll({ ...two, balanced: true }).pieces[0]?.angleDeg, 90);
  const wide = { ...task, pieces: [{ ...piece, shape: { length: 1, width: 1.5 }, count: 1 }] };
  assertEquals(cutFromRoll(wide).notes.length, 1);
});

const core: CoreTask = {
  name: "foam",
  sheetLength: 1.2,
  sheetWidth: 0.6,
  thickness: 0.006,
  density: 80,
  turnable: false,
  pieces: [{ name: "sole", length: 1, width: 0.5, rampLength: 0.02, count: 1 }],
};

Deno.test("the longest blanks are laid first, of these the widest, whatever order they came in", () => {
  const rollOf = (sizes: readonly (readonly [along: number, across: number])[]): number =>
    cutFromRoll({
      ...{ name: "UD", rollWidth: 1, arealWeight: 0.2, joinOverlap: 0.05, balanced: false },
      pieces: sizes.map(([length, width], i) => ({
        ...{ name: `piece ${i}`, shape: { length, width }, angleDeg: 0, trim: 0, count: 1 },
      })),
    }).rollLength;
  // The short one lies beside the long one, not before it.
  assertClose(rollOf([[0.1, 0.6], [0.5, 0.4]]), 0.5, { relative: 1e-14 });
  // 0.6 + 0.4 and 0.5 + 0.5 fill two shelves; in the order given it would be three.
  assertClose(rollOf([[0.3, 0.4], [0.3, 0.5], [0.3, 0.6], [0.3, 0.5]]), 0.6, { relative: 1e-14 });
});

Deno.test("core with ramps: the prismoid by hand", () => {
  // (0.5 + 4 × 0.98 × 0.48 + 0.96 × 0.46)/6 × 6 mm
  const list = cutCore(core);
  assertClose(list.volume, 0.001 * (0.5 + 4 * 0.98 * 0.48 + 0.96 * 0.46), { relative: 1e-13 });
  assertClose(list.mass, 0.08 * (0.5 + 4 * 0.98 * 0.48 + 0.96 * 0.46), { relative: 1e-13 });
  assertClose(list.waste, 1 - 0.5 / 0.72, { relative: 1e-13 });
  assertEquals([list.sheets, list.tiles.length, list.jointLength], [1, 1, 0]);
});

Deno.test("core larger than a sheet comes in tiles with butt joints", () => {
  const large = { ...core, pieces: [{ ...core.pieces[0]!, length: 2.2, width: 1, rampLength: 0 }] };
  const list = cutCore(large);
  assertEquals([list.tiles.length, list.sheets], [4, 4]);
  assertClose(list.jointLength, 1 + 2.2, { relative: 1e-14 });
  assertEquals(list.tiles[3], {
    name: "sole, tile 4 of 4",
    length: 1.1,
    width: 0.5,
    sheet: 4,
    fromStart: 0,
    fromEdge: 0,
  });
  // Two of 3 × 0.9 m: three tiles along, two across: 2 × (2 × 0.9 + 1 × 3) m of joint.
  const two = { ...core.pieces[0]!, length: 3, width: 0.9, rampLength: 0, count: 2 };
  const many = cutCore({ ...core, sheetLength: 1.22, sheetWidth: 0.81, pieces: [two] });
  assertEquals(many.tiles.length, 12);
  assertClose(many.jointLength, 9.6, { relative: 1e-14 });
  // Whole sheets take no tile more for rounding.
  const whole = { ...two, length: 3 * 1.22, width: 0.81, count: 1 };
  assertEquals(
    cutCore({ ...core, sheetLength: 1.22, sheetWidth: 0.81, pieces: [whole] }).tiles.length,
    3,
  );
  // 0.55 × 1.1 m upright takes two tiles, turned it fits one sheet.
  const tall = {
    ...core,
    pieces: [{ ...core.pieces[0]!, length: 0.55, width: 1.1, rampLength: 0 }],
  };
  assertEquals(cutCore(tall).tiles.length, 2);
  assertEquals(cutCore({ ...tall, turnable: true }).tiles.length, 1);
});

const bag = {
  length: 1.4,
  width: 0.6,
  height: 0.1,
  style: "on the mould",
  margin: 0.05,
  flange: 0.08,
  pleatShare: 0.25,
  pleats: 6,
  tapePerPleat: 0.25,
  spareShare: 0.1,
} as const;

Deno.test("bag, layers and tape by hand", () => {
  const plan = planBag(bag);
  // Layers 1.7 × 0.9; film 1.25 × 1.76 by 1.25 × 0.96; tape 2(1.4 + 0.6 + 0.32) + 1.5; all + 10 %.
  assertEquals(plan.layers.map(({ name }) => name), [
    "peel ply",
    "perforated film",
    "breather",
    "bag film",
  ]);
  assertClose(plan.layers.map(({ area }) => area), [1.683, 1.683, 1.683, 2.2 * 1.2 * 1.1], {
    relative: 1e-13,
  });
  assertClose(plan.tapeLength, 6.14 * 1.1, { relative: 1e-13 });
  const envelope = planBag({ ...bag, style: "envelope" });
  assertClose(envelope.layers[3]!.area, 2 * plan.layers[3]!.area, { relative: 1e-14 });
  assertClose(envelope.layers[3]!.length, 4.4, { relative: 1e-14 });
  assert(plan.order.length > 4 && plan.notes.length > 0);
});

Deno.test("cutting refuses what cannot be", () => {
  assertThrows(
    () => blankOf({ ...piece, shape: { length: 0, width: 1 } }, roll),
    InputError,
    "length is 0 m",
  );
  assertThrows(
    () => blankOf({ ...piece, shape: { outline: [{ x: 0, y: 0 }] } }, roll),
    InputError,
    "a list of 3 or more",
  );
  const line = [{ x: 0, y: 0 }, { x: 1, y: 1 }, { x: 2, y: 2 }];
  assertThrows(() => outlineMeasures(line), InputError, "area of the outline is 0 m²");
  assertThrows(() => outlineMeasures([line[0]!, line[1]!, 3 as never]), InputError, "corner is 3");
  assertThrows(() => cutFromRoll({ ...task, pieces: [] }), InputError, "pieces is a list of 0");
  assertThrows(
    () => cutFromRoll({ ...task, joinOverlap: 2 }),
    InputError,
    "below the roll's width",
  );
  assertThrows(() => cutFromRoll(undefined as never), InputError, "task is missing");
  assertThrows(
    () => cutCore({ ...core, pieces: [{ ...core.pieces[0]!, rampLength: 0.3 }] }),
    InputError,
    "must not be above half of a side, 0.25 m",
  );
  assertThrows(
    () => cutCore({ ...core, sheetLength: 1e-4, sheetWidth: 1e-4 }),
    InputError,
    "must be 10000 at most",
  );
  assertThrows(() => planBag({ ...bag, pleatShare: 2 }), InputError, "between 0 and 1");
  assertThrows(
    () => planBag({ ...bag, style: "tent" as never }),
    InputError,
    "must be one of: on the mould, envelope",
  );
});
