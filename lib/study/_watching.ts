import type { Checks } from "../check/mod.ts";

/** How a long computation is watched and stopped. */
export interface Watching {
  /** Told how far it is. */
  readonly progress?: ((done: number, total: number) => void) | undefined;
  /** Stops it. */
  readonly signal?: AbortSignal | undefined;
}

/** Refuses a progress that cannot be called and a signal that is none. */
export function checkWatching(check: Checks, { progress, signal }: Watching): void {
  if (progress !== undefined && typeof progress !== "function") {
    check.refuse("progress", progress, "must be a function of how many are done and of all");
  }
  if (signal !== undefined && !(signal instanceof AbortSignal)) {
    check.refuse("signal", signal, "must be an AbortSignal");
  }
}
