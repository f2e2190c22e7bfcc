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

declare module "@std/path" {
  export function basename(path: string, suffix?: string): string;
  export function dirname(path: string): string;
  export function fromFileUrl(url: string | URL): string;
  export function isAbsolute(path: string): boolean;
  export function join(path: string | URL, ...paths: string[]): string;
  export function relative(from: string, to: string): string;
  export function resolve(...paths: string[]): string;
  export function toFileUrl(path: string): URL;
}
