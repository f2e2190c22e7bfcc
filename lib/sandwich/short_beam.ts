import { checksFor } from "../check/mod.ts";
import { fourPoint } from "./beam_load_cases.ts";

const check = checksFor("read the short beam");

/** A sandwich beam on so short a span that its core shears. */
export interface ShortBeam {
  /** Distance between the supports [m]. */
  readonly span: number;
  /** Distance between the two loads over the span; 0, three-point, if left out [1]. */
  readonly loadSpanFraction?: number;
  /** Width [m]. */
  readonly width: number;
  /** Thickness of the core [m]. */
  readonly coreThickness: number;
  /** Thickness of one face [m]. */
  readonly faceThickness: number;
}

function checkBeam(beam: ShortBeam): { readonly centroidDistance: number } {
  check.object("beam", beam);
  check.positive("span", beam.span, "m");
  check.positive("width", beam.width, "m");
  check.positive("core thickness", beam.coreThickness, "m");
  check.positive("face thickness", beam.faceThickness, "m");
  return { centroidDistance: beam.coreThickness + beam.faceThickness };
}

/** Stresses of a short beam under a load. */
export interface ShortBeamStress {
  /** Shear stress of the core [Pa]. */
  readonly coreShear: number;
  /** Stress of the faces, to see that they were not what broke [Pa]. */
  readonly face: number;
}

/**
 * Shear stress of the core at the load that broke a short beam, and what the faces bore meanwhile.
 *
 * Formula: τ = P/(2 b (c + t)), that is P/((h + c) b) with h = c + 2t; σ = P S (1 − r)/(4 b t (c + t)),
 * r the load span over the span
 *
 * Range: equal thin faces. It is the core's strength only if the core broke by shear: a dent under
 * the load or a face that wrinkled is another strength. Wide pads under load and supports.
 *
 * Source: ASTM C393, from memory.
 *
 * @param beam Span and section [m].
 * @param load Total load [N].
 * @returns Shear stress of the core and stress of the faces [Pa].
 * @throws {InputError} If a length or the load is not above 0.
 *
 * @example
 * ```ts
 * import { shortBeamStress } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const beam = { span: 0.15, width: 0.075, coreThickness: 0.02, faceThickness: 0.002 };
 * const { coreShear, face } = shortBeamStress(beam, 2400);
 * assertAlmostEquals(coreShear / 1e6, 0.727273, 1e-6);
 * assertAlmostEquals(face / 1e6, 27.2727, 1e-4);
 * ```
 */
export function shortBeamStress(beam: ShortBeam, load: number): ShortBeamStress {
  const { centroidDistance: d } = checkBeam(beam);
  check.positive("load", load, "N");
  const { moment } = fourPoint(beam.loadSpanFraction ?? 0);
  return {
    coreShear: check.result("shear stress", load / (2 * beam.width * d), "Pa"),
    face: check.result(
      "face stress",
      moment * load * beam.span / (beam.width * beam.faceThickness * d),
      "Pa",
    ),
  };
}

/** Shear stiffness and modulus of a core. */
export interface ShortBeamShear {
  /** Shear modulus of the core [Pa]. */
  readonly coreG: number;
  /** Shear stiffness S of the beam, width included [N]. */
  readonly shearStiffness: number;
  /** Share of the deflection that is shear: below a half the faces speak louder [1]. */
  readonly shearShare: number;
  /** Remarks, empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/** With less shear in the deflection the test is called long [1]. */
const SHORT = 0.5;

/**
 * Shear modulus of the core from a short beam whose face modulus is known.
 *
 * Formula: D = E b (h³ − c³)/12; S = ks L/(C − kb L³/D); G = S (h − 2t)/((h − t)² b)
 *
 * Range: equal faces whose modulus is known to some 10 %; shear should make more than half of the
 * deflection, else a note says so. Where the face modulus is not known, two spans tell both:
 * `rigiditiesFromTests` of comparison.
 *
 * Source: ASTM D7250 (facing modulus known), from memory.
 *
 * @param beam Span and section [m].
 * @param compliance Deflection at mid-span on total load [m/N].
 * @param faceE Modulus of the faces [Pa].
 * @returns Shear modulus [Pa], shear stiffness [N], share of shear [1], remarks.
 * @throws {InputError} If a figure is not above 0, or bending alone takes all of the deflection.
 *
 * @example
 * ```ts
 * import { shearFromShortBeam } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const beam = { span: 0.2, width: 0.075, coreThickness: 0.02, faceThickness: 0.002 };
 * const compliance = 0.2 ** 3 / (48 * 728) + 0.2 / (4 * 45375);
 * assertAlmostEquals(shearFromShortBeam(beam, compliance, 20e9).coreG / 1e6, 25, 1e-9);
 * ```
 */
export function shearFromShortBeam(
  beam: ShortBeam,
  compliance: number,
  faceE: number,
): ShortBeamShear {
  const { centroidDistance: d } = checkBeam(beam);
  check.positive("compliance", compliance, "m/N");
  check.positive("face modulus", faceE, "Pa");
  const { span, width, coreThickness, faceThickness } = beam;
  const { deflection: { bending, shear } } = fourPoint(beam.loadSpanFraction ?? 0);
  const height = coreThickness + 2 * faceThickness;
  const D = faceE * width * (height ** 3 - coreThickness ** 3) / 12;
  const byShear = check.positive(
    "compliance less that of bending",
    compliance - bending * span ** 3 / D,
    "m/N",
  );
  const shearStiffness = check.result("shear stiffness", shear * span / byShear, "N");
  const shearShare = byShear / compliance;
  return {
    coreG: check.result("shear modulus", shearStiffness * coreThickness / (d * d * width), "Pa"),
    shearStiffness,
    shearShare,
    notes: shearShare < SHORT
      ? [
        `Only ${
          (100 * shearShare).toFixed(0)
        } % of the deflection is shear: on a shorter span the ` +
        "face modulus would matter less.",
      ]
      : [],
  };
}
