/**
 * Types of the Deno std modules that we use. npm's `deno-std` carries their code without types;
 * these few declarations follow the modules' own documentation.
 */
declare module "@std/assert" {
  export class AssertionError extends Error {}
  export function assert(expr: unknown, msg?: string): asserts expr;
  export function assertEquals<T>(actual: T, expected: T, msg?: string): void;
  export function assertAlmostEquals(
    actual: number,
    expected: number,
    tolerance?: number,
    msg?: string,
  ): void;
  export function assertThrows<E extends Error = Error>(
    fn: () => unknown,
    // deno-lint-ignore no-explicit-any
    ErrorClass?: new (...args: any[]) => E,
    msgIncludes?: string,
    msg?: string,
  ): E;
}
