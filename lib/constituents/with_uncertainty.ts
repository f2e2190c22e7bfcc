import type { Propagated, UncertainInput } from "../statistics/mod.ts";

/** The same named figures, each a value with its standard uncertainty. */
export type WithUncertainty<T> = { readonly [K in keyof T]: UncertainInput };

/** Named results, each with u, U (k = 2), sensitivities and budget. */
export type UncertainResults<R, T> = {
  readonly [K in keyof R]: Propagated<keyof T & string>;
};
