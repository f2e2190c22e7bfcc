import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the clamped sandwich");

/** A fitting pulled through a sandwich. */
export interface PulledFitting {
  /** Outer diameter of the washer or head that bears on the far skin [m]. */
  readonly washerDiameter: number;
  /** Thickness of that skin with its build-up [m]. */
  readonly faceThickness: number;
  /** Shear strength of that skin through its thickness [Pa]. */
  readonly faceShearStrength: number;
}

/**
 * Force at which a washer or head punches through a skin.
 *
 * Formula: F = π D t τ
 *
 * Range: a washer that stays flat; the core beneath is not counted.
 *
 * Source: punching shear, statics.
 *
 * @param fitting Washer [m], skin [m] and its strength [Pa].
 * @returns Force [N].
 * @throws {InputError} If an input is not above 0.
 *
 * @example
 * ```ts
 * import { pullThroughForce } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const force = pullThroughForce({
 *   washerDiameter: 0.02, faceThickness: 0.001, faceShearStrength: 50e6,
 * });
 * assertAlmostEquals(force, Math.PI * 1000, 1e-9);
 * ```
 */
export function pullThroughForce(fitting: PulledFitting): number {
  check.object("fitting", fitting);
  check.positive("washer diameter", fitting.washerDiameter, "m");
  check.positive("thickness of the skin", fitting.faceThickness, "m");
  check.positive("shear strength of the skin", fitting.faceShearStrength, "Pa");
  const area = Math.PI * fitting.washerDiameter * fitting.faceThickness;
  return check.result("force", area * fitting.faceShearStrength, "N");
}

/** A round washer pressed on a sandwich by its bolt. */
export interface Washer {
  /** Diameter of the hole through the skin [m]. */
  readonly holeDiameter: number;
  /** Force that presses: the bolt's tension or the pull on the fitting [N]. */
  readonly force: number;
  /** Compressive strength of the core [Pa]. */
  readonly coreStrength: number;
}

/** Pressure of a washer on the core. */
export interface WasherPressure {
  /** Pressure on the core under the washer [Pa]. */
  readonly pressure: number;
  /** Core strength over pressure; below 1 the core crushes [1]. */
  readonly reserve: number;
}

/**
 * Pressure of a washer on the core under a thin skin.
 *
 * Formula: p = F/(π/4 (D² − d²))
 *
 * Range: a washer that stays flat; the skin spreads the force a little further, which is left out
 * (safe side).
 *
 * Source: statics.
 *
 * @param washer Hole [m], force [N] and core strength [Pa].
 * @param diameter Outer diameter of the washer [m].
 * @returns Pressure [Pa] and reserve against crushing [1].
 * @throws {InputError} If an input is not above 0 or the washer not larger than its hole.
 *
 * @example
 * ```ts
 * import { washerPressure } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const washer = { holeDiameter: 0.006, force: 600, coreStrength: 2e6 };
 * const { pressure } = washerPressure(washer, 0.03);
 * assertAlmostEquals(pressure, 600 / (Math.PI / 4 * (9e-4 - 3.6e-5)), 1e-6);
 * ```
 */
export function washerPressure(washer: Washer, diameter: number): WasherPressure {
  checkWasher(washer);
  check.positive("washer diameter", diameter, "m");
  if (!(diameter > washer.holeDiameter)) {
    check.refuse("washer diameter", diameter, `must be above the hole's, ${washer.holeDiameter} m`);
  }
  const gap = (diameter - washer.holeDiameter) * (diameter + washer.holeDiameter);
  const pressure = check.result("pressure", washer.force / (Math.PI / 4 * gap), "Pa");
  return { pressure, reserve: check.result("reserve", washer.coreStrength / pressure) };
}

/**
 * Smallest washer under which the core does not crush.
 *
 * Formula: D = √(d² + 4F/(π σ_c))
 *
 * Range: as `washerPressure`.
 *
 * Source: statics.
 *
 * @param washer Hole [m], force with its factors [N] and core strength [Pa].
 * @returns Outer diameter of the washer [m].
 * @throws {InputError} If an input is not above 0.
 *
 * @example
 * ```ts
 * import { smallestWasher, washerPressure } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const washer = { holeDiameter: 0.006, force: 600, coreStrength: 2e6 };
 * assertAlmostEquals(washerPressure(washer, smallestWasher(washer)).reserve, 1, 1e-12);
 * ```
 */
export function smallestWasher(washer: Washer): number {
  checkWasher(washer);
  const area = 4 * washer.force / (Math.PI * washer.coreStrength);
  return check.result("washer diameter", Math.sqrt(washer.holeDiameter ** 2 + area), "m");
}

/** A flat plate behind a fitting, that spreads its pull over the sandwich. */
export interface BackingPlate {
  /** Length of the plate [m]. */
  readonly length: number;
  /** Width of the plate [m]. */
  readonly width: number;
  /** Pull on the fitting, its factors included [N]. */
  readonly force: number;
  /** How far the plate reaches beyond the fitting's foot on its longest side [m]. */
  readonly overhang: number;
  /** Bending strength of the plate [Pa]. */
  readonly plateStrength: number;
  /** Compressive strength of the core [Pa]. */
  readonly coreStrength: number;
}

/** What a backing plate does. */
export interface BackingPlateCheck {
  /** Pressure on the sandwich, taken as even [Pa]. */
  readonly pressure: number;
  /** Core strength over pressure [1]. */
  readonly coreReserve: number;
  /** Thickness at which the overhang just carries that pressure [m]. */
  readonly leastThickness: number;
}

/**
 * Pressure under a backing plate and the thickness that its overhang needs.
 *
 * Formula: p = F/(a b); t = c √(3p/σ), the overhang c as a cantilever under even pressure
 *
 * Range: pressure taken as even, which a plate thinner than this cannot make.
 *
 * Source: statics; beam bending.
 *
 * @param plate Sizes [m], force [N] and strengths [Pa].
 * @returns Pressure [Pa], reserve of the core [1], least thickness [m].
 * @throws {InputError} If an input is not above 0 or the overhang reaches beyond half the plate.
 *
 * @example
 * ```ts
 * import { backingPlate } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const found = backingPlate({
 *   length: 0.1, width: 0.06, force: 3000, overhang: 0.03,
 *   plateStrength: 150e6, coreStrength: 1.5e6,
 * });
 * assertAlmostEquals(found.pressure, 0.5e6, 1e-6);
 * assertAlmostEquals(found.leastThickness, 0.003, 1e-12);
 * ```
 */
export function backingPlate(plate: BackingPlate): BackingPlateCheck {
  check.object("plate", plate);
  const { length, width, force, overhang, plateStrength, coreStrength } = plate;
  check.positive("length", length, "m");
  check.positive("width", width, "m");
  check.positive("force", force, "N");
  check.positive("overhang", overhang, "m");
  check.positive("strength of the plate", plateStrength, "Pa");
  check.positive("strength of the core", coreStrength, "Pa");
  const longest = Math.max(length, width) / 2;
  if (!(overhang <= longest)) {
    check.refuse("overhang", overhang, `must not be above half of the plate, ${longest} m`);
  }
  const pressure = check.result("pressure", force / (length * width), "Pa");
  return {
    pressure,
    coreReserve: check.result("reserve", coreStrength / pressure),
    leastThickness: check.result(
      "thickness",
      overhang * Math.sqrt(3 * pressure / plateStrength),
      "m",
    ),
  };
}

function checkWasher(washer: Washer): void {
  check.object("washer", washer);
  check.positive("hole diameter", washer.holeDiameter, "m");
  check.positive("force", washer.force, "N");
  check.positive("core strength", washer.coreStrength, "Pa");
}
