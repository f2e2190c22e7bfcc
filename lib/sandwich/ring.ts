import { checksFor } from "../check/mod.ts";

const check = checksFor("compute how far the tunnel squashes");

/** How the feet of a half ring are held. */
export type RingFeet = "sliding" | "hinged" | "clamped";

/** A half ring under a line load on its crown. */
export interface CrownLoadedRing {
  /** Load for each metre of tunnel [N/m]. */
  readonly lineLoad: number;
  /** Radius to the middle of the wall [m]. */
  readonly radius: number;
  /** Thickness of the wall [m]. */
  readonly thickness: number;
  /** Modulus of the wall round the ring [Pa]. */
  readonly E: number;
  /** Poisson ratio of the wall [1]. */
  readonly nu: number;
  /** How its feet are held. */
  readonly feet: RingFeet;
}

/** How far a half ring squashes, and its largest moment. */
export interface RingSquash {
  /** Deflection of the crown [m]. */
  readonly deflection: number;
  /** Moment at the crown for each metre of tunnel, pulling on the inside [N]. */
  readonly crownMoment: number;
  /** Stress at the crown from bending, a magnitude [Pa]. */
  readonly crownStress: number;
}

/** Deflection over P r³/D and moment at the crown over P r. */
function coefficients(feet: RingFeet): readonly [deflection: number, crownMoment: number] {
  const pi = Math.PI;
  switch (feet) {
    case "sliding":
      return [3 * pi / 8 - 1, 1 / 2];
    case "hinged":
      return [3 * pi / 8 - 1 - 1 / (2 * pi), 1 / 2 - 1 / pi];
    case "clamped": {
      // M = A − (P r/2) sin φ + B cos φ, with neither rotation nor spread at the feet.
      const B = (1 / 2 - pi / 8) / (1 - pi * pi / 8);
      const A = 1 / 4 - B * pi / 4;
      return [pi / 8 - A - B / 2, A + B];
    }
  }
}

/**
 * How far a half-round tunnel squashes under a line load along its crown: the wall bends as a
 * ring, which the bending along the tunnel does not count.
 *
 * Formula: δ = k P r³/D, D = E t³/12(1 − ν²); k = 3π/8 − 1 (feet free to slide apart), less 1/2π
 * (hinged), or 0.01166 (clamped); crown moment P r/2, P r (1/2 − 1/π), or 0.1515 P r
 *
 * Range: thin ring, t up to r/10; load and feet the same all along; small deflections.
 *
 * Source: curved beams, R. J. Roark, Formulas for Stress and Strain, circular arches, from
 * memory; derived anew in the tests.
 *
 * @param ring Line load [N/m], radius and thickness [m], moduli [Pa], [1], feet.
 * @returns Deflection [m], moment [N] and stress [Pa] at the crown.
 * @throws {InputError} If a size or modulus is not above 0 or the feet are not known.
 *
 * @example
 * ```ts
 * import { tunnelSquash } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const ring = { lineLoad: 100, radius: 0.1, thickness: 0.002, E: 12e9, nu: 0 } as const;
 * const { deflection } = tunnelSquash({ ...ring, feet: "sliding" });
 * assertAlmostEquals(deflection, 0.178097 * 100 * 0.001 / 8, 1e-7);
 * ```
 */
export function tunnelSquash(ring: CrownLoadedRing): RingSquash {
  check.object("ring", ring);
  const { lineLoad, radius, thickness, E, nu, feet } = ring;
  check.finite("line load", lineLoad, "N/m");
  check.positive("thickness", thickness, "m");
  check.positive("radius", radius, "m");
  if (!(radius > thickness)) check.refuse("radius", radius, "must be above the thickness");
  check.positive("modulus", E, "Pa");
  check.within("Poisson ratio", nu, { min: -0.99, max: 0.99 });
  check.oneOf("feet", feet, ["sliding", "hinged", "clamped"]);
  const D = E * thickness ** 3 / (12 * (1 - nu * nu));
  const [k, m] = coefficients(feet);
  const crownMoment = m * lineLoad * radius;
  return Object.freeze({
    deflection: check.result("deflection", k * lineLoad * radius ** 3 / D, "m"),
    crownMoment: check.result("crown moment", crownMoment, "N"),
    crownStress: check.result("crown stress", Math.abs(6 * crownMoment / thickness ** 2), "Pa"),
  });
}
