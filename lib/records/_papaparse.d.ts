/**
 * Types of the part of papaparse that this room uses, after the library's own documentation. The
 * published types bring those of Node with them, which this project has no use for.
 */
export interface ParseError {
  readonly code: string;
  /** Place in the text behind the opening quote of the cell. */
  readonly index?: number;
}

export interface ParseSettings {
  readonly delimiter: string;
  readonly newline: "\n";
  readonly comments: "#";
  readonly fastMode?: false;
  readonly skipEmptyLines?: "greedy";
}

export interface StepSettings extends ParseSettings {
  readonly step: (result: StepResult, parser: { abort(): void }) => void;
}

export interface StepResult {
  readonly data: readonly string[];
  readonly errors: readonly ParseError[];
  /** `cursor` is the place behind the row and its line end. */
  readonly meta: { readonly cursor: number };
}

export interface UnparseSettings {
  readonly newline: "\n" | "\r\n";
  readonly quotes: (cell: unknown, column: number) => boolean;
}

declare const Papa: {
  parse(text: string, settings: StepSettings): void;
  parse(text: string, settings: ParseSettings): { readonly data: readonly (readonly string[])[] };
  unparse(rows: readonly (readonly unknown[])[], settings: UnparseSettings): string;
};
export default Papa;
