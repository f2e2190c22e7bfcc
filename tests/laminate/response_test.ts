/**
 * Response of a stack. Expected figures come from exact fractions (Python's `fractions`) for the
 * stack `SANDWICH`, with the strain rotated by its matrix and stress turned back by the transpose.
 */
import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  freeWarp,
  laminateResponse,
  type LaminateStrain,
  type LaminateStress,
  type PlyStrain,
  type PlyStress,
  thermalExpansion,
} from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";
import { GLASS, SANDWICH, stackOf } from "./laminas.ts";

const MIXED = {
  Nx: 5000,
  epsilonY: 0.001,
  Mx: 20,
  My: -3,
  kappaXY: 0,
  temperatureChange: -60,
} as const;

/** Each figure passes a solve of 6 equations. */
const SOLVED = { relative: 1e-11, absolute: 1e-18 };

const list = (state: LaminateStrain | LaminateStress | PlyStrain | PlyStress): number[] =>
  Object.values(state);

Deno.test("forces, an imposed strain, an imposed twist and cooling together", () => {
  const { midPlaneStrain, curvature, forces, freeForces } = laminateResponse(SANDWICH, MIXED);
  assertClose(
    [...Object.values(midPlaneStrain), ...Object.values(curvature)],
    [
      ...[-0.0010848179916534385, 0.001, 0.00011740279411429589],
      ...[0.10806476766668024, -0.16164725554562112, 0],
    ],
    SOLVED,
  );
  const { Nx, Ny, Nxy, Mx, My, Mxy } = forces;
  assertEquals([Nx, Nxy, Mx, My], [5000, 0, 20, -3]);
  assertClose([Ny, Mxy], [22055.188305957727, 8.972417933487046], SOLVED);
  assertClose(Object.values(freeForces), [
    ...[-16580.594796757676, -16773.581656850067, -495.0069386815312],
    ...[-6.47369849607475, -12.056373581326376, 5.678054943350475],
  ], SOLVED);
});

Deno.test("ply strain and stress at bottom, middle and top, total and mechanical", () => {
  const { plies } = laminateResponse(SANDWICH, MIXED);
  const { bottom } = plies[0]!;
  assertClose(bottom.z, -0.00545, SOLVED);
  assertClose(list(bottom.totalPlyStrain), [
    ...[-0.00033770816772421065, 0.000544914735011, 0.0034454313597860648],
  ], SOLVED);
  assertClose(list(bottom.mechanicalPlyStrain), [
    ...[8.229183227578934e-05, 0.002224914735011, 0.0034454313597860648],
  ], SOLVED);
  assertClose(list(bottom.plyStress), [8899117.316028496, 20614384.605530363, 12403552.895229833], {
    relative: 1e-11,
  });
  assertClose(list(bottom.stress), [1209202.7608285295, 28304299.160730332, -2150333.488296543], {
    relative: 1e-11,
  });
  const core = plies[1]!.middle;
  assertClose(list(core.stress), [1.277146679996057, 2.891226366776098, 0.04696111764571836], {
    relative: 1e-11,
  });
  const { middle, top } = plies[3]!;
  assertClose(list(middle.stress), [4176528.508851275, 15125684.098847786, 3613123.9332129457], {
    relative: 1e-11,
  });
  assertClose(list(top.plyStress), [3463366.7493266147, 15977374.046260701, -1274177.6801460278], {
    relative: 1e-11,
  });
  assertClose(list(top.totalPlyStrain), [
    ...[-0.00044658678904279953, 6.97442384491332e-05, -0.00035393824448500774],
  ], SOLVED);
});

Deno.test("with every strain imposed nothing is solved, and the forces follow", () => {
  const free = laminateResponse(SANDWICH, { Nx: 1000, Mxy: 5, temperatureChange: 12 });
  const { epsilonX, epsilonY, gammaXY } = free.midPlaneStrain;
  const { kappaX, kappaY, kappaXY } = free.curvature;
  const imposed = laminateResponse(SANDWICH, {
    ...{ epsilonX, epsilonY, gammaXY, kappaX, kappaY, kappaXY },
    temperatureChange: 12,
  });
  const { Nx, Ny, Nxy, Mx, My, Mxy } = imposed.forces;
  assertClose([Nx, Ny, Nxy, Mx, My, Mxy], [1000, 0, 0, 0, 0, 5], {
    relative: 1e-10,
    absolute: 1e-8,
  });
});

Deno.test("moisture swells as warmth does", () => {
  // β = (0.02, 0.4) times 0.5 % is α = (1e-6, 20e-6) times 100 K.
  const warm = SANDWICH.map((ply) => ({
    ...ply,
    lamina: ply.lamina.name === "honeycomb"
      ? { ...ply.lamina, alpha1: 0, alpha2: 0 }
      : { ...ply.lamina, alpha1: 1e-6, alpha2: 20e-6 },
  }));
  const wet = laminateResponse(SANDWICH, { moistureChange: 0.005 });
  const expected = laminateResponse(warm, { temperatureChange: 100 });
  assertClose(list(wet.midPlaneStrain), list(expected.midPlaneStrain), { relative: 1e-12 });
  assertClose(list(wet.plies[3]!.top.plyStress), list(expected.plies[3]!.top.plyStress), {
    relative: 1e-12,
  });
});

Deno.test("a lamina without expansions is enough where none is asked for", () => {
  const { alpha1: _1, alpha2: _2, beta1: _3, beta2: _4, ...bare } = GLASS;
  const stack = stackOf(bare as typeof GLASS, 0.001, [0, 90]);
  assertEquals(
    laminateResponse(stack, { Nx: 1000 }).midPlaneStrain,
    laminateResponse(stackOf(GLASS, 0.001, [0, 90]), { Nx: 1000 }).midPlaneStrain,
  );
  assertThrows(
    () => laminateResponse(stack, { temperatureChange: 5 }),
    InputError,
    "ply 1 lamina alpha1 is missing",
  );
  assertThrows(
    () => laminateResponse(stack, { moistureChange: 0.01 }),
    InputError,
    "ply 1 lamina beta1 is missing",
  );
});

Deno.test("loads that cannot be meant are refused", () => {
  const refused = (load: unknown, message: string): void => {
    assertThrows(() => laminateResponse(SANDWICH, load as never), InputError, message);
  };
  refused({ Nx: NaN }, "Cannot compute the response of the laminate: Nx is NaN N/m");
  refused({ temperatureChange: "40" }, 'temperatureChange is "40"');
  refused({ nx: 1000 }, 'load named "nx" is 1000, must be one of: Nx, Ny');
  refused({ Mx: 1, kappaX: 0 }, "kappaX is 0, must not be given beside Mx");
  refused(undefined, "load is missing");
  refused({ Nx: 1e308 }, "beyond the range of numbers");
  assertThrows(() => laminateResponse([], { Nx: 1 }), InputError, "stack is a list of 0");
});

Deno.test("the warp of a panel: bow and rock from the curvature", () => {
  const { curvature } = thermalExpansion(SANDWICH);
  const panel = { lengthX: 0.4, lengthY: 0.2, temperatureChange: -50 };
  const warp = freeWarp(SANDWICH, panel);
  assertClose(warp.bowX, curvature.kappaX * -50 * 0.4 ** 2 / 8, { relative: 1e-12 });
  assertClose(warp.bowY, curvature.kappaY * -50 * 0.2 ** 2 / 8, { relative: 1e-12 });
  // The corner over the plane of the other three, from w = −κxy x y/2 at the four corners.
  const corner = (x: number, y: number): number => -curvature.kappaXY * -50 * x * y / 2;
  const plane = corner(0.2, -0.1) + corner(-0.2, 0.1) - corner(-0.2, -0.1);
  assertClose(warp.rock, Math.abs(corner(0.2, 0.1) - plane), { relative: 1e-12 });
  // 6 mm of rock is more than half of 10.9 mm; a tenth of the change is not.
  assertEquals(warp.notes.length, 1);
  assertEquals(freeWarp(SANDWICH, { ...panel, temperatureChange: -5 }).notes, []);
});

Deno.test("two bows against each other are noted as the saddle that they make", () => {
  // Two unlike layers at 0 and 90° bow by the same amount, one way and the other. At half the
  // change at which a bow alone is half the thickness the saddle, twice a bow, is just that.
  const plies = [
    { lamina: SANDWICH[0]!.lamina, thickness: 1e-3, angleDeg: 0 },
    { lamina: SANDWICH[0]!.lamina, thickness: 1e-3, angleDeg: 90 },
  ];
  const side = { lengthX: 0.3, lengthY: 0.3 };
  const perKelvin = freeWarp(plies, { ...side, temperatureChange: 1 });
  assertClose(perKelvin.bowX, -perKelvin.bowY, { relative: 1e-9 });
  const half = 1e-3 / Math.abs(perKelvin.bowX);
  const at = (share: number): number =>
    freeWarp(plies, { ...side, temperatureChange: -share * half }).notes.length;
  assertEquals([at(0.49), at(0.51), at(1.01)], [0, 1, 1]);
});

Deno.test("a warp that cannot be meant is refused", () => {
  assertThrows(
    () => freeWarp(SANDWICH, { lengthX: 0, lengthY: 1, temperatureChange: -50 }),
    InputError,
    "Cannot compute the warp of the panel: length along x is 0 m",
  );
  assertThrows(() => freeWarp(SANDWICH, null as never), InputError, "panel is null");
});
