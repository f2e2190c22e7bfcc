import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the stay");

/** A wire or rod stay with its end fittings. */
export interface Stay {
  /** Metal area of the wire, not of the circle around its strands [m²]. */
  readonly area: number;
  /** Modulus of the wire as laid; a strand is softer than its steel [Pa]. */
  readonly modulus: number;
  /** Length of the wire [m]. */
  readonly length: number;
  /** From the horizontal to the stay [deg]. */
  readonly angleDeg: number;
  /** Stiffness of each fitting in line with the wire; empty if they are taken as rigid [N/m]. */
  readonly fittingStiffness: readonly number[];
}

/** How stiff a stay is. */
export interface StayStiffness {
  /** Stiffness of the wire alone, EA/L [N/m]. */
  readonly wire: number;
  /** Stiffness along the stay, fittings included [N/m]. */
  readonly axial: number;
  /** Stiffness against a horizontal move of its end [N/m]. */
  readonly horizontal: number;
  /** Stiffness against a vertical move of its end [N/m]. */
  readonly vertical: number;
}

/**
 * Stiffness of a straight stay with its end fittings.
 *
 * Formula: wire EA/L; axial 1/(L/EA + Σ 1/k_fitting); horizontal k cos²; vertical k sin²
 *
 * Range: taut, straight, small moves; sag in `saggingStiffness`.
 *
 * Source: statics; springs in series.
 *
 * @param stay Area [m²], modulus [Pa], length [m], angle [deg], fittings [N/m].
 * @returns Stiffness along the stay and of its end, horizontal and vertical [N/m].
 * @throws {InputError} If an input is not above 0 or the angle not from −90 to 90.
 *
 * @example
 * ```ts
 * import { stayStiffness } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const stay = {
 *   area: 5e-6, modulus: 100e9, length: 2, angleDeg: 30, fittingStiffness: [1e6],
 * };
 * assertAlmostEquals(stayStiffness(stay).axial, 200e3, 1e-6);
 * assertAlmostEquals(stayStiffness(stay).vertical, 50e3, 1e-6);
 * ```
 */
export function stayStiffness(stay: Stay): StayStiffness {
  const wire = wireStiffness(stay);
  const axial = inSeries(wire, stay.fittingStiffness);
  const angle = stay.angleDeg * Math.PI / 180;
  return {
    wire,
    axial,
    horizontal: axial * Math.cos(angle) ** 2,
    vertical: axial * Math.sin(angle) ** 2,
  };
}

/** The load by which a stay hangs straight or sags. */
export interface Sag {
  /** Weight of the wire for its length [N/m]. */
  readonly weightPerLength: number;
  /** Tension in the wire [N]. */
  readonly tension: number;
}

/**
 * Stiffness along a stay that sags under its own weight, tangent at a given tension.
 *
 * Formula: k_wire/(1 + (w l_h)² EA/(12 T³)), l_h the horizontal projection; fittings in series
 *
 * Range: small sag (w l_h well below T).
 *
 * Source: H.-J. Ernst, Bauingenieur 40 (1965) 52, tangent form, from memory.
 *
 * @param stay The stay and its fittings.
 * @param sag Weight for length [N/m] and tension [N].
 * @returns Stiffness along the stay, fittings included [N/m].
 * @throws {InputError} If an input is outside its range.
 *
 * @example
 * ```ts
 * import { saggingStiffness, stayStiffness } from "@laminate/notebooks/joints";
 * import { assert } from "@std/assert";
 *
 * const stay = {
 *   area: 5e-6, modulus: 100e9, length: 2, angleDeg: 30, fittingStiffness: [],
 * };
 * const soft = saggingStiffness(stay, { weightPerLength: 0.4, tension: 50 });
 * assert(soft < stayStiffness(stay).axial);
 * ```
 */
export function saggingStiffness(stay: Stay, sag: Sag): number {
  const wire = wireStiffness(stay);
  check.object("sag", sag);
  check.nonNegative("weight for length", sag.weightPerLength, "N/m");
  check.positive("tension", sag.tension, "N");
  const projection = stay.length * Math.cos(stay.angleDeg * Math.PI / 180);
  const hanging = (sag.weightPerLength * projection / sag.tension) ** 2;
  const softening = 1 + hanging * stay.area * stay.modulus / (12 * sag.tension);
  return check.result("stiffness", inSeries(wire / softening, stay.fittingStiffness), "N/m");
}

function wireStiffness(stay: Stay): number {
  check.object("stay", stay);
  check.positive("area", stay.area, "m²");
  check.positive("modulus", stay.modulus, "Pa");
  check.positive("length", stay.length, "m");
  check.within("angle", stay.angleDeg, { min: -90, max: 90, unit: "°" });
  for (const stiffness of check.list("fittings", stay.fittingStiffness, 0)) {
    check.positive("stiffness of a fitting", stiffness, "N/m");
  }
  return check.result("stiffness", stay.area * stay.modulus / stay.length, "N/m");
}

function inSeries(wire: number, fittings: readonly number[]): number {
  return 1 / fittings.reduce((sum, stiffness) => sum + 1 / stiffness, 1 / wire);
}
