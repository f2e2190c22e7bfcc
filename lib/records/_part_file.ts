import type { Fault } from "../check/mod.ts";
import type { Catalogue } from "./catalogue.ts";
import type { DecimalSign } from "./number_cell.ts";

/** What the tables of a part are read with. */
export interface PartContext {
  /** The materials. */
  readonly catalogue: Catalogue;
  /** The decimal sign, if the caller knows it. */
  readonly decimal?: DecimalSign;
}

/** A table of the part, read. */
export interface PartFile<Content> {
  /** The rows without fault. */
  readonly content: Content;
  /** What is wrong with it. */
  readonly faults: readonly Fault[];
  /** What its reader should know. */
  readonly notes: readonly string[];
}

/** A name that must be in a list, such as a resin's. */
export function mustBeOneOf(names: Iterable<string>, what: string): string {
  const all = [...names];
  const most = 24;
  const shown = all.slice(0, most).join(", ");
  return all.length === 0
    ? `must be a ${what}, but none is known`
    : `must be a known ${what}: ${shown}${all.length > most ? ", …" : ""}`;
}

/** An object whose fields that can be undefined are optional instead. */
export type Defined<T> =
  & { readonly [Key in keyof T as undefined extends T[Key] ? never : Key]: T[Key] }
  & {
    readonly [Key in keyof T as undefined extends T[Key] ? Key : never]?: Exclude<
      T[Key],
      undefined
    >;
  };

/** The object without its undefined fields. */
export function defined<T extends object>(fields: T): Defined<T> {
  const entries = Object.entries(fields).filter(([, value]) => value !== undefined);
  return Object.freeze(Object.fromEntries(entries)) as Defined<T>;
}
