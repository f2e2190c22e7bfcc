import { checksFor } from "../check/mod.ts";
import { type FilletQuantity, filletQuantity, type FilletRun } from "./fillet.ts";

const check = checksFor("compute the fillet schedule");

/** One kind of fillet in the part: where it is and how it is made. */
export interface FilletPlace extends Omit<FilletRun, "density"> {
  /** Where it is, for the table. */
  readonly name: string;
}

/** The fillets of a part and the putty for them. */
export interface FilletPlan {
  /** The fillets, one entry a kind. */
  readonly places: readonly FilletPlace[];
  /** Density of the putty [kg/m³]. */
  readonly density: number;
  /** Putty scraped off or left in the cup and the bag, over putty mixed [1]. */
  readonly lossFraction: number;
}

/** One line of the schedule. */
export interface FilletLine extends FilletQuantity {
  /** Where it is. */
  readonly name: string;
  /** Length of all fillets of this kind [m]. */
  readonly totalLength: number;
}

/** Putty for all the corners of a part. */
export interface FilletSchedule {
  /** One line a kind of fillet, in the order given. */
  readonly lines: readonly FilletLine[];
  /** Length of all fillets [m]. */
  readonly length: number;
  /** Putty that stays in the part [m³]. */
  readonly volume: number;
  /** Mass of the putty that stays in the part [kg]. */
  readonly mass: number;
  /** Putty to mix, losses included [m³]. */
  readonly volumeToMix: number;
  /** Mass of the putty to mix, losses included [kg]. */
  readonly massToMix: number;
}

/**
 * Putty for all the corners of a part, each of its own angle and radius.
 *
 * Formula: volume Σ area × count × length; to mix volume/(1 − loss)
 *
 * Range: as `filletSection`; loss 0 to below 1 (a fifth is usual for small fillets: common
 * practice, no source).
 *
 * Source: plane geometry.
 *
 * @param plan The fillets, the putty's density [kg/m³] and the loss [1].
 * @returns Volume and mass by line and in all, and what to mix.
 * @throws {InputError} If an input is outside its range.
 *
 * @example
 * ```ts
 * import { filletSchedule } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const schedule = filletSchedule({
 *   places: [
 *     { name: "bulkhead to sole", radius: 0.02, cornerDeg: 90, length: 1.2, count: 2 },
 *     { name: "sole to hull", radius: 0.02, cornerDeg: 120, length: 2.0, count: 2 },
 *   ],
 *   density: 600,
 *   lossFraction: 0.2,
 * });
 * assertAlmostEquals(schedule.length, 6.4, 1e-12);
 * assertAlmostEquals(schedule.massToMix, schedule.mass / 0.8, 1e-12);
 * ```
 */
export function filletSchedule(plan: FilletPlan): FilletSchedule {
  const { places, density, lossFraction } = check.object("plan", plan);
  check.list("places", places);
  check.fraction("loss", lossFraction);
  if (!(lossFraction < 1)) check.refuse("loss", lossFraction, "must be below 1");
  const lines = places.map((place): FilletLine => ({
    ...filletQuantity({ ...check.object("place", place), density }),
    name: check.text("name of a place", place.name),
    totalLength: place.length * place.count,
  }));
  const sum = (pick: (line: FilletLine) => number): number =>
    lines.reduce((total, line) => total + pick(line), 0);
  const volume = sum((line) => line.volume);
  const mass = sum((line) => line.mass);
  return check.results({
    lines,
    length: sum((line) => line.totalLength),
    volume,
    mass,
    volumeToMix: volume / (1 - lossFraction),
    massToMix: mass / (1 - lossFraction),
  });
}
