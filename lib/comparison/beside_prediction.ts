import { checksFor } from "../check/mod.ts";
import { normalProbability, type Uncertain } from "../statistics/mod.ts";

const check = checksFor("set measured beside predicted");

/** A measured value beside its prediction. */
export interface BesidePrediction {
  /** Measured over predicted, with the uncertainty of both [1]. */
  readonly ratio: Uncertain;
  /** Measured less predicted, in standard uncertainties of that difference [1]. */
  readonly z: number;
  /** Probability of so large a difference, up or down, if both are right [1]. */
  readonly chance: number;
  /** "agrees" below 2, "in doubt" below 3, "disagrees" from there on. */
  readonly verdict: "agrees" | "in doubt" | "disagrees";
  /** The same in plain words. */
  readonly words: string;
}

/**
 * Does one measured value agree with its prediction?
 *
 * Formula: z = (m − p)/√(u²(m) + u²(p) − 2 r u(m) u(p)); ratio m/p with u² by first order
 *
 * Range: predicted above 0; measured and predicted independent of each other unless r is given.
 * Several values of one part share inputs: `explainGap` judges them together.
 *
 * Source: ISO 13528 (zeta score, 2 and 3), from memory; JCGM 100:2008, 5.1.
 *
 * @param measured Measured value [SI].
 * @param predicted Predicted value [SI].
 * @param correlation Correlation r of the two, where they share inputs; 0 if left out [1].
 * @returns Ratio, z, chance, verdict and plain words.
 * @throws {InputError} If an entry is no value with uncertainty, the predicted value is not above 0,
 * the correlation is not within −1 to 1, or nothing of the difference is uncertain.
 *
 * @example
 * ```ts
 * import { besidePrediction } from "@laminate/notebooks/comparison";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const beside = besidePrediction({ value: 1.2, u: 0.03 }, { value: 1, u: 0.04 });
 * assertAlmostEquals(beside.z, 4, 1e-12);
 * assertEquals(beside.verdict, "disagrees");
 * ```
 */
export function besidePrediction(
  measured: Uncertain,
  predicted: Uncertain,
  correlation = 0,
): BesidePrediction {
  for (const [name, { value, u }] of Object.entries(named(measured, predicted))) {
    check.finite(`${name} value`, value);
    check.nonNegative(`uncertainty of the ${name} value`, u);
  }
  check.positive("predicted value", predicted.value);
  check.within("correlation", correlation, { min: -1, max: 1 });
  /** u of a difference: √(a² + b² − 2rab), written so that rounding leaves no negative root. */
  const together = (a: number, b: number): number =>
    Math.hypot(a - correlation * b, Math.sqrt(1 - correlation ** 2) * b);
  const u = check.positive("uncertainty of the difference", together(measured.u, predicted.u));
  const z = check.result("z", (measured.value - predicted.value) / u);
  const value = measured.value / predicted.value;
  const ratio = { value, u: together(measured.u, value * predicted.u) / predicted.value };
  const size = Math.abs(z);
  const verdict = size < 2 ? "agrees" : size < 3 ? "in doubt" : "disagrees";
  const percent = `${(100 * Math.abs(value - 1)).toFixed(0)} % ${value < 1 ? "below" : "above"}`;
  return check.results({
    ...{ ratio, z, verdict },
    chance: 2 * normalProbability(-size),
    words: `${percent} the prediction: ${MEANING[verdict]} (${
      size.toFixed(1)
    } standard uncertainties).`,
  });
}

const MEANING = {
  "agrees": "no more than the uncertainties explain",
  "in doubt": "more than usual; measure again before building on it",
  "disagrees": "more than chance explains; something is not as assumed",
};

function named(measured: Uncertain, predicted: Uncertain): Readonly<Record<string, Uncertain>> {
  return {
    measured: check.object("measured value", measured),
    predicted: check.object("predicted value", predicted),
  };
}
