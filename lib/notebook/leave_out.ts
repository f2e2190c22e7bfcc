import { checksFor } from "../check/mod.ts";

/** The name by which the runner knows that a notebook has nothing to answer. */
export const LEFT_OUT = "LeftOut";

/**
 * Ends a notebook that has nothing to answer from, such as one about putty where the part folder has
 * no `putty.csv`: that is no fault, and the run says so.
 *
 * Formula: none; it throws.
 *
 * Range: any text
 *
 * Source: none.
 *
 * @param reason Why, such as `no putty.csv`.
 * @throws {InputError} If there is no reason.
 *
 * @example
 * ```ts
 * import { leaveOut } from "@laminate/notebooks/notebook";
 * import { assertThrows } from "@std/assert";
 *
 * assertThrows(() => leaveOut("no putty.csv"), Error, "no putty.csv");
 * ```
 */
export function leaveOut(reason: string): never {
  const error = new Error(check.text("reason", reason));
  error.name = LEFT_OUT;
  throw error;
}

const check = checksFor("leave the notebook out");
