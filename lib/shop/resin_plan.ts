import { checksFor } from "../check/mod.ts";
import {
  massRatioReadAsVolume,
  type MeasuredMix,
  measureMix,
  type Misreading,
  type MixDensities,
} from "../filler/mod.ts";

const check = checksFor("compute the resin for the day");

/** Cloth to be wetted out. */
export interface ClothToWet {
  /** What it is, for the table. */
  readonly name: string;
  /** Area of cloth as cut, all plies of this kind together [m²]. */
  readonly area: number;
  /** Dry mass per area [kg/m²]. */
  readonly arealWeight: number;
  /** Fibre mass over laminate mass aimed at [1]. */
  readonly fibreMassFraction: number;
}

/** A core that drinks resin with its open cells or cut surface. */
export interface CoreToWet {
  /** What it is, for the table. */
  readonly name: string;
  /** Area of one face [m²]. */
  readonly area: number;
  /** Faces that are wetted: 1 or 2 [1]. */
  readonly faces: number;
  /** Resin taken up by one face [kg/m²]. */
  readonly resinUptake: number;
}

/** A coat of resin, or a fabric that soaks some up and is thrown away. */
export interface ResinCoat {
  /** What it is, for the table. */
  readonly name: string;
  /** Area [m²]. */
  readonly area: number;
  /** Resin on or in it [kg/m²]. */
  readonly arealMass: number;
  /** Whether it stays in the part (a mould-face coat) or leaves it (peel ply, breather). */
  readonly stays: boolean;
}

/** Everything that takes resin on the day. */
export interface ResinTask {
  /** Cloths. */
  readonly cloths: readonly ClothToWet[];
  /** Cores. */
  readonly cores: readonly CoreToWet[];
  /** Coats and fabrics. */
  readonly coats: readonly ResinCoat[];
  /** Squeezed over the edge, left in cup, brush and roller, over resin mixed [1]. */
  readonly lossFraction: number;
  /** Hardener mass for 100 mass of resin [1]. */
  readonly phr: number;
  /** Densities of the two liquids [kg/m³]. */
  readonly densities: MixDensities;
}

/** One line of the resin plan. */
export interface ResinLine {
  /** What takes the resin. */
  readonly name: string;
  /** Where it ends up. */
  readonly where: "cloth" | "core" | "coat" | "thrown away" | "loss";
  /** Mixed resin [kg]. */
  readonly mass: number;
}

/** Resin and hardener for the day. */
export interface ResinPlan {
  /** Where the resin goes; the lines add up to `total`. */
  readonly lines: readonly ResinLine[];
  /** Mixed resin to plan for [kg]. */
  readonly total: number;
  /** Mixed resin that stays in the part [kg]. */
  readonly inPart: number;
  /** Resin and hardener, by mass and by volume. */
  readonly mix: MeasuredMix;
  /** What happens if the ratio by mass is measured by volume. */
  readonly misread: Misreading;
}

/**
 * Resin and hardener for the day, line by line: cloth, core, coats, what is thrown away and lost.
 *
 * Formula: cloth A w (1 − W)/W; core A × faces × uptake; coats A × mass; total = sum/(1 − loss)
 *
 * Range: fibre mass fraction W above 0 to 1; loss 0 to below 1. A good ratio is "just wet, no
 * more": common practice, no source.
 *
 * Source: mass balance.
 *
 * @param task Cloths, cores, coats, loss and mixing ratio.
 * @returns Lines that add up to the total [kg], and what to weigh or measure.
 * @throws {InputError} If an input is outside its range or nothing takes resin.
 *
 * @example
 * ```ts
 * import { planResin } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const plan = planResin({
 *   cloths: [{ name: "200 g cloth", area: 4, arealWeight: 0.2, fibreMassFraction: 0.5 }],
 *   cores: [{ name: "foam", area: 1.8, faces: 2, resinUptake: 0.25 }],
 *   coats: [],
 *   lossFraction: 0.15,
 *   phr: 30,
 *   densities: { resinDensity: 1150, hardenerDensity: 980 },
 * });
 * assertAlmostEquals(plan.inPart, 0.8 + 0.9, 1e-12);
 * assertAlmostEquals(plan.total, 1.7 / 0.85, 1e-12);
 * ```
 */
export function planResin(task: ResinTask): ResinPlan {
  check.object("task", task);
  const { lossFraction, phr, densities } = task;
  check.fraction("loss", lossFraction);
  if (!(lossFraction < 1)) check.refuse("loss", lossFraction, "must be below 1");
  const taken = [
    ...check.list("cloths", task.cloths, 0).map(clothLine),
    ...check.list("cores", task.cores, 0).map(coreLine),
    ...check.list("coats", task.coats, 0).map(coatLine),
  ];
  const needed = taken.reduce((sum, { mass }) => sum + mass, 0);
  if (!(needed > 0)) check.refuse("resin", needed, "must be above 0: nothing takes any");
  const total = check.result("resin", needed / (1 - lossFraction), "kg");
  const thrown = taken.filter(({ where }) => where === "thrown away");
  return {
    lines: [...taken, {
      name: "edge, cup, brush and roller",
      where: "loss",
      mass: total * lossFraction,
    }],
    total,
    inPart: needed - thrown.reduce((sum, { mass }) => sum + mass, 0),
    mix: measureMix(total * (100 / (100 + check.nonNegative("phr", phr))), phr, densities),
    misread: massRatioReadAsVolume(phr, densities),
  };
}

function clothLine(cloth: ClothToWet): ResinLine {
  const { name, area, arealWeight, fibreMassFraction } = check.object("cloth", cloth);
  check.text("name of a cloth", name);
  check.nonNegative(`area of ${name}`, area, "m²");
  check.positive(`areal weight of ${name}`, arealWeight, "kg/m²");
  check.positive(
    `fibre mass fraction of ${name}`,
    check.fraction(`fibre mass fraction of ${name}`, fibreMassFraction),
  );
  const ratio = (1 - fibreMassFraction) / fibreMassFraction;
  return { name, where: "cloth", mass: check.result("resin", area * arealWeight * ratio, "kg") };
}

function coreLine(core: CoreToWet): ResinLine {
  const { name, area, faces, resinUptake } = check.object("core", core);
  check.text("name of a core", name);
  check.nonNegative(`area of ${name}`, area, "m²");
  check.oneOf(`faces of ${name}`, String(faces), ["1", "2"]);
  check.nonNegative(`resin uptake of ${name}`, resinUptake, "kg/m²");
  return { name, where: "core", mass: check.result("resin", area * faces * resinUptake, "kg") };
}

function coatLine(coat: ResinCoat): ResinLine {
  const { name, area, arealMass, stays } = check.object("coat", coat);
  check.text("name of a coat", name);
  check.nonNegative(`area of ${name}`, area, "m²");
  check.nonNegative(`resin on ${name}`, arealMass, "kg/m²");
  const where = stays ? "coat" : "thrown away";
  return { name, where, mass: check.result("resin", area * arealMass, "kg") };
}
