import { checksFor } from "../check/mod.ts";
import { checkBeam } from "./_beam_checks.ts";
import type { BeamLoadCase, DeflectionCoefficients } from "./beam_load_cases.ts";
import type { ShearStiffness } from "./beam_section.ts";

const check = checksFor("compute the beam's deflection");

/** The stiffnesses of a beam and its span; a `BeamSection` has the first two. */
export interface BeamSpan {
  /** Span, or length of a cantilever, L [m]. */
  readonly span: number;
  /** Flexural rigidity D, width included [N·m²]. */
  readonly flexuralRigidity: number;
  /** Shear stiffness S, width included [N], or "rigid". */
  readonly shearStiffness: ShearStiffness;
}

/** A beam under load. */
export interface BeamLoading extends BeamSpan {
  /** Total load P, down positive; q L where it is spread [N]. */
  readonly totalLoad: number;
  /** Thickness h, for the remark on a short span; not judged if left out [m]. */
  readonly thickness?: number;
}

/** A deflection and what it is made of, down positive. */
export interface DeflectionParts {
  /** From bending [m]. */
  readonly bending: number;
  /** From shear [m]. */
  readonly shear: number;
  /** Both together [m]. */
  readonly total: number;
}

/** Compliance, deflection for each newton of total load, and what it is made of. */
export interface ComplianceParts {
  /** From bending [m/N]. */
  readonly bending: number;
  /** From shear [m/N]. */
  readonly shear: number;
  /** Both together [m/N]. */
  readonly total: number;
}

/** Deflection of a beam where it is usually read, with the working. */
export interface BeamDeflection extends DeflectionParts {
  /** Deflection under a point load; where the load is spread, as at mid-span. */
  readonly atLoad: DeflectionParts;
  /** What it was computed from. */
  readonly inputs: BeamLoading;
  /** The equation used. */
  readonly equation: string;
  /** What makes the figures doubtful; empty if nothing does, or no thickness was given. */
  readonly notes: readonly string[];
}

/**
 * Compliance of a beam: deflection at mid-span (tip of a cantilever) for each newton of total
 * load. What a bending test measures as the slope of deflection on load.
 *
 * Formula: C = kb L³/D + ks L/S, with kb, ks of the load case
 *
 * Range: small deflections; plane sections in each layer's own bending, shear spread evenly over
 * d (Timoshenko beam).
 *
 * Source: ASTM D7250 (the same form), Allen (1969), chapter 2, from memory.
 *
 * @param loadCase How the beam is held and loaded.
 * @param beam Span [m], D [N·m²], S [N].
 * @returns Compliance by bending, by shear, and in all [m/N].
 * @throws {InputError} If the span or a stiffness is not above 0.
 *
 * @example
 * ```ts
 * import { beamCompliance, beamLoadCases } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const beam = { span: 0.48, flexuralRigidity: 230.4, shearStiffness: 12000 };
 * const compliance = beamCompliance(beamLoadCases.threePoint, beam);
 * assertAlmostEquals(compliance.bending, 1e-5, 1e-17);
 * assertAlmostEquals(compliance.shear, 1e-5, 1e-17);
 * ```
 */
export function beamCompliance(loadCase: BeamLoadCase, beam: BeamSpan): ComplianceParts {
  checkBeam(check, loadCase, beam);
  return parts(loadCase.deflection, beam, 1);
}

/**
 * Deflection of a beam at mid-span (tip of a cantilever) and under the load.
 *
 * Formula: δ = P (kb L³/D + ks L/S), with kb, ks of the load case
 *
 * Range: as `beamCompliance`; spans of five thicknesses or more, cantilevers half of that (common
 * practice, no source). If the thickness is given, a shorter span is noted.
 *
 * Source: as `beamCompliance`.
 *
 * @param loadCase How the beam is held and loaded.
 * @param loading Total load P [N] (q L where it is spread), span [m], D [N·m²], S [N], thickness.
 * @returns Deflection by bending, by shear, and in all [m], with inputs, equation and notes.
 * @throws {InputError} If the load is not finite, or the span or a stiffness is not above 0.
 *
 * @example
 * ```ts
 * import { beamLoadCases, deflectBeam } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const deflection = deflectBeam(beamLoadCases.threePoint, {
 *   totalLoad: 200,
 *   span: 0.48,
 *   flexuralRigidity: 230.4,
 *   shearStiffness: 12000,
 * });
 * assertAlmostEquals(deflection.total, 0.004, 1e-15);
 * ```
 */
export function deflectBeam(loadCase: BeamLoadCase, loading: BeamLoading): BeamDeflection {
  checkBeam(check, loadCase, loading);
  check.finite("total load", loading.totalLoad, "N");
  const { thickness, span } = loading;
  if (thickness !== undefined) check.positive("thickness", thickness, "m");
  const least = loadCase.supports === "cantilever" ? SHORT / 2 : SHORT;
  const isShort = thickness !== undefined && span < least * thickness;
  return Object.freeze({
    ...parts(loadCase.deflection, loading, loading.totalLoad),
    atLoad: parts(loadCase.deflectionAtLoad, loading, loading.totalLoad),
    inputs: {
      totalLoad: loading.totalLoad,
      span: loading.span,
      flexuralRigidity: loading.flexuralRigidity,
      shearStiffness: loading.shearStiffness,
      ...(thickness === undefined ? {} : { thickness }),
    },
    equation: loadCase.equation,
    notes: isShort ? [SHORT_NOTE] : [],
  });
}

/** Spans below so many thicknesses are no beams [1]. */
const SHORT = 5;

const SHORT_NOTE = "The span is short for its thickness: the dents under the load and at the " +
  "supports count as well, so that it sinks deeper than beam theory says.";

function parts(
  { bending, shear }: DeflectionCoefficients,
  { span, flexuralRigidity, shearStiffness }: BeamSpan,
  load: number,
): DeflectionParts {
  const fromBending = load * bending * span ** 3 / flexuralRigidity;
  const fromShear = shearStiffness === "rigid" ? 0 : load * shear * span / shearStiffness;
  return Object.freeze({
    bending: fromBending,
    shear: fromShear,
    total: check.result("deflection", fromBending + fromShear, "m"),
  });
}
