import { checksFor } from "../check/mod.ts";
import type { LinearLoad, PatchLoad, UniformLoad } from "../sandwich/mod.ts";
import { standardAtmosphere } from "../shop/mod.ts";

const check = checksFor("estimate the load");

/** A load with what it rests on. */
export interface EstimatedLoad<L> {
  /** The load, factor included. */
  readonly load: L;
  /** How it comes about. */
  readonly working: string;
  /** What to mind. */
  readonly caution: string;
}

/** Said beside every load. */
const CAUTION = "The load factor is yours to choose: class and event rules, local codes and the " +
  "boat's designer go first. Where a failure could hurt somebody, have it checked by a " +
  "licensed engineer and try it with a test load, nobody on it.";

/** Standard gravity [m/s²]. */
const GRAVITY = 9.80665;

/** A number in a working: enough digits to follow it, none that a conversion left behind. */
function written(value: number): string {
  return String(Number(value.toPrecision(5)));
}

function factorOf(loadFactor: number | undefined): number {
  return check.within("load factor", loadFactor ?? 1, { min: 1, max: 10 });
}

/**
 * Pressure on a panel from the speed of air or water past it.
 *
 * Formula: p = n ½ ρ V² Cp, ρ of the standard atmosphere unless given
 *
 * Range: steady flow; Cp of a flat panel across the flow near 1.2, along it near 0.1 to 0.3
 * (common practice, no source). Water that slams presses many times harder: not this formula.
 *
 * Source: Bernoulli; ISO 2533 for the density.
 *
 * @param flow Speed [m/s], coefficient [1], altitude [m] or density [kg/m³], load factor [1].
 * @returns The load, positive pressing [Pa].
 * @throws {InputError} If the speed is below 0, a density not above 0, or the factor not 1 to 10.
 *
 * @example
 * ```ts
 * import { speedPressure } from "@laminate/notebooks/study";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { load } = speedPressure({ speed: 10, pressureCoefficient: 1.2 });
 * assertAlmostEquals(load.pressure, 0.5 * 1.225 * 100 * 1.2, 0.01);
 * ```
 */
export function speedPressure(
  flow: {
    /** Speed [m/s]. */
    readonly speed: number;
    /** Pressure coefficient; below 0 for suction [1]. */
    readonly pressureCoefficient: number;
    /** Geopotential altitude for the density of air; 0 if not given [m]. */
    readonly altitude?: number;
    /** Density, instead of the atmosphere's [kg/m³]. */
    readonly density?: number;
    /** Load factor n; 1 if not given [1]. */
    readonly loadFactor?: number;
  },
): EstimatedLoad<UniformLoad> {
  check.object("flow", flow);
  const speed = check.nonNegative("speed", flow.speed, "m/s");
  const Cp = check.finite("pressure coefficient", flow.pressureCoefficient);
  const density = flow.density === undefined
    ? standardAtmosphere(flow.altitude ?? 0).density
    : check.positive("density", flow.density, "kg/m³");
  const n = factorOf(flow.loadFactor);
  const pressure = check.result("pressure", n * 0.5 * density * speed * speed * Cp, "Pa");
  const load: UniformLoad = { kind: "uniform", pressure };
  return Object.freeze({
    load,
    working: `p = n ½ ρ V² Cp = ${written(n)} × ½ × ${written(density)} kg/m³ × (${
      written(speed)
    } m/s)² × ${written(Cp)}`,
    caution: CAUTION,
  });
}

/**
 * Pressure of standing water on a panel, changing along it where the panel stands upright.
 *
 * Formula: p = n ρ g h at each edge
 *
 * Range: still water, fresh 1000 kg/m³, salt 1025.
 *
 * Source: hydrostatics; g 9.80665 m/s².
 *
 * @param water Depths at the start and the end of the panel [m], along which side, density [kg/m³].
 * @returns The load [Pa].
 * @throws {InputError} If a depth is below 0 or the factor not 1 to 10.
 *
 * @example
 * ```ts
 * import { waterHead } from "@laminate/notebooks/study";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { load } = waterHead({ depthAtStart: 0, depthAtEnd: 0.5, along: "y", density: 1000 });
 * assertAlmostEquals(load.atEnd, 4903.325, 1e-9);
 * ```
 */
export function waterHead(
  water: {
    /** Depth below the surface where the side starts [m]. */
    readonly depthAtStart: number;
    /** Depth below the surface where the side ends [m]. */
    readonly depthAtEnd: number;
    /** Along which side the depth changes. */
    readonly along: "x" | "y";
    /** Density [kg/m³]. */
    readonly density: number;
    /** Load factor n; 1 if not given [1]. */
    readonly loadFactor?: number;
  },
): EstimatedLoad<LinearLoad> {
  check.object("water", water);
  const start = check.nonNegative("depth at the start", water.depthAtStart, "m");
  const end = check.nonNegative("depth at the end", water.depthAtEnd, "m");
  const along = check.oneOf("along", water.along, ["x", "y"]);
  const density = check.positive("density", water.density, "kg/m³");
  const n = factorOf(water.loadFactor);
  const at = (depth: number): number =>
    check.result("pressure", n * density * GRAVITY * depth, "Pa");
  const load: LinearLoad = { kind: "linear", along, atStart: at(start), atEnd: at(end) };
  const depths = start === end ? written(start) : `${written(start)} to ${written(end)}`;
  return Object.freeze({
    load,
    working: `p = n ρ g h = ${written(n)} × ${
      written(density)
    } kg/m³ × ${GRAVITY} m/s² × ${depths} m`,
    caution: CAUTION,
  });
}

/**
 * A person's weight on a heel, a foot or a knee.
 *
 * Formula: F = n m g over the patch
 *
 * Range: standing n 1; stepping down 1.5 to 2; jumping 3 and more (common practice, no source).
 * Patches: heel 50 × 50 mm, foot 90 × 250, knee 80 × 80 (common practice, no source).
 *
 * Source: weight; g 9.80665 m/s².
 *
 * @param person Mass [kg], middle of the patch and its sides [m], factor for stepping [1].
 * @returns The load [N].
 * @throws {InputError} If a mass or side is not above 0 or the factor not 1 to 10.
 *
 * @example
 * ```ts
 * import { personLoad } from "@laminate/notebooks/study";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const heel = { x: 0.3, y: 0.2, lengthX: 0.05, lengthY: 0.05 };
 * const { load } = personLoad({ mass: 90, ...heel, loadFactor: 2 });
 * assertAlmostEquals(load.force, 1765.197, 1e-9);
 * ```
 */
export function personLoad(
  person: {
    /** Mass [kg]. */
    readonly mass: number;
    /** Middle of the patch along x [m]. */
    readonly x: number;
    /** Middle of the patch along y [m]. */
    readonly y: number;
    /** Side of the patch along x [m]. */
    readonly lengthX: number;
    /** Side of the patch along y [m]. */
    readonly lengthY: number;
    /** Load factor n; 1 if not given [1]. */
    readonly loadFactor?: number;
  },
): EstimatedLoad<PatchLoad> {
  check.object("person", person);
  const mass = check.positive("mass", person.mass, "kg");
  const n = factorOf(person.loadFactor);
  const load: PatchLoad = {
    kind: "patch",
    force: check.result("force", n * mass * GRAVITY, "N"),
    x: check.finite("x", person.x, "m"),
    y: check.finite("y", person.y, "m"),
    lengthX: check.positive("side along x", person.lengthX, "m"),
    lengthY: check.positive("side along y", person.lengthY, "m"),
  };
  const working = `F = n m g = ${written(n)} × ${written(mass)} kg × ${GRAVITY} m/s²`;
  return Object.freeze({ load, working, caution: CAUTION });
}

/**
 * Pressure of the air on a mould's panel between its ribs while a bag is evacuated.
 *
 * Formula: bag round the whole mould, bridging from rib to rib behind it: p = n Δp presses the
 * panel back between the ribs. Bag sealed to the mould's face: the air presses through laminate
 * and panel from the front and on the panel's back alike, and nothing is left over.
 *
 * Range: as said; a leak behind a bag that goes round the mould lowers the load.
 *
 * Source: statics.
 *
 * @param bag Pressure difference, positive [Pa], and what the bag is sealed to.
 * @returns The load, positive pressing on the panel's front [Pa].
 * @throws {InputError} If the difference is not 0 to 110000 Pa or the factor not 1 to 10.
 *
 * @example
 * ```ts
 * import { vacuumOnMould } from "@laminate/notebooks/study";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(vacuumOnMould({ difference: 80e3, sealed: "front only" }).load.pressure, 0);
 * assertEquals(vacuumOnMould({ difference: 80e3, sealed: "whole mould" }).load.pressure, 80e3);
 * ```
 */
export function vacuumOnMould(
  bag: {
    /** Air pressure less pressure in the bag, positive [Pa]. */
    readonly difference: number;
    /** "front only": bag sealed to the mould's face; "whole mould": bag round mould and ribs. */
    readonly sealed: "front only" | "whole mould";
    /** Load factor n; 1 if not given [1]. */
    readonly loadFactor?: number;
  },
): EstimatedLoad<UniformLoad> {
  check.object("bag", bag);
  const difference = check.within("pressure difference", bag.difference, {
    min: 0,
    max: 110_000,
    unit: "Pa",
  });
  const sealed = check.oneOf("sealed", bag.sealed, ["front only", "whole mould"]);
  const n = factorOf(bag.loadFactor);
  const pressure = sealed === "whole mould" ? n * difference : 0;
  const load: UniformLoad = { kind: "uniform", pressure };
  return Object.freeze({
    load,
    working: sealed === "whole mould"
      ? `p = n Δp = ${written(n)} × ${written(difference)} Pa`
      : "bag and air press on both sides of the panel: nothing is left over",
    caution: CAUTION,
  });
}
