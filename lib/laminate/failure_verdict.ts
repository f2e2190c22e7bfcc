import { checksFor } from "../check/mod.ts";

const check = checksFor("describe the failure mode");

/**
 * In which way a ply fails: along 1 in tension or compression, across in tension or compression,
 * in shear, or by one of the three kinds of crack between fibres that Puck tells apart.
 */
export type FailureMode = "1t" | "1c" | "2t" | "2c" | "12" | "A" | "B" | "C";

/** What a failure criterion says of one state of stress. */
export interface FailureVerdict {
  /** The stress times this reaches failure; `null` where no multiple of it does [1]. */
  readonly ratio: number | null;
  /**
   * 1 at failure: the value of the quadratic for Tsai–Hill and Tsai–Wu, else 1/ratio [1].
   * So 0.81 means a ratio of 1.11 by Tsai–Hill and of 1.23 by maximum stress.
   */
  readonly index: number;
  /**
   * How it fails there. A criterion that mixes all stresses in one number names the stress with
   * the largest share of its strength. `null` where nothing fails.
   */
  readonly mode: FailureMode | null;
}

const words: Readonly<Record<FailureMode, string>> = {
  "1t": "tension along the fibres",
  "1c": "compression along the fibres",
  "2t": "tension across the fibres",
  "2c": "compression across the fibres",
  "12": "shear in the plane of the ply",
  "A": "crack along the fibres, pulled open",
  "B": "crack along the fibres by shear, pressed shut",
  "C": "slanted crack along the fibres by pressure, wedging the ply apart",
};

/**
 * A failure mode in words, for tables and answers.
 *
 * Formula: none
 *
 * Range: every mode
 *
 * Source: common practice, no source
 *
 * @param mode The mode.
 * @returns What happens, in words.
 * @throws {InputError} If there is no such mode.
 *
 * @example
 * ```ts
 * import { describeFailureMode } from "@laminate/notebooks/laminate";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(describeFailureMode("2t"), "tension across the fibres");
 * ```
 */
export function describeFailureMode(mode: FailureMode): string {
  return words[check.oneOf("mode", mode, Object.keys(words) as FailureMode[])];
}
