/**
 * Formulas of a stack. Expected figures come from exact fractions (Python's `fractions`, Gauss'
 * elimination) for the stack `SANDWICH`.
 */
import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  type EngineeringConstants,
  engineeringConstants,
  laminateCompliance,
  laminateStiffness,
  laminateThickness,
  massPerArea,
  moistureExpansion,
  plyPositions,
  type Stack,
  thermalExpansion,
} from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";
import { GLASS, HONEYCOMB, SANDWICH, stackOf } from "./laminas.ts";

/** Entries of B are differences of numbers 30 times as large, hence not 1e-12 for all. */
const SUMS = { relative: 1e-12 };
const INVERSE = { relative: 1e-11 };

function assertFields(actual: object, expected: Readonly<Record<string, number>>, tolerance: {
  relative: number;
}): void {
  assertEquals(Object.keys(actual).sort(), Object.keys(expected).sort());
  for (const [name, value] of Object.entries(expected)) {
    assertClose((actual as Record<string, number>)[name]!, value, tolerance, name);
  }
}

Deno.test("A, B, D of an unsymmetric sandwich agree with exact fractions", () => {
  assertFields(laminateStiffness(SANDWICH), {
    A11: 17525362.953470137,
    A12: 5638784.545384512,
    A16: 1840937.3430481206,
    A22: 18919221.028455015,
    A26: 1734277.1473295453,
    A66: 6567875.299734456,
    B11: 1706.3919163413736,
    B12: -8610.833889444504,
    B16: -28298.526043179405,
    B22: 42027.565823568206,
    B26: -12711.53406769023,
    B66: -8094.672785135316,
    D11: 485.45170165276267,
    D12: 155.5834597735449,
    D16: 48.91959972242092,
    D22: 505.7051384606578,
    D26: 47.466882097207886,
    D66: 180.93807504878222,
  }, SUMS);
});

Deno.test("the compliance of an unsymmetric sandwich agrees with exact fractions", () => {
  assertFields(laminateCompliance(SANDWICH), {
    a11: 8.739451453626647e-08,
    a12: -2.671497201881036e-08,
    a16: -1.313931223782802e-08,
    a22: 8.633220173752704e-08,
    a26: -1.5097132413003926e-08,
    a66: 2.173553500308011e-07,
    b11: -3.8048370073156317e-06,
    b12: 3.4862780790336973e-06,
    b16: 1.1317891979525959e-05,
    b21: 3.4607904797706186e-06,
    b22: -9.329524937637209e-06,
    b26: 2.7233462074935367e-06,
    b61: 1.1279022138052566e-05,
    b62: 2.758261784334446e-06,
    b66: 2.835214306063074e-06,
    d11: 0.0031565177034350994,
    d12: -0.000998831871013313,
    d16: -0.0004387328504741452,
    d22: 0.0032420185514074784,
    d26: -0.0005672375670841526,
    d66: 0.007882450030918755,
  }, INVERSE);
});

Deno.test("the four sets of engineering constants agree with exact fractions", () => {
  const list = (c: EngineeringConstants): number[] => [
    ...[c.Ex, c.Ey, c.Gxy, c.nuxy, c.nuyx, c.etaXYX, c.etaXYY],
  ];
  const constants = engineeringConstants(SANDWICH);
  assertClose(list(constants.membraneFree), [
    ...[1049758325.8270063, 1062675541.9139968, 422088157.72445565],
    ...[0.3056824808807003, 0.30944388630364156, -0.15034481634857694, -0.17487255171486582],
  ], INVERSE);
  assertClose(list(constants.membraneHeldFlat), [
    ...[1428551317.442074, 1550492419.285709, 577821707.0641894],
    ...[0.27910727060158347, 0.30293185967596703, -0.20659466266741253, -0.1791444753070472],
  ], INVERSE);
  assertClose(list(constants.flexuralFree), [
    ...[2935577313.7748513, 2858158154.804505, 1175548430.295946],
    ...[0.3164347438718079, 0.30808949892642773, -0.13899267854467964, -0.1749643187075207],
  ], INVERSE);
  assertClose(list(constants.flexuralMiddleHeld), [
    ...[3992925519.8901205, 4170722926.2148204, 1610387861.5386045],
    ...[0.2894053675970463, 0.3022920401580254, -0.194444586916863, -0.1806080698304811],
  ], INVERSE);
});

Deno.test("the free expansion of an unsymmetric sandwich agrees with exact fractions", () => {
  const { membrane, curvature } = thermalExpansion(SANDWICH);
  assertClose(
    [membrane.alphaX, membrane.alphaY, membrane.alphaXY],
    [1.5793001807574516e-05, 1.4868958180909512e-05, -4.555417807652803e-06],
    INVERSE,
  );
  assertClose(
    [curvature.kappaX, curvature.kappaY, curvature.kappaXY],
    [0.00019049647002810296, -0.0010246328159644936, 0.0030050844172536013],
    INVERSE,
  );
  // Swelling is expansion under another name.
  const swelling = SANDWICH.map((ply) => ({
    ...ply,
    lamina: { ...ply.lamina, beta1: ply.lamina.alpha1 * 1e4, beta2: ply.lamina.alpha2 * 1e4 },
  }));
  assertClose(moistureExpansion(swelling).membrane.alphaX, 0.15793001807574516, INVERSE);
});

Deno.test("heights run from the mould to the bag; thickness and mass add up", () => {
  const positions = plyPositions(SANDWICH);
  assertClose(positions.map(({ bottom }) => bottom), [-0.00545, -0.00505, 0.00495, 0.00525], {
    absolute: 1e-17,
  });
  assertClose(positions.map(({ middle }) => middle), [-0.00525, -0.00005, 0.0051, 0.00535], {
    absolute: 1e-17,
  });
  assertClose(positions[3]!.top, 0.00545, { absolute: 1e-17 });
  assertClose(laminateThickness(SANDWICH), 0.0109, { relative: 1e-15 });
  // 0.9 mm of 1850 kg/m³ and 10 mm of 48 kg/m³
  assertClose(massPerArea(SANDWICH), 2.145, { relative: 1e-15 });
});

Deno.test("a symmetric stack of uneven plies has B of exactly 0, a cross-ply A16 of exactly 0", () => {
  const half = [
    { lamina: GLASS, thickness: 0.00031, angleDeg: 17 },
    { lamina: GLASS, thickness: 0.00027, angleDeg: -45 },
    { lamina: GLASS, thickness: 0.00043, angleDeg: 90 },
  ];
  const core = { lamina: HONEYCOMB, thickness: 0.0123, angleDeg: 0 };
  for (const stack of [[...half, ...half.toReversed()], [...half, core, ...half.toReversed()]]) {
    const { B11, B12, B16, B22, B26, B66 } = laminateStiffness(stack);
    assertEquals([B11, B12, B16, B22, B26, B66], [0, 0, 0, 0, 0, 0]);
  }
  const crossPly = laminateStiffness(stackOf(GLASS, 0.00025, [0, 90, 0, 90]));
  assertEquals([crossPly.A16, crossPly.A26, crossPly.B16, crossPly.D16], [0, 0, 0, 0]);
});

Deno.test("a laminate of next to no stiffness is still solved", () => {
  const { a11, d11 } = laminateCompliance([{ lamina: HONEYCOMB, thickness: 0.01, angleDeg: 0 }]);
  assertClose(a11, 1 / (1e3 * 0.01), INVERSE);
  assertClose(d11, 12 / (1e3 * 0.01 ** 3), INVERSE);
});

Deno.test("inputs are left as they were", () => {
  const frozen = Object.freeze(SANDWICH.map((ply) => Object.freeze({ ...ply })));
  assertEquals(engineeringConstants(frozen), engineeringConstants(SANDWICH));
});

Deno.test("an impossible stack is refused by the ply and the field", () => {
  const [first, ...rest] = SANDWICH;
  const refused = (stack: unknown, message: string): void => {
    assertThrows(() => laminateStiffness(stack as Stack), InputError, message);
  };
  refused([], "Cannot compute the stiffness of the laminate: stack is a list of 0");
  refused("glass", 'stack is "glass", must be a list of 1 or more');
  refused([first, undefined], "ply 2 is missing");
  refused([{ ...first!, thickness: 0 }, ...rest], "ply 1 thickness is 0 m, must be above 0");
  refused([{ ...first!, angleDeg: 4500 }], "ply 1 angle is 4500 °, must be between -360 and 360 °");
  refused([{ ...first!, lamina: null }], "ply 1 lamina is null");
  refused([{ ...first!, lamina: { ...GLASS, nu12: 3 } }], "ply 1 lamina nu12 is 3");
  assertThrows(() => laminateThickness([]), InputError, "Cannot add up the stack");
  const heavy = { ...first!, lamina: { ...GLASS, density: -1 } };
  assertThrows(() => massPerArea([heavy]), InputError, "ply 1 lamina density is -1 kg/m³");
  const cold = { ...first!, lamina: { ...GLASS, alpha2: NaN } };
  assertThrows(() => thermalExpansion([cold]), InputError, "ply 1 lamina alpha2 is NaN 1/K");
  const { beta1: _, ...dry } = GLASS;
  assertThrows(
    () => moistureExpansion([{ ...first!, lamina: dry }]),
    InputError,
    "ply 1 lamina beta1 is missing",
  );
});
