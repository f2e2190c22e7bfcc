import { checksFor } from "../check/mod.ts";
import type { PartMaterial, SectionPart } from "./shaped_section.ts";

const check = checksFor("compute the part of a section");

function checkMaterial(material: PartMaterial): PartMaterial {
  check.object("material", material);
  check.nonNegative("modulus", material.E, "Pa");
  check.nonNegative("density", material.density, "kg/m³");
  return material;
}

/** A part whose figures did not leave the range of numbers. */
function checkedPart(part: SectionPart): SectionPart {
  check.result("area", part.area, "m²");
  check.result("height", part.height, "m");
  check.result("own second moment", part.ownSecondMoment, "m⁴");
  check.result("highest fibre", part.high, "m");
  return Object.freeze(part);
}

/**
 * A rectangle lying flat or standing.
 *
 * Formula: A = b h, I = b h³/12
 *
 * Source: definition.
 *
 * @param name What it is.
 * @param material Modulus [Pa], density [kg/m³].
 * @param place Width [m], heights of bottom and top [m].
 * @returns The part.
 * @throws {InputError} If the width is not above 0 or the top not above the bottom.
 *
 * @example
 * ```ts
 * import { slabPart } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const part = slabPart("skin", { E: 1, density: 1 }, { width: 2, bottom: 1, top: 4 });
 * assertAlmostEquals(part.ownSecondMoment, 2 * 27 / 12, 1e-15);
 * ```
 */
export function slabPart(
  name: string,
  material: PartMaterial,
  place: {
    /** Width [m]. */
    readonly width: number;
    /** Height of the bottom [m]. */
    readonly bottom: number;
    /** Height of the top [m]. */
    readonly top: number;
  },
): SectionPart {
  const { E, density } = checkMaterial(material);
  const { width, bottom, top } = check.object("place", place);
  check.positive(`width of ${name}`, width, "m");
  check.finite(`bottom of ${name}`, bottom, "m");
  const depth = check.positive(`depth of ${name}`, top - bottom, "m");
  const ownSecondMoment = width * depth ** 3 / 12;
  const height = (bottom + top) / 2;
  const area = width * depth;
  return checkedPart({ name, E, density, area, height, ownSecondMoment, low: bottom, high: top });
}

/**
 * Two thin walls that lean, alike left and right.
 *
 * Formula: each A = t h/sin θ, I = t h³/(12 sin θ), h the height from foot to crown
 *
 * Range: t small against h.
 *
 * Source: definition.
 *
 * @param name What it is.
 * @param material Modulus [Pa], density [kg/m³].
 * @param place Wall thickness [m], angle from the base [deg], heights of foot and crown [m].
 * @returns Both walls as one part.
 * @throws {InputError} If a thickness or height is not above 0 or the angle not 5° to 90°.
 *
 * @example
 * ```ts
 * import { wallsPart } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const place = { thickness: 0.001, angleDeg: 30, foot: 0, crown: 0.02 };
 * assertAlmostEquals(wallsPart("walls", { E: 1, density: 1 }, place).area, 8e-5, 1e-18);
 * ```
 */
export function wallsPart(
  name: string,
  material: PartMaterial,
  place: {
    /** Thickness of each wall [m]. */
    readonly thickness: number;
    /** Angle from the base [deg]. */
    readonly angleDeg: number;
    /** Height of the feet [m]. */
    readonly foot: number;
    /** Height of the crown [m]. */
    readonly crown: number;
  },
): SectionPart {
  const { E, density } = checkMaterial(material);
  const { thickness, angleDeg, foot, crown } = check.object("place", place);
  check.positive(`thickness of ${name}`, thickness, "m");
  check.within(`angle of ${name}`, angleDeg, { min: 5, max: 90, unit: "°" });
  check.finite(`foot of ${name}`, foot, "m");
  const h = check.positive(`height of ${name}`, crown - foot, "m");
  const area = 2 * thickness * h / Math.sin(angleDeg * Math.PI / 180);
  const height = (foot + crown) / 2;
  return checkedPart({
    name,
    E,
    density,
    area,
    height,
    ownSecondMoment: area * h * h / 12,
    low: foot,
    high: crown,
  });
}

/**
 * A thin half ring, open side down.
 *
 * Formula: A = π r t, centroid 2r/π over its feet, I = r³ t (π/2 − 4/π), r to the middle of t
 *
 * Range: t up to about r/5.
 *
 * Source: definition; handbooks of sections.
 *
 * @param name What it is.
 * @param material Modulus [Pa], density [kg/m³].
 * @param place Radius to the middle of the wall [m], thickness [m], height of its feet [m].
 * @returns The part.
 * @throws {InputError} If the thickness is not above 0 or not below the radius.
 *
 * @example
 * ```ts
 * import { halfRingPart } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const place = { radius: 0.02, thickness: 0.001, feet: 0 };
 * const part = halfRingPart("tunnel", { E: 1, density: 1 }, place);
 * assertAlmostEquals(part.height, 0.04 / Math.PI, 1e-15);
 * ```
 */
export function halfRingPart(
  name: string,
  material: PartMaterial,
  place: {
    /** Radius to the middle of the wall [m]. */
    readonly radius: number;
    /** Thickness [m]. */
    readonly thickness: number;
    /** Height of its feet [m]. */
    readonly feet: number;
  },
): SectionPart {
  const { E, density } = checkMaterial(material);
  const { radius: r, thickness: t, feet } = check.object("place", place);
  check.positive(`thickness of ${name}`, t, "m");
  check.finite(`feet of ${name}`, feet, "m");
  if (!(r > t)) check.refuse(`radius of ${name}`, r, "must be a number above the thickness");
  return checkedPart({
    name,
    E,
    density,
    area: Math.PI * check.finite(`radius of ${name}`, r, "m") * t,
    height: feet + 2 * r / Math.PI,
    ownSecondMoment: r ** 3 * t * (Math.PI / 2 - 4 / Math.PI),
    low: feet,
    high: feet + r + t / 2,
  });
}

/**
 * A fillet of filler in a right-angled corner.
 *
 * Formula: A = r²(1 − π/4), centroid r(10 − 3π)/(12 − 3π) from each side, I = I side − A z̄²,
 * I side = r⁴(1 − 5π/16)
 *
 * Range: a concave quarter circle tangent to both sides; other angles: area in room filler.
 *
 * Source: handbooks of sections, from memory, derived anew in the tests.
 *
 * @param material Modulus [Pa], density [kg/m³] of the filler.
 * @param radius Radius [m].
 * @param corner Height of the corner [m].
 * @returns The part, above the corner.
 * @throws {InputError} If the radius is not above 0.
 *
 * @example
 * ```ts
 * import { filletPart } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const part = filletPart({ E: 1e9, density: 700 }, 0.01, 0);
 * assertAlmostEquals(part.height, 0.0022337, 1e-7);
 * ```
 */
export function filletPart(material: PartMaterial, radius: number, corner: number): SectionPart {
  const { E, density } = checkMaterial(material);
  check.positive("radius of the fillet", radius, "m");
  check.finite("corner", corner, "m");
  const area = radius ** 2 * (1 - Math.PI / 4);
  const arm = radius * (10 - 3 * Math.PI) / (12 - 3 * Math.PI);
  return checkedPart({
    name: "fillet",
    E,
    density,
    area,
    height: corner + arm,
    ownSecondMoment: radius ** 4 * (1 - 5 * Math.PI / 16) - area * arm * arm,
    low: corner,
    high: corner + radius,
  });
}
