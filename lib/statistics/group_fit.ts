import { checksFor } from "../check/mod.ts";
import { fitParameter } from "./_fit.ts";
import { fProbability } from "./fisher_f.ts";
import { fitLine, type FitParameter, type LineFit, type Readings } from "./line_fit.ts";
import { summarise } from "./summary.ts";

const check = checksFor("fit a line to each group");

/** Readings of one specimen. */
export interface NamedReadings extends Readings {
  /** Name of the specimen. */
  readonly name: string;
}

/** The line of one specimen. */
export interface NamedFit {
  /** Name of the specimen. */
  readonly name: string;
  /** Its own line. */
  readonly fit: LineFit;
}

/** Several specimens' lines, and what they say together. */
export interface GroupFit {
  /** Each specimen's own line, in the order given. */
  readonly fits: readonly NamedFit[];
  /** Mean of the slopes with the scatter from specimen to specimen [unit of y per unit of x]. */
  readonly meanSlope: FitParameter;
  /** Standard deviation of the slopes from specimen to specimen [unit of y per unit of x]. */
  readonly slopeSd: number;
  /** One slope for all with an intercept each, if specimens do not differ [y per x]. */
  readonly commonSlope: FitParameter;
  /**
   * Whether the specimens' slopes differ by more than their readings' scatter explains; left out
   * where the readings have no scatter to compare with.
   */
  readonly slopesDiffer?: DifferenceTest;
}

/** A ratio of variances and how probable one so large is by chance. */
export interface DifferenceTest {
  /** Variance between over variance within [1]. */
  readonly F: number;
  /** Degrees of freedom above the line [1]. */
  readonly numeratorDof: number;
  /** Degrees of freedom below the line [1]. */
  readonly denominatorDof: number;
  /** Probability of an F so large or larger if there were no difference [1]. */
  readonly chance: number;
}

/**
 * A line for each of several specimens; their mean slope, their common slope, and whether they
 * differ.
 *
 * Formula: mean ± t(0.975, k − 1) s/√k over specimens; common slope Σ Sxy/Σ Sxx with an intercept
 * each; F = [(SSEcommon − Σ SSE)/(k − 1)]/[Σ SSE/(n − 2k)]
 *
 * Range: two specimens or more, three readings or more each. The mean's interval speaks for
 * specimens not yet tested; the common slope's only for these.
 *
 * Source: analysis of covariance as in Draper and Smith, Applied Regression Analysis, from memory.
 *
 * @param groups Readings of each specimen, with its name.
 * @returns Each line, mean and common slope with intervals, and the test of difference.
 * @throws {InputError} If there are fewer than two specimens, two of one name, or one cannot be
 * fitted.
 *
 * @example
 * ```ts
 * import { fitGroups } from "@laminate/notebooks/statistics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { meanSlope, commonSlope } = fitGroups([
 *   { name: "A", x: [0, 1, 2], y: [0, 2, 4.1] },
 *   { name: "B", x: [0, 1, 2], y: [1, 3.1, 5] },
 * ]);
 * assertAlmostEquals(meanSlope.value, 2.025, 1e-14);
 * assertAlmostEquals(commonSlope.value, 2.025, 1e-14);
 * ```
 */
export function fitGroups(groups: readonly NamedReadings[]): GroupFit {
  check.list("groups", groups, 2);
  const names = groups.map((group, i) => check.object(`group ${i}`, group).name);
  names.forEach((name, i) => {
    if (names.indexOf(name) !== i) check.refuse("name of a group", name, "must be given once");
  });
  const fits = groups.map((group): NamedFit => ({ name: group.name, fit: fitLine(group) }));
  const { mean, sd } = summarise(fits.map(({ fit }) => fit.slope.value));
  const shared = commonSlope(fits.map(({ fit }) => fit), groups);
  return {
    fits,
    meanSlope: fitParameter(mean, sd / Math.sqrt(groups.length), groups.length - 1),
    slopeSd: sd,
    ...shared,
  };
}

/** One slope through all groups, and whether it does as well as one each. */
function commonSlope(
  fits: readonly LineFit[],
  groups: readonly Readings[],
): Pick<GroupFit, "commonSlope" | "slopesDiffer"> {
  const spreads = groups.map(({ x }) => {
    const { sd, count } = summarise(x);
    return sd * sd * (count - 1);
  });
  const spread = spreads.reduce((sum, s) => sum + s, 0);
  const slope = fits.reduce((sum, fit, i) => sum + fit.slope.value * spreads[i]!, 0) / spread;
  const within = fits.reduce((sum, fit) => sum + fit.chiSquared, 0);
  const between = fits.reduce(
    (sum, fit, i) => sum + spreads[i]! * (fit.slope.value - slope) ** 2,
    0,
  );
  const count = fits.reduce((sum, fit) => sum + fit.count, 0);
  const numeratorDof = fits.length - 1;
  const denominatorDof = count - 2 * fits.length;
  const commonDof = count - fits.length - 1;
  const u = Math.sqrt((within + between) / commonDof / spread);
  const test = differenceTest({ between, within, numeratorDof, denominatorDof });
  return {
    commonSlope: fitParameter(slope, u, commonDof),
    ...(test === undefined ? {} : { slopesDiffer: test }),
  };
}

/** F and its chance; nothing to say where there is no scatter within. */
function differenceTest(
  sums: {
    readonly between: number;
    readonly within: number;
    readonly numeratorDof: number;
    readonly denominatorDof: number;
  },
): DifferenceTest | undefined {
  const { between, within, numeratorDof, denominatorDof } = sums;
  if (within === 0) return undefined;
  const F = check.result("F", between / numeratorDof / (within / denominatorDof));
  // The upper tail by the reciprocal ratio, so that a small chance keeps its digits.
  const swapped = { numerator: denominatorDof, denominator: numeratorDof };
  const chance = F > 0 ? fProbability(1 / F, swapped) : 1;
  return { F, numeratorDof, denominatorDof, chance };
}
