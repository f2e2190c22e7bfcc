import { checksFor } from "../check/mod.ts";

const check = checksFor("add up mass, cost and time");

/** An estimate with its ends: as little as it may be, most likely, as much as it may be. */
export interface ThreePoint {
  /** Lower end [any unit]. */
  readonly low: number;
  /** Most likely [unit of the lower end]. */
  readonly likely: number;
  /** Upper end [unit of the lower end]. */
  readonly high: number;
}

/** One item of a part: what it weighs, costs and takes. */
export interface CostLine {
  /** What it is. */
  readonly item: string;
  /** Operation it belongs to: "laying up", "sanding". */
  readonly operation: string;
  /** Mass that the part keeps; negative where work takes mass away [kg]. */
  readonly mass?: ThreePoint;
  /** Cost, in the crew's own money [1]. */
  readonly cost?: ThreePoint;
  /** Working time, all hands added up [s]. */
  readonly time?: ThreePoint;
}

/** A sum of estimates. */
export interface EstimateSum extends ThreePoint {
  /** Mean of the sum [unit of the estimates]. */
  readonly mean: number;
  /** Standard uncertainty of the sum, the estimates taken as independent [unit of them]. */
  readonly u: number;
}

/** Mass, cost and time of a set of lines. */
export interface CostSums {
  /** Mass [kg]. */
  readonly mass: EstimateSum;
  /** Cost [1]. */
  readonly cost: EstimateSum;
  /** Working time [s]. */
  readonly time: EstimateSum;
}

/** Mass, cost and time of a part. */
export interface CostPlan {
  /** The lines as given. */
  readonly lines: readonly CostLine[];
  /** Sums for each operation, in the order of first mention. */
  readonly byOperation: readonly (CostSums & { readonly operation: string })[];
  /** Sums over all lines. */
  readonly total: CostSums;
  /** Operations that every part has and this list lacks. */
  readonly forgotten: readonly string[];
}

/** Operations whose mass and time are forgotten most often; common practice, no source. */
export const OFTEN_FORGOTTEN: readonly string[] = ["fairing skim", "sanding", "painting"];

/**
 * Mass, cost and working time by operation and in all, with ranges, and what was forgotten.
 *
 * Formula: low, likely and high are added up; mean Σ(a + c + b)/3, u² = Σ(a² + b² + c² − ab − ac −
 * bc)/18, each estimate a triangle from a over c to b
 *
 * Range: all lows together are as unlikely as all highs: mean ± 2u is the range to expect.
 *
 * Source: triangular distribution, any text on probability; JCGM 100:2008 (GUM) 5.1.2.
 *
 * @param lines Items with their operation and estimates.
 * @returns Sums by operation and in all, and operations that are missing.
 * @throws {InputError} If an estimate's ends are not in order or a line has no name.
 *
 * @example
 * ```ts
 * import { addUpCosts } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const plan = addUpCosts([
 *   { item: "cloth", operation: "laying up", mass: { low: 0.8, likely: 0.8, high: 0.8 } },
 *   { item: "resin", operation: "laying up", mass: { low: 0.7, likely: 0.8, high: 1.2 } },
 * ]);
 * assertAlmostEquals(plan.total.mass.likely, 1.6, 1e-12);
 * assertEquals(plan.forgotten, ["fairing skim", "sanding", "painting"]);
 * ```
 */
export function addUpCosts(lines: readonly CostLine[]): CostPlan {
  check.list("lines", lines);
  for (const line of lines) {
    check.object("line", line);
    check.text("item", line.item);
    check.text("operation", line.operation);
  }
  const operations = [...new Set(lines.map(({ operation }) => operation))];
  return {
    lines,
    byOperation: operations.map((operation) => ({
      operation,
      ...sums(lines.filter((line) => line.operation === operation)),
    })),
    total: sums(lines),
    forgotten: OFTEN_FORGOTTEN.filter((operation) => !operations.includes(operation)),
  };
}

/** What a design choice adds to a part. */
export interface ChoiceDifference {
  /** Mass added, most likely [kg]. */
  readonly mass: number;
  /** Cost added, most likely [1]. */
  readonly cost: number;
  /** Working time added, most likely [s]. */
  readonly time: number;
  /** The same for each operation that differs. */
  readonly byOperation: readonly {
    /** The operation. */
    readonly operation: string;
    /** Mass added [kg]. */
    readonly mass: number;
    /** Cost added [1]. */
    readonly cost: number;
    /** Working time added [s]. */
    readonly time: number;
  }[];
}

/**
 * What a design choice adds: the likely mass, cost and time of one plan less another's.
 *
 * Formula: with − without, by operation and in all
 *
 * Range: two plans of one part.
 *
 * Source: definition.
 *
 * @param withChoice The plan with the choice.
 * @param without The plan without it.
 * @returns Differences in mass [kg], cost and time [s].
 * @throws {InputError} If a plan is missing.
 *
 * @example
 * ```ts
 * import { addUpCosts, whatItAdds } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const core = (mass: number) =>
 *   addUpCosts([{
 *     item: "core", operation: "laying up", mass: { low: mass, likely: mass, high: mass },
 *   }]);
 * assertAlmostEquals(whatItAdds(core(0.6), core(0.4)).mass, 0.2, 1e-12);
 * ```
 */
export function whatItAdds(withChoice: CostPlan, without: CostPlan): ChoiceDifference {
  const plans = [check.object("plan with the choice", withChoice), check.object("plan", without)];
  for (const plan of plans) checkPlan(plan);
  const operations = [...new Set(plans.flatMap((plan) => plan.byOperation.map(nameOf)))];
  const likely = (plan: CostPlan, operation: string, what: keyof CostSums): number =>
    plan.byOperation.find((entry) => entry.operation === operation)?.[what].likely ?? 0;
  const added = (operation: string, what: keyof CostSums): number =>
    likely(withChoice, operation, what) - likely(without, operation, what);
  const byOperation = operations
    .map((operation) => ({
      operation,
      mass: added(operation, "mass"),
      cost: added(operation, "cost"),
      time: added(operation, "time"),
    }))
    .filter(({ mass, cost, time }) => mass !== 0 || cost !== 0 || time !== 0);
  const total = (what: keyof CostSums): number =>
    withChoice.total[what].likely - without.total[what].likely;
  return check.results({
    mass: total("mass"),
    cost: total("cost"),
    time: total("time"),
    byOperation,
  });
}

function checkPlan({ byOperation, total }: CostPlan): void {
  for (const sums of [...check.list("operations of a plan", byOperation), total]) {
    check.object("sums of a plan", sums);
    for (const what of ["mass", "cost", "time"] as const) {
      check.finite(`likely ${what}`, check.object(what, sums[what]).likely);
    }
  }
}

function nameOf({ operation }: { readonly operation: string }): string {
  return operation;
}

function sums(lines: readonly CostLine[]): CostSums {
  return { mass: sum(lines, "mass"), cost: sum(lines, "cost"), time: sum(lines, "time") };
}

function sum(lines: readonly CostLine[], what: keyof CostSums): EstimateSum {
  let [low, likely, high, variance] = [0, 0, 0, 0];
  for (const line of lines) {
    const estimate = line[what];
    if (estimate === undefined) continue;
    checkEstimate(`${what} of ${line.item}`, estimate);
    const { low: a, likely: c, high: b } = estimate;
    low += a;
    likely += c;
    high += b;
    // (b − a)² − (b − c)(c − a) is the same sum of squares and products without cancelling.
    variance += ((b - a) ** 2 - (b - c) * (c - a)) / 18;
  }
  return check.results({
    ...{ low, likely, high },
    mean: (low + likely + high) / 3,
    u: Math.sqrt(variance),
  });
}

function checkEstimate(name: string, estimate: ThreePoint): void {
  const { low, likely, high } = check.object(name, estimate);
  check.finite(`low ${name}`, low);
  check.finite(`likely ${name}`, likely);
  check.finite(`high ${name}`, high);
  if (!(low <= likely)) check.refuse(`likely ${name}`, likely, `must not be below ${low}`);
  if (!(likely <= high)) check.refuse(`high ${name}`, high, `must not be below ${likely}`);
}
