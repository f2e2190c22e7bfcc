import type { Checks } from "../check/mod.ts";

/** Checks that this can be called, before it is. */
export function checkFunction(check: Checks, argument: string, f: unknown): void {
  if (typeof f !== "function") check.refuse(argument, f, "must be a function");
}
