import {
  type Correlation,
  type NamedNumbers,
  type Propagated,
  propagateTogether,
  type UncertainInput,
} from "../statistics/mod.ts";
import type { WithUncertainty } from "./with_uncertainty.ts";

/** The plain function with its inputs uncertain: one budget for each result. */
export function together<T, R extends string>(
  f: (values: T) => Readonly<Record<R, number>>,
  inputs: WithUncertainty<T>,
  correlation?: Correlation<keyof T & string>,
): Readonly<Record<R, Propagated<keyof T & string>>> {
  type Name = keyof T & string;
  const correlated = correlation !== undefined && correlation.coefficient !== 0;
  return propagateTogether<Name, R>(
    (values: NamedNumbers<Name>) => f(values as unknown as T),
    inputs as Readonly<Record<Name, UncertainInput>>,
    correlated ? { correlations: [correlation] } : {},
  ).results;
}
