import fc from "fast-check";
import {
  type CodeLayer,
  codeOfLayers,
  layersOfCode,
  type OrientationCode,
  type OrientationEntry,
  readOrientationCode,
  writeOrientationCode,
} from "../../lib/laminate/mod.ts";
import { assertEquals } from "@std/assert";

const seeded = { seed: 20261125, numRuns: 500 };

const angleDeg = fc.oneof(
  fc.constantFrom(0, 90, 45, -45, 30, -60, 22.5, -90),
  fc.integer({ min: -9000, max: 9000 }).map((hundredths) => hundredths / 100 + 0),
);
const count = fc.constantFrom(1, 1, 1, 2, 3, 12);
const material = fc.constantFrom("C", "G", "E2", "core", "balsa-20", "Glas");
const named = fc.option(material).map((key) => key === null ? {} : { material: key });

const one: fc.Arbitrary<OrientationEntry> = fc.oneof(
  fc.record({ angleDeg, count, named }).map(({ named, ...rest }) => ({
    ...{ kind: "ply" as const, ...rest, middle: false, ...named },
  })),
  fc.record({ angleDeg, count, named }).map(({ named, ...rest }) => ({
    ...{ kind: "cloth" as const, ...rest, middle: false, ...named },
    // To the hundredth, as written: 45.01 − 90 leaves digits of rounding behind.
    weftDeg: Math.round(100 * (rest.angleDeg + (rest.angleDeg > 0 ? -90 : 90))) / 100 + 0,
  })),
  fc.record({ material, count }).map((rest) => ({
    kind: "layer" as const,
    ...rest,
    middle: false,
  })),
  fc.record({ angleDeg, named }).filter(({ angleDeg }) => angleDeg !== 0).map(
    ({ angleDeg, named }) => ({ kind: "pair" as const, angleDeg, ...named }),
  ),
);

const { group } = fc.letrec<{ entry: OrientationEntry; group: OrientationEntry }>((tie) => ({
  entry: fc.oneof({ maxDepth: 2 }, one, tie("group")),
  group: fc.record({
    entries: fc.array(tie("entry"), { minLength: 1, maxLength: 4 }),
    count: fc.constantFrom(1, 1, 2),
    symmetric: fc.boolean(),
    odd: fc.boolean(),
  }).map(({ entries, count, symmetric, odd }) => {
    const last = entries.at(-1)!;
    const middle = odd && symmetric && count === 1 && "middle" in last && last.count === 1;
    return {
      kind: "group" as const,
      entries: middle ? [...entries.slice(0, -1), { ...last, middle: true }] : entries,
      count,
      symmetric,
    };
  }),
}));

/** Plies of an entry, counted without the code under test. */
function size(entry: OrientationEntry): number {
  if (entry.kind === "pair") return 2;
  if (entry.kind !== "group") return entry.count;
  const once = entry.entries.reduce((sum, inner) => sum + size(inner), 0);
  return once * entry.count * (entry.symmetric ? 2 : 1);
}

const code = fc.record({ group, total: fc.boolean() }).filter(({ group }) => size(group) <= 500)
  .map(({ group, total }) => {
    const whole = group as OrientationCode;
    return { ...whole, total: total && !whole.symmetric };
  });

Deno.test("a written code reads back as the same code, in print and typed", () => {
  fc.assert(
    fc.property(code, (code) => {
      for (const style of ["print", "typed"] as const) {
        const text = writeOrientationCode(code, style);
        assertEquals(readOrientationCode(text), code, text);
      }
    }),
    seeded,
  );
});

Deno.test("typed codes need no sign that a keyboard lacks", () => {
  fc.assert(
    fc.property(code, (code) => {
      assertEquals(/[^ -~]/.test(writeOrientationCode(code, "typed")), false);
    }),
    seeded,
  );
});

const layer: fc.Arbitrary<CodeLayer> = fc.oneof(
  fc.record({ kind: fc.constantFrom("ply" as const, "cloth" as const), angleDeg, named }).map(
    ({ named, ...rest }) => ({ ...rest, ...named }),
  ),
  material.map((key) => ({ kind: "layer" as const, angleDeg: 0, material: key })),
);
const layers = fc.oneof(
  fc.array(layer, { minLength: 1, maxLength: 12 }),
  // Mirrored and repeated lists, which chance would hardly make.
  fc.record({ half: fc.array(layer, { minLength: 1, maxLength: 4 }), odd: fc.boolean() }).map(
    ({ half, odd }) => [...half, ...half.slice(0, odd ? -1 : undefined).reverse()],
  ),
  fc.array(layer, { minLength: 1, maxLength: 3 }).map((once) => [...once, ...once, ...once]),
);

Deno.test("layers gathered into a code are the same layers again, through text as well", () => {
  fc.assert(
    fc.property(layers, (layers) => {
      const code = codeOfLayers(layers);
      assertEquals(layersOfCode(code), layers);
      assertEquals(layersOfCode(writeOrientationCode(code)), layers);
    }),
    seeded,
  );
});

Deno.test("a symmetric code reads the same from either side", () => {
  fc.assert(
    fc.property(code, (code) => {
      const layers = layersOfCode({ ...code, symmetric: true, total: false, count: 1 });
      assertEquals(layers.toReversed(), layers);
    }),
    seeded,
  );
});
