import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the design load");

/** Whether something holds; "not known" where it cannot be said. */
export type Verdict = "holds" | "fails" | "not known";

/** What a load is multiplied by before it meets a strength. */
export interface LoadFactors {
  /** For loads beyond the largest that is expected, impact not counted twice [1]. */
  readonly loadFactor: number;
  /** On top, for a fitting whose strength was computed and not tested; 1 if left out [1]. */
  readonly fittingFactor?: number;
}

/** Factors that published codes of another trade use, for comparison. */
export interface PublishedFactors {
  /** Largest expected to breaking load: 14 CFR 23.303 (aeroplanes), from memory [1]. */
  readonly ultimate: number;
  /** Fittings not proven by test: 14 CFR 23.625 (aeroplanes), from memory [1]. */
  readonly fitting: number;
}

/**
 * Factors of a published code, for material with known allowables and controlled making; a hand
 * lay-up needs more. The event's rules and a qualified person decide.
 */
export const PUBLISHED_FACTORS: PublishedFactors = { ultimate: 1.5, fitting: 1.15 };

/**
 * Load with its factors, to be set against a strength.
 *
 * Formula: P = P_expected × load factor × fitting factor
 *
 * Range: each factor 1 or above.
 *
 * Source: definition; see `PUBLISHED_FACTORS` for figures of one code.
 *
 * @param load Largest load that is expected [N].
 * @param factors Load factor and fitting factor [1].
 * @returns Design load [N].
 * @throws {InputError} If the load is below 0 or a factor below 1.
 *
 * @example
 * ```ts
 * import { designLoad } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * assertAlmostEquals(designLoad(1000, { loadFactor: 3, fittingFactor: 1.15 }), 3450, 1e-9);
 * ```
 */
export function designLoad(load: number, factors: LoadFactors): number {
  check.nonNegative("load", load, "N");
  const { loadFactor, fittingFactor = 1 } = check.object("factors", factors);
  for (const [name, factor] of Object.entries({ loadFactor, fittingFactor })) {
    check.finite(name, factor);
    if (!(factor >= 1)) check.refuse(name, factor, "must be 1 or above");
  }
  return check.result("design load", load * loadFactor * fittingFactor, "N");
}
