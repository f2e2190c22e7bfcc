import { checksFor } from "../check/mod.ts";
import { checkBeam } from "./_beam_checks.ts";
import type { BeamLoading, DeflectionParts } from "./beam_deflection.ts";
import type { BeamLoadCase } from "./beam_load_cases.ts";

const check = checksFor("compute the beam's deflection along the span");

/** What happens at one place of a beam. */
export interface BeamStation extends DeflectionParts {
  /** Distance from the left support, from the fixed end of a cantilever [m]. */
  readonly position: number;
  /** Bending moment, sagging positive [N·m]. */
  readonly moment: number;
  /** Shear force, dM/dx; at a point load the value on its left [N]. */
  readonly shearForce: number;
}

/**
 * Deflection, moment and shear force at any places along a beam.
 *
 * Formula: closed forms of each load case; between supports and loads polynomials of x/L, with
 * w shear = ∫V dx/S
 *
 * Range: as `beamCompliance`.
 *
 * Source: beam theory with shear; each form checked against numerical integration in the tests.
 *
 * @param loadCase How the beam is held and loaded.
 * @param loading Total load P [N] (q L where it is spread), span [m], D [N·m²], S [N].
 * @param positions Places, from the left support or the fixed end [m].
 * @returns For each place deflection [m], moment [N·m], shear force [N].
 * @throws {InputError} If a place is off the span, or as `deflectBeam`.
 *
 * @example
 * ```ts
 * import { beamAlongSpan, beamLoadCases } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const loading = { totalLoad: 100, span: 2, flexuralRigidity: 1000, shearStiffness: 5000 };
 * const [end, middle] = beamAlongSpan(beamLoadCases.threePoint, loading, [0, 1]);
 * assertAlmostEquals(end!.total, 0, 1e-15);
 * assertAlmostEquals(middle!.moment, 50, 1e-12);
 * assertAlmostEquals(middle!.total, 100 * 8 / 48 / 1000 + 100 * 2 / 4 / 5000, 1e-15);
 * ```
 */
export function beamAlongSpan(
  loadCase: BeamLoadCase,
  loading: BeamLoading,
  positions: readonly number[],
): readonly BeamStation[] {
  checkBeam(check, loadCase, loading);
  check.finite("total load", loading.totalLoad, "N");
  check.list("positions", positions, 0);
  const { totalLoad: P, span: L, flexuralRigidity: D, shearStiffness: S } = loading;
  const shape = shapeOf(loadCase);
  return Array.from(positions, (position) => {
    check.within("position", position, { min: 0, max: L, unit: "m" });
    const at = shape(position / L);
    const bending = P * L ** 3 / D * at.bending;
    const shear = S === "rigid" ? 0 : P * L / S * at.shear;
    return Object.freeze({
      position,
      bending,
      shear,
      total: check.result("deflection", bending + shear, "m"),
      moment: P * L * at.moment,
      shearForce: P * at.shearForce,
    });
  });
}

/** Everything at ξ = x/L for P = L = D = S = 1. */
interface UnitStation {
  readonly bending: number;
  readonly shear: number;
  readonly moment: number;
  readonly shearForce: number;
}

function shapeOf(loadCase: BeamLoadCase): (x: number) => UnitStation {
  const { supports, load, loadSpanFraction } = loadCase;
  if (supports === "simple" && load === "points") {
    return (x) => simplePoints(x, (1 - loadSpanFraction) / 2);
  }
  if (supports === "simple" && load === "uniform") return simpleUniform;
  if (supports === "cantilever" && load === "points") return cantileverTip;
  if (supports === "cantilever" && load === "uniform") return cantileverUniform;
  if (supports === "builtIn" && load === "uniform") return builtInUniform;
  return check.refuse("load case", loadCase.title, "must be one of the known supports and loads");
}

function simplePoints(x: number, a: number): UnitStation {
  const fromEnd = Math.min(x, 1 - x);
  const inside = fromEnd > a;
  const moment = Math.min(fromEnd, a) / 2;
  return {
    bending: inside
      ? a * (3 * fromEnd - 3 * fromEnd * fromEnd - a * a) / 12
      : fromEnd * (3 * a * (1 - a) - fromEnd * fromEnd) / 12,
    // Without shear at the supports to clamp it, the shear deflection has the moment's shape.
    shear: moment,
    moment,
    shearForce: x <= a ? 1 / 2 : x <= 1 - a ? 0 : -1 / 2,
  };
}

function simpleUniform(x: number): UnitStation {
  const moment = x * (1 - x) / 2;
  return {
    bending: x * (1 - x) * (1 + x - x * x) / 24,
    shear: moment,
    moment,
    shearForce: 1 / 2 - x,
  };
}

function cantileverTip(x: number): UnitStation {
  return { bending: x * x * (3 - x) / 6, shear: x, moment: x - 1, shearForce: 1 };
}

function cantileverUniform(x: number): UnitStation {
  return {
    bending: x * x * (6 - 4 * x + x * x) / 24,
    shear: x * (2 - x) / 2,
    moment: -(1 - x) * (1 - x) / 2,
    shearForce: 1 - x,
  };
}

function builtInUniform(x: number): UnitStation {
  return {
    bending: x * x * (1 - x) * (1 - x) / 24,
    shear: x * (1 - x) / 2,
    moment: (6 * x * (1 - x) - 1) / 12,
    shearForce: 1 / 2 - x,
  };
}
