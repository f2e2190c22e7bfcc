import type { Fault } from "../check/mod.ts";
import type { Catalogue } from "./catalogue.ts";
import { type Filled, type KnownNames, type TextColumn, textColumn } from "./column.ts";
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

/** Names that a column may hold, such as those of the resins. */
export function known(
  names: ReadonlyMap<string, unknown> | ReadonlySet<string>,
  what: string,
): KnownNames {
  return { names, wanted: mustBeOneOf([...names.keys()], what) };
}

function mustBeOneOf(all: readonly string[], what: string): string {
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

/** Faults in the order of their lines. */
export function byLine(faults: readonly Fault[]): readonly Fault[] {
  return faults.toSorted((a, b) => (a.line ?? 0) - (b.line ?? 0));
}

/** The column of the lay-up that a row belongs to; any name will do where they are not known. */
export function layupColumn(names: ReadonlySet<string> | undefined): Filled<TextColumn> {
  return names === undefined ? textColumn() : textColumn(known(names, "lay-up of layup.csv"));
}
