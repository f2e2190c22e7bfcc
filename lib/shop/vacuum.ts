import { checksFor } from "../check/mod.ts";
import { STANDARD_PRESSURE } from "./atmosphere.ts";

const check = checksFor("compute the vacuum");

/** A reading of a vacuum gauge and the air outside the bag. */
export interface GaugeVacuum {
  /** What the gauge shows: 0 without vacuum, negative with it [Pa]. */
  readonly gauge: number;
  /** Pressure of the air outside, that of the day or `standardAtmosphere` [Pa]. */
  readonly outside: number;
}

/** Pressures of a bag. */
export interface BagPressure {
  /** Pressure left inside, absolute [Pa]. */
  readonly absolute: number;
  /** Pressure that presses the bag on the part [Pa]. */
  readonly compaction: number;
  /** Compaction over the pressure outside [1]. */
  readonly shareOfOutside: number;
  /** Compaction over the standard atmosphere [1]. */
  readonly shareOfStandard: number;
  /** What to know about it. */
  readonly notes: readonly string[];
}

/** Share of the outside pressure that a home-made bag seldom passes (estimate). */
const HOME_MADE_LIMIT = 0.95;

/**
 * Absolute pressure in a bag and the pressure that compacts the part.
 *
 * Formula: p_abs = p_out + gauge; compaction = p_out − p_abs
 *
 * Range: gauge at or below 0 and absolute not below 0. A bag presses with the air outside at most:
 * less on a mountain.
 *
 * Source: definition. That a home-made bag seldom holds more than 95 %: common practice, no source.
 *
 * @param vacuum Gauge reading and pressure outside [Pa].
 * @returns Absolute and compaction pressure [Pa] and shares [1].
 * @throws {InputError} If the gauge is above 0, or below what the air outside allows.
 *
 * @example
 * ```ts
 * import { bagPressure } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const bag = bagPressure({ gauge: -80e3, outside: 101325 });
 * assertAlmostEquals(bag.absolute, 21325, 1e-9);
 * assertAlmostEquals(bag.compaction, 80e3, 1e-9);
 * ```
 */
export function bagPressure(vacuum: GaugeVacuum): BagPressure {
  const { gauge, outside } = check.object("vacuum", vacuum);
  check.positive("pressure outside", outside, "Pa");
  check.finite("gauge", gauge, "Pa");
  if (!(gauge <= 0)) check.refuse("gauge", gauge, "must be 0 or below: vacuum counts negative");
  if (!(gauge >= -outside)) {
    check.refuse(
      "gauge",
      gauge,
      `must not be below ${-outside} Pa: absolute pressure cannot be below 0`,
    );
  }
  const compaction = -gauge;
  const shareOfOutside = compaction / outside;
  return {
    absolute: outside + gauge,
    compaction,
    shareOfOutside,
    shareOfStandard: compaction / STANDARD_PRESSURE,
    notes: shareOfOutside > HOME_MADE_LIMIT
      ? ["More than 95 % of the air outside is rare in a home-made bag: check the gauge's zero."]
      : [],
  };
}

/** A sandwich under a bag. */
export interface BaggedCore {
  /** Pressure of the bag on the part [Pa]. */
  readonly compaction: number;
  /** Area inside the tape line, the flange included [m²]. */
  readonly bagArea: number;
  /** Compressive strength of the core through its thickness, at the temperature of cure [Pa]. */
  readonly coreStrength: number;
  /** Part of the core's area that carries at first: 1 flat, less for ridges and edges [1]. */
  readonly contactShare: number;
}

/** Force of a bag, and whether it crushes the core. */
export interface CrushCheck {
  /** Force on the mould; under a flat part the bench carries it too [N]. */
  readonly force: number;
  /** Pressure where the core carries [Pa]. */
  readonly corePressure: number;
  /** Core strength over that pressure [1]. */
  readonly reserve: number;
  /** Holds from a reserve of 1 on. */
  readonly verdict: "holds" | "fails";
  /** What is doubtful about it. */
  readonly notes: readonly string[];
}

/** Below this reserve a warm core may crush; common practice, no source. */
const WARM_RESERVE = 2;

/**
 * Force of a bag on mould and core, and whether the core crushes.
 *
 * Formula: F = p A of all that is taped; core pressure = p/share; reserve = σ_c/(p/share)
 *
 * Range: share above 0 to 1: the bag presses a scored or grooved sheet on what the cuts leave. A
 * foam's sheet gives its strength at room temperature; warm it keeps less, at 60 °C often no more
 * than half (common practice, no source), so that a reserve below 2 is noted.
 *
 * Source: statics.
 *
 * @param core Compaction [Pa], taped area [m²], core strength [Pa], contact share [1].
 * @returns Force [N], pressure on the core [Pa], reserve [1] and verdict.
 * @throws {InputError} If an input is outside its range.
 *
 * @example
 * ```ts
 * import { crushCheck } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const found = crushCheck({
 *   compaction: 80e3, bagArea: 2, coreStrength: 0.4e6, contactShare: 0.5,
 * });
 * assertAlmostEquals(found.force, 160e3, 1e-6);
 * assertEquals(found.verdict, "holds");
 * ```
 */
export function crushCheck(core: BaggedCore): CrushCheck {
  const { compaction, bagArea, coreStrength, contactShare } = check.object("core", core);
  check.positive("compaction", compaction, "Pa");
  check.positive("area", bagArea, "m²");
  check.positive("core strength", coreStrength, "Pa");
  check.positive("contact share", check.fraction("contact share", contactShare));
  const corePressure = check.result("pressure on the core", compaction / contactShare, "Pa");
  const reserve = check.result("reserve", coreStrength / corePressure);
  return {
    force: check.result("force", compaction * bagArea, "N"),
    corePressure,
    reserve,
    verdict: reserve >= 1 ? "holds" : "fails",
    notes: reserve < 1 || reserve >= WARM_RESERVE ? [] : [
      `The core carries ${
        reserve.toFixed(1)
      } times what the bag presses, at the temperature of its ` +
      "strength: by room temperature figures a warm cure may crush it.",
    ],
  };
}
