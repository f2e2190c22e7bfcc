import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the shaped section");

/** What a part is made of. */
export interface PartMaterial {
  /** Modulus along the beam [Pa]. */
  readonly E: number;
  /** Density [kg/m³]. */
  readonly density: number;
}

/** One part of a shaped section; heights count up from any one level. */
export interface SectionPart extends PartMaterial {
  /** What it is, for tables. */
  readonly name: string;
  /** Area [m²]. */
  readonly area: number;
  /** Height of its centroid [m]. */
  readonly height: number;
  /** Second moment of area about its own centroid [m⁴]. */
  readonly ownSecondMoment: number;
  /** Height of its lowest fibre [m]. */
  readonly low: number;
  /** Height of its highest fibre [m]. */
  readonly high: number;
}

/** A section made of parts that bend together. */
export interface ShapedSection {
  /** Its parts. */
  readonly parts: readonly SectionPart[];
  /** Height of the neutral axis [m]. */
  readonly neutralAxis: number;
  /** Flexural rigidity Σ E I [N·m²]. */
  readonly flexuralRigidity: number;
  /** Axial stiffness Σ E A [N]. */
  readonly axialStiffness: number;
  /** Mass for each metre of length [kg/m]. */
  readonly massPerLength: number;
  /** Stress in a part's outer fibres for a sagging moment of 1 N·m: lowest, highest [Pa/(N·m)]. */
  readonly stressPerMoment: readonly (readonly [low: number, high: number])[];
}

/**
 * Rigidity of a section of parts bonded to each other, by the transformed section.
 *
 * Formula: zn = Σ E A z / Σ E A; D = Σ E (I + A (z − zn)²); σ = −M E (z − zn)/D
 *
 * Range: bonded parts, plane sections, no shear lag: of a wide flange only some 1/5 of the span
 * counts beside a stiffener (common practice, no source).
 *
 * Source: Gere and Timoshenko, Mechanics of Materials, composite beams, from memory.
 *
 * @param parts Parts: modulus [Pa], density [kg/m³], area [m²], height [m], own moment [m⁴].
 * @returns Neutral axis [m], D [N·m²], EA [N], mass for each metre [kg/m].
 * @throws {InputError} If there is no part, or a modulus, area or density cannot be meant.
 *
 * @example
 * ```ts
 * import { slabPart, transformedSection } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const steel = { E: 200e9, density: 7850 };
 * const bar = slabPart("bar", steel, { width: 0.02, bottom: 0, top: 0.03 });
 * const { flexuralRigidity } = transformedSection([bar]);
 * assertAlmostEquals(flexuralRigidity, 200e9 * 0.02 * 0.03 ** 3 / 12, 1e-9);
 * ```
 */
export function transformedSection(parts: readonly SectionPart[]): ShapedSection {
  check.list("parts", parts);
  let [EA, first, mass] = [0, 0, 0];
  for (const part of parts) {
    check.object("part", part);
    check.nonNegative(`modulus of ${part.name}`, part.E, "Pa");
    check.nonNegative(`density of ${part.name}`, part.density, "kg/m³");
    check.positive(`area of ${part.name}`, part.area, "m²");
    check.finite(`height of ${part.name}`, part.height, "m");
    check.nonNegative(`own second moment of ${part.name}`, part.ownSecondMoment, "m⁴");
    EA += part.E * part.area;
    first += part.E * part.area * part.height;
    mass += part.density * part.area;
  }
  check.positive("axial stiffness of all parts", EA, "N");
  const neutralAxis = first / EA;
  let D = 0;
  for (const { E, area, height, ownSecondMoment } of parts) {
    D += E * (ownSecondMoment + area * (height - neutralAxis) ** 2);
  }
  return Object.freeze({
    parts,
    neutralAxis: check.result("neutral axis", neutralAxis, "m"),
    flexuralRigidity: check.result("flexural rigidity", D, "N·m²"),
    axialStiffness: EA,
    massPerLength: mass,
    stressPerMoment: parts.map(({ E, low, high }) =>
      [-E * (low - neutralAxis) / D, -E * (high - neutralAxis) / D] as const
    ),
  });
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
  const { E, density } = check.object("material", material);
  const { width, bottom, top } = check.object("place", place);
  check.positive(`width of ${name}`, width, "m");
  check.finite(`bottom of ${name}`, bottom, "m");
  const depth = check.positive(`depth of ${name}`, top - bottom, "m");
  const ownSecondMoment = width * depth ** 3 / 12;
  const height = (bottom + top) / 2;
  return { name, E, density, area: width * depth, height, ownSecondMoment, low: bottom, high: top };
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
  const { E, density } = check.object("material", material);
  const { thickness, angleDeg, foot, crown } = check.object("place", place);
  check.positive(`thickness of ${name}`, thickness, "m");
  check.within(`angle of ${name}`, angleDeg, { min: 5, max: 90, unit: "°" });
  check.finite(`foot of ${name}`, foot, "m");
  const h = check.positive(`height of ${name}`, crown - foot, "m");
  const area = 2 * thickness * h / Math.sin(angleDeg * Math.PI / 180);
  const height = (foot + crown) / 2;
  return {
    name,
    E,
    density,
    area,
    height,
    ownSecondMoment: area * h * h / 12,
    low: foot,
    high: crown,
  };
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
  const { E, density } = check.object("material", material);
  const { radius: r, thickness: t, feet } = check.object("place", place);
  check.positive(`thickness of ${name}`, t, "m");
  check.finite(`feet of ${name}`, feet, "m");
  if (!(r > t)) check.refuse(`radius of ${name}`, r, "must be a number above the thickness");
  return {
    name,
    E,
    density,
    area: Math.PI * check.finite(`radius of ${name}`, r, "m") * t,
    height: feet + 2 * r / Math.PI,
    ownSecondMoment: r ** 3 * t * (Math.PI / 2 - 4 / Math.PI),
    low: feet,
    high: feet + r + t / 2,
  };
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
  const { E, density } = check.object("material", material);
  check.positive("radius of the fillet", radius, "m");
  check.finite("corner", corner, "m");
  const area = radius ** 2 * (1 - Math.PI / 4);
  const arm = radius * (10 - 3 * Math.PI) / (12 - 3 * Math.PI);
  return {
    name: "fillet",
    E,
    density,
    area,
    height: corner + arm,
    ownSecondMoment: radius ** 4 * (1 - 5 * Math.PI / 16) - area * arm * arm,
    low: corner,
    high: corner + radius,
  };
}
