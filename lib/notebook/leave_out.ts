import { checksFor, InputError } from "../check/mod.ts";

/** The name by which the runner knows that a notebook has nothing to answer from. */
export const LEFT_OUT = "LeftOut";

const check = checksFor("leave the notebook out");
const WANTED = "must be in the part folder";

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
 * @param what What is missing, such as `putty.csv`.
 * @returns Nothing: it throws.
 * @throws {InputError} Always: by its name the runner knows it.
 *
 * @example
 * ```ts
 * import { leaveOut } from "@laminate/notebooks/notebook";
 * import { InputError } from "@laminate/notebooks/check";
 * import { assertThrows } from "@std/assert";
 *
 * assertThrows(() => leaveOut("putty.csv"), InputError, "putty.csv is missing");
 * ```
 */
export function leaveOut(what: string): never {
  const argument = check.text("what is missing", what);
  const error = new InputError("answer", [{ argument, value: undefined, wanted: WANTED }]);
  throw Object.assign(error, { name: LEFT_OUT });
}

/** What was missing, from the message of `leaveOut`. */
export function leftOutReason(message: string): string {
  return message.replace(/^Cannot answer: /, "").replace(`, ${WANTED}`, "");
}
