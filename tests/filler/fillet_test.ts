import { assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import { filletQuantity, filletSection, largestRadius } from "../../lib/filler/mod.ts";

// r = 0.0254 m. Area, tangent length, throat, arc, chord from the formulas of `filletSection` in
// the angle θ of the corner itself, with 40 digits (Python's mpmath).
const SECTIONS: readonly (readonly [number, readonly number[]])[] = [
  [30, [
    1.56325743384864062e-3,
    0.0947940905122494833,
    0.0727380639509693379,
    0.0664970445009839569,
    0.049069031975484669,
  ]],
  [75, [
    2.49630155928484929e-4,
    0.0331019244701666262,
    0.0163240626452963719,
    0.0465479311506887698,
    0.0403023496867947464,
  ]],
  [90, [
    1.38452520902502249e-4,
    0.0254,
    0.0105210244842766142,
    0.0398982267005903741,
    0.0359210244842766142,
  ]],
  [120, [
    3.46783136053804573e-5,
    0.0146646968374164944,
    3.92939367483298884e-3,
    0.0265988178003935828,
    0.0254,
  ]],
  [150, [
    3.96760795636387483e-6,
    6.80590948775051674e-3,
    8.96014982416109455e-4,
    0.0132994089001967914,
    0.0131480074912080547,
  ]],
  [179, [
    1.42922802632177829e-10,
    2.21662441885273249e-4,
    9.67190997718820318e-7,
    4.43313630006559713e-4,
    4.43308003317395896e-4,
  ]],
];

for (const [cornerDeg, expected] of SECTIONS) {
  Deno.test(`section of a fillet in a corner of ${cornerDeg}°`, () => {
    const { area, tangentLength, throat, arcLength, chord } = filletSection(0.0254, cornerDeg);
    assertClose([area, tangentLength, throat, arcLength, chord], expected, { relative: 1e-13 });
  });
}

Deno.test("a nearly flat corner keeps the digits that its angle has", () => {
  // 180 − 179.999 is exact to 3e-14 of 0.001 only: 3e-11, cubed in the area.
  const { area } = filletSection(0.0254, 179.999);
  assertClose(area, 1.42918448957415902e-19, { relative: 1e-10 });
});

Deno.test("a flat corner takes nothing", () => {
  const { area, tangentLength, throat, arcLength } = filletSection(0.0254, 180);
  assertEquals([area, tangentLength, throat, arcLength], [0, 0, 0, 0]);
});

Deno.test("mass of four fillets", () => {
  const found = filletQuantity({
    radius: 0.0254,
    cornerDeg: 90,
    length: 1.25,
    count: 4,
    density: 600,
  });
  assertClose(found.massPerMetre, 0.0830715125415013494, { relative: 1e-13 });
  assertClose(found.volume, 5 * 1.38452520902502249e-4, { relative: 1e-13 });
  assertClose(found.mass, 0.415357562707506747, { relative: 1e-13 });
});

Deno.test("each limit gives its radius, and the smallest decides", () => {
  // Corner of 60°: 0.03 tan 30°; 0.004/(1/sin 30° − 1); √(0.0002/(cot 30° − π/3)).
  const only = (limits: Parameters<typeof largestRadius>[0]["limits"]): number =>
    largestRadius({ cornerDeg: 60, limits }).radius;
  assertClose(only({ radius: 0.025 }), 0.025, { relative: 0 });
  assertClose(only({ tangentLength: 0.03 }), 0.017320508075688773, { relative: 1e-14 });
  assertClose(only({ throat: 0.004 }), 0.004, { relative: 1e-14 });
  assertClose(only({ area: 0.0002 }), 0.017088983689939328, { relative: 1e-14 });
  const found = largestRadius({
    cornerDeg: 60,
    limits: { radius: 0.025, tangentLength: 0.03, area: 0.0002 },
    makingTolerance: 0.001,
  });
  assertEquals(found.governedBy, "area");
  assertClose(found.aimRadius, 0.016088983689939328, { relative: 1e-14 });
  assertClose(found.gaugeDiameter, 0.034177967379878656, { relative: 1e-14 });
  assertClose(found.section.area, 0.0002, { relative: 1e-13 });
});

Deno.test("fillets refuse what cannot be", () => {
  assertThrows(() => filletSection(-1, 90), InputError, "radius is -1 m");
  assertThrows(() => filletSection(0.02, 0), InputError, "must be above 0 and up to 180°");
  assertThrows(() => filletSection(0.02, 200), InputError, "must be above 0 and up to 180°");
  assertThrows(() => filletSection(0.02, NaN), InputError, "angle of the corner is NaN");
  const run = { radius: 0.02, cornerDeg: 90, length: 1, count: 1.5, density: 600 };
  assertThrows(() => filletQuantity(run), InputError, "count is 1.5, must be a whole number");
  assertThrows(() => largestRadius({ cornerDeg: 90, limits: {} }), InputError, "at least one of");
  assertThrows(
    () => largestRadius({ cornerDeg: 180, limits: { radius: 1 } }),
    InputError,
    "must be below 180°",
  );
  assertThrows(
    () => largestRadius({ cornerDeg: 90, limits: { area: -1 } }),
    InputError,
    "limit of area is -1 m², must be above 0",
  );
  assertThrows(
    () => largestRadius({ cornerDeg: 90, limits: { throat: 0 } }),
    InputError,
    "limit of throat is 0 m",
  );
  assertThrows(
    () => largestRadius({ cornerDeg: 90, limits: { radius: 0.001 }, makingTolerance: 0.002 }),
    InputError,
    "must be below the radius",
  );
});
