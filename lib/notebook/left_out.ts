import { checksFor, InputError } from "../check/mod.ts";

/** The name by which the runner knows that a notebook has nothing to answer from. */
export const LEFT_OUT = "LeftOut";

const check = checksFor("leave the notebook out");
const WANTED = "must be in the part folder";

/**
 * Ends a notebook that has nothing to answer from, such as one about putty where the part folder has
 * no `putty.csv`: that is no fault, and the run says so.
 *
 * Formula: none.
 *
 * Range: any text
 *
 * Source: none.
 *
 * @param present Whether it is there.
 * @param what What must be there, such as `putty.csv`.
 * @returns Nothing; the notebook goes on.
 * @throws {InputError} If it is not there: by its name the runner knows it.
 *
 * @example
 * ```ts
 * import { leaveOutUnless } from "@laminate/notebooks/notebook";
 * import { InputError } from "@laminate/notebooks/check";
 * import { assertThrows } from "@std/assert";
 *
 * leaveOutUnless(true, "putty.csv");
 * assertThrows(() => leaveOutUnless(false, "putty.csv"), InputError, "putty.csv is missing");
 * ```
 */
export function leaveOutUnless(present: boolean, what: string): asserts present {
  const argument = check.text("what must be there", what);
  if (present === true) return;
  if (present !== false) check.refuse("present", present, "must be true or false");
  const error = new InputError("answer", [{ argument, value: undefined, wanted: WANTED }]);
  throw Object.assign(error, { name: LEFT_OUT });
}

/** What was missing, from the message of `leaveOutUnless`. */
export function leftOutReason(message: string): string {
  return message.replace(/^Cannot answer: /, "").replace(`, ${WANTED}`, "");
}
