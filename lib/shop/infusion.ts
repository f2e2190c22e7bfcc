import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the infusion");

/** Resin drawn through a dry stack by vacuum. */
export interface Infusion {
  /** Viscosity of the mixed resin at the temperature of the day [Pa s]. */
  readonly viscosity: number;
  /** Permeability of the stack, flow medium counted in [m²]. */
  readonly permeability: number;
  /** Share of the stack's volume that resin fills [1]. */
  readonly porosity: number;
  /** Pressure difference that drives the resin [Pa]. */
  readonly pressure: number;
  /** Longest way from a feed line to a vent [m]. */
  readonly flowLength: number;
  /** Time from mixing to gel, in the thin layer of the part [s]. */
  readonly gelTime: number;
}

/** Whether a part fills before its resin gels. */
export interface InfusionCheck {
  /** Time to fill [s]. */
  readonly fillTime: number;
  /** Longest way that fills within the gel time [m]. */
  readonly reach: number;
  /** Holds: fills in half the gel time. Fails: not before gel. Not known: in between. */
  readonly verdict: "holds" | "fails" | "not known";
  /** What to know about it. */
  readonly notes: readonly string[];
}

/** Resin thicker than this is for brush and roller: honey is about 10 Pa s (from memory). */
const TOO_THICK = 1;

/** The share of the gel time by which a part should be full, since viscosity rises before gel. */
const SAFE_SHARE = 0.5;

/**
 * Time for resin to fill a dry stack, against its gel time.
 *
 * Formula: t = μ φ L²/(2 K Δp); reach √(2 K Δp t_gel/(μ φ))
 *
 * Range: straight flow front from a line feed, constant viscosity (the true one rises, hence the
 * verdict "not known" beyond half of the gel time); permeability known to a factor of 2 at best.
 *
 * Source: Darcy's law, from memory. Resin as thick as honey suits hand lay-up and not infusion:
 * common practice, no source.
 *
 * @param infusion Resin, stack and pressure.
 * @returns Fill time [s], reach [m] and verdict.
 * @throws {InputError} If an input is not above 0 or the porosity above 1.
 *
 * @example
 * ```ts
 * import { infusionCheck } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { fillTime } = infusionCheck({
 *   viscosity: 0.3, permeability: 1e-9, porosity: 0.5, pressure: 75e3,
 *   flowLength: 1, gelTime: 3600,
 * });
 * assertAlmostEquals(fillTime, 1000, 1e-9);
 * ```
 */
export function infusionCheck(infusion: Infusion): InfusionCheck {
  check.object("infusion", infusion);
  const { viscosity, permeability, porosity, pressure, flowLength, gelTime } = infusion;
  check.positive("viscosity", viscosity, "Pa s");
  check.positive("permeability", permeability, "m²");
  check.positive("porosity", check.fraction("porosity", porosity));
  check.positive("pressure", pressure, "Pa");
  check.positive("flow length", flowLength, "m");
  check.positive("gel time", gelTime, "s");
  const drag = viscosity * porosity / (2 * permeability * pressure);
  const fillTime = check.result("fill time", drag * flowLength ** 2, "s");
  const notes = viscosity > TOO_THICK
    ? ["This resin is as thick as syrup or honey: it suits hand lay-up and not infusion."]
    : [];
  return {
    fillTime,
    reach: check.result("reach", Math.sqrt(gelTime / drag), "m"),
    verdict: fillTime <= SAFE_SHARE * gelTime
      ? "holds"
      : fillTime > gelTime
      ? "fails"
      : "not known",
    notes,
  };
}
