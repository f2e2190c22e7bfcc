/** One thing that is wrong with an input, and where it stands if it came from a file. */
export interface Fault {
  /** The argument, column or field that is wrong, in the user's words. */
  readonly argument: string;
  /** The value that was found there. */
  readonly value: unknown;
  /** What would be accepted instead. */
  readonly wanted: string;
  /** The unit the value is held in, if it has one. */
  readonly unit?: string;
  /** The file it came from. */
  readonly file?: string;
  /** The line in that file, counted from 1 as a text editor counts. */
  readonly line?: number;
}

/**
 * An input that cannot be meant, said so that its owner can mend it.
 *
 * A class, because callers tell a wrong input from a wrong program by `instanceof`.
 *
 * @example
 * ```ts
 * import { InputError } from "@laminate/notebooks/check";
 * import { assertEquals } from "@std/assert";
 *
 * const error = new InputError("compute the fibre fraction", [
 *   { argument: "resin density", value: 0, unit: "kg/m³", wanted: "must be above 0" },
 * ]);
 * assertEquals(
 *   error.message,
 *   "Cannot compute the fibre fraction: resin density is 0 kg/m³, must be above 0",
 * );
 * ```
 */
export class InputError extends Error {
  /** The name by which a catcher knows it. */
  override readonly name: string = "InputError";
  /** Every fault that was found, in the order of the input. */
  readonly faults: readonly Fault[];

  /**
   * Gathers the faults of one action into one message.
   *
   * @param action What could not be done, as it follows "Cannot".
   * @param faults What is wrong; at least one.
   */
  constructor(action: string, faults: readonly Fault[]) {
    const lines = describeFaults(faults);
    super(
      faults.length === 1
        ? `Cannot ${action}: ${lines[0]}`
        : `Cannot ${action}: ${faults.length} faults\n${
          lines.map((line) => `  ${line}`).join("\n")
        }`,
    );
    this.faults = faults;
  }
}

/** Most lines of one message: the rest stands in `faults`. */
const MOST_LINES = 40;
/** Most places that are named for one fault. */
const MOST_PLACES = 5;

/** The faults as lines; one that stands in many rows of a file is one line. */
function describeFaults(faults: readonly Fault[]): readonly string[] {
  const alike = new Map<string, Fault[]>();
  faults.forEach((fault, i) => {
    const { file, line, argument, value, wanted } = fault;
    const placed = file !== undefined && line !== undefined;
    const key = JSON.stringify(placed ? [file, argument, String(value), wanted] : i);
    const group = alike.get(key);
    if (group === undefined) alike.set(key, [fault]);
    else group.push(fault);
  });
  const groups = [...alike.values()];
  const lines = groups.slice(0, MOST_LINES).map((group) => {
    const places = group.slice(0, MOST_PLACES).map(({ line }) => line).join(", ");
    const more = group.length > MOST_PLACES ? ` and ${group.length - MOST_PLACES} more` : "";
    const first = group[0]!;
    return group.length === 1
      ? describeFault(first)
      : `${first.file} lines ${places}${more}: ${describeFault(withoutPlace(first))}`;
  });
  const rest = groups.slice(MOST_LINES).reduce((sum, group) => sum + group.length, 0);
  return rest === 0 ? lines : [...lines, `and ${rest} more`];
}

function withoutPlace({ file: _file, line: _line, ...fault }: Fault): Fault {
  return fault;
}

/**
 * One fault as one line: where, what was found, what is wanted.
 *
 * @param fault The fault to describe.
 * @returns A line such as `weighings.csv line 7: part_mass_g is "-3", must be above 0`.
 * @throws {InputError} If it is no object.
 *
 * @example
 * ```ts
 * import { describeFault } from "@laminate/notebooks/check";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(
 *   describeFault({
 *     file: "weighings.csv",
 *     line: 7,
 *     argument: "part_mass_g",
 *     value: "-3",
 *     wanted: "must be above 0",
 *   }),
 *   'weighings.csv line 7: part_mass_g is "-3", must be above 0',
 * );
 * ```
 */
export function describeFault(fault: Fault): string {
  if (typeof fault !== "object" || fault === null) {
    const wanted = "must be an object with named fields";
    throw new InputError("describe the fault", [{ argument: "fault", value: fault, wanted }]);
  }
  const place = fault.file === undefined
    ? ""
    : `${fault.file}${fault.line === undefined ? "" : ` line ${fault.line}`}: `;
  const unit = fault.unit !== undefined && typeof fault.value === "number" ? ` ${fault.unit}` : "";
  return `${place}${fault.argument} is ${describeValue(fault.value)}${unit}, ${fault.wanted}`;
}

/** Longest piece of somebody's text that is quoted back. */
const LONGEST_QUOTE = 60;

function describeValue(value: unknown): string {
  if (value === undefined) return "missing";
  if (typeof value === "string") {
    return JSON.stringify(
      value.length > LONGEST_QUOTE ? `${value.slice(0, LONGEST_QUOTE)}…` : value,
    );
  }
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === "object" && value !== null) return "an object";
  if (typeof value === "function") return "a function";
  return String(value);
}
