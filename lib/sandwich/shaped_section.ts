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
    check.finite(`lowest fibre of ${part.name}`, part.low, "m");
    check.finite(`highest fibre of ${part.name}`, part.high, "m");
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
  check.positive("flexural rigidity of all parts", D, "N·m²");
  const stress = (E: number, z: number): number =>
    check.result("stress for each moment", -E * (z - neutralAxis) / D, "Pa/(N·m)");
  return Object.freeze({
    parts,
    neutralAxis: check.result("neutral axis", neutralAxis, "m"),
    flexuralRigidity: D,
    axialStiffness: EA,
    massPerLength: check.result("mass for each metre", mass, "kg/m"),
    stressPerMoment: parts.map(({ E, low, high }) => [stress(E, low), stress(E, high)] as const),
  });
}
