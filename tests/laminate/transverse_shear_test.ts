/** Transverse shear against exact fractions (Python's `fractions`, Boole's rule) and hand formulas. */
import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { transverseShearStiffness, transverseShearStress } from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";
import { GLASS, HONEYCOMB, SANDWICH, stackOf } from "./laminas.ts";

const SOLVED = { relative: 1e-11 };

Deno.test("stress and stiffness of an unsymmetric sandwich agree with exact fractions", () => {
  const alongX = transverseShearStress(SANDWICH, { Qx: 1000 });
  assertClose(
    [
      ...[alongX[0]!.middle.tauXZ, alongX[0]!.middle.tauYZ, alongX[1]!.bottom.tauXZ],
      ...[alongX[2]!.middle.tauXZ, alongX[2]!.middle.tauYZ, alongX[3]!.middle.tauXZ],
    ],
    [
      ...[48633.79782506613, 486.99747035864366, 95068.32550478745],
      ...[79084.11063639285, -4677.1637742758925, 31727.442130333994],
    ],
    SOLVED,
  );
  const alongY = transverseShearStress(SANDWICH, { Qy: 1000 });
  assertClose(
    [alongY[0]!.middle.tauYZ, alongY[1]!.middle.tauYZ, alongY[3]!.bottom.tauYZ],
    [48740.48433275194, 96240.8005717603, 13790.938252895922],
    SOLVED,
  );
  const { S44, S45, S55 } = transverseShearStiffness(SANDWICH);
  assertClose(
    [S44, S45, S55],
    [237485.15838708854, -1137.3786057868058, 497630.80178813485],
    SOLVED,
  );
});

Deno.test("a symmetric sandwich: G (d + t²/3d)²/c, less what the faces give in shear", () => {
  // By hand, core without stiffness in the plane: D = E t (d² + t²/3)/2; the core carries
  // τ = E t d/(2D) for a force of 1, each face a piece of parabola from 0 to τ.
  const [t, c] = [0.002, 0.02];
  const d = c + t;
  const lamina = { ...GLASS, E1: 20e9, E2: 20e9, nu12: 0, G13: 3e9, G23: 3e9 };
  const core = { ...HONEYCOMB, E1: 1e-3, E2: 1e-3, G12: 1e-3 };
  const face = { lamina, thickness: t, angleDeg: 0 };
  const stack = [face, { lamina: core, thickness: c, angleDeg: 0 }, face];
  const D = 20e9 * t * (d * d + t * t / 3) / 2;
  const tau = 20e9 * t * d / 2 / D;
  const coreCompliance = c * tau * tau / 45e6;
  // τ(s) = E/(2D) ((h/2)² − z²) in a face, s from the outside: ∫₀ᵗ (s (h − s))² ds
  const h = c + 2 * t;
  const integral = h * h * t ** 3 / 3 - h * t ** 4 / 2 + t ** 5 / 5;
  const faceCompliance = 2 * (20e9 / (2 * D)) ** 2 * integral / 3e9;
  const { S55 } = transverseShearStiffness(stack);
  assertClose(S55, 1 / (coreCompliance + faceCompliance), SOLVED);
  // Within 1 % of the trade's G d²/c.
  assertClose(S55, 45e6 * d * d / c, { relative: 0.01 });
  const [, inCore] = transverseShearStress(stack, { Qx: 1 });
  assertClose([inCore!.bottom.tauXZ, inCore!.largestXZ], [tau, tau], SOLVED);
});

Deno.test("the largest stress within a ply is found between its points", () => {
  // A homogeneous sheet in plies of 1 and 3 mm: 1.5 Q/h at the middle of the whole.
  const stack = [
    { lamina: GLASS, thickness: 0.001, angleDeg: 0 },
    { lamina: GLASS, thickness: 0.003, angleDeg: 0 },
  ];
  const [thin, thick] = transverseShearStress(stack, { Qx: 4, Qy: 8 });
  assertClose([thick!.largestXZ, thick!.largestYZ], [1500, 3000], SOLVED);
  assertClose(thin!.largestXZ, thick!.bottom.tauXZ, SOLVED);
});

Deno.test("stress in the axes of a turned core", () => {
  const stack = SANDWICH.map((ply) => ({ ...ply, angleDeg: ply.angleDeg + 90 }));
  const [, core] = transverseShearStress(SANDWICH, { Qx: 1000 });
  const [, turned] = transverseShearStress(stack, { Qy: 1000 });
  assertClose(turned!.middle.tau13, core!.middle.tauXZ, SOLVED);
  assertClose(turned!.middle.tauYZ, core!.middle.tauXZ, SOLVED);
});

Deno.test("plies without transverse shear modulus, and forces that are no numbers, are refused", () => {
  const soft = stackOf({ ...GLASS, G13: 0 }, 0.001, [0, 90]);
  assertThrows(
    () => transverseShearStiffness(soft),
    InputError,
    "Cannot compute the transverse shear stiffness: ply 1 lamina G13 is 0 Pa, must be above 0",
  );
  assertEquals(transverseShearStress(soft, { Qx: 0 })[0]!.middle.tauXZ, 0);
  assertThrows(() => transverseShearStress(soft, { Qx: NaN }), InputError, "Qx is NaN N/m");
  assertThrows(() => transverseShearStress(soft, null as never), InputError, "forces is null");
});
