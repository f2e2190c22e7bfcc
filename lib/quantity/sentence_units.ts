import { checksFor } from "../check/mod.ts";
import { fromSI, toSI } from "./convert.ts";
import type { Dimension } from "./dimension.ts";
import { ladders, printed, rung } from "./_display.ts";

const check = checksFor("write a sentence in other units");

/** Metric units as our sentences print them, and what kind of quantity each is there. */
const PRINTED: Readonly<Record<string, Dimension>> = {
  "kg/m³": "density",
  "kg/m²": "areal weight",
  "g/m²": "areal weight",
  "mm/kN": "bending compliance",
  "mm/N": "bending compliance",
  "N/mm": "force per length",
  "N·m": "moment",
  "N m": "moment",
  "kg": "mass",
  "g": "mass",
  "mm": "length",
  "m": "length",
  "kN": "force",
  "N": "force",
  "GPa": "modulus",
  "MPa": "stress",
  "kPa": "pressure",
  "Pa": "pressure",
  "°C": "temperature",
  "mL": "volume",
  "L": "volume",
};

const NUMBER = String.raw`[−-]?\d+(?:\.\d+)?`;
const UNIT = Object.keys(PRINTED).toSorted((a, b) => b.length - a.length).join("|");
/**
 * One number or several with the unit behind the last: "74 to 86 kg/m³", "12 ± 3 g". A number
 * behind a number, as in "honeycomb 48 3 mm", belongs to a name.
 */
const QUANTITY = new RegExp(
  String
    .raw`(?<![\w.,/]|\d )(${NUMBER}(?: (?:to|and|±|by|×) ${NUMBER})*)([ \u00a0\u202f])(${UNIT})(?![\w²³·/*-])`,
  "g",
);

/**
 * A sentence of ours with its metric quantities written in US units, for remarks that rooms make
 * before anybody knows who reads them. Digits stay as many as they were.
 *
 * Formula: each number through SI, as `toSI` and `fromSI`
 *
 * Range: numbers with the metric units in which this library prints; all else stays as it is
 *
 * Source: exact definitions (see `units`)
 *
 * @param sentence The sentence, metric.
 * @param system Metric leaves it as it is.
 * @returns The sentence in the system's units.
 * @throws {InputError} If the sentence is no text or the system unknown.
 *
 * @example
 * ```ts
 * import { sentenceIn } from "@laminate/notebooks/quantity";
 * import { assertEquals } from "@std/assert";
 *
 * const light = "the core weighed 69 kg/m³, where PVC foam 80 has 74 to 86 kg/m³";
 * assertEquals(
 *   sentenceIn(light, "US"),
 *   "the core weighed 4.3 lb/ft³, where PVC foam 80 has 4.6 to 5.4 lb/ft³",
 * );
 * assertEquals(sentenceIn(light, "metric"), light);
 * ```
 */
export function sentenceIn(sentence: string, system: "metric" | "US"): string {
  if (typeof sentence !== "string") check.refuse("the sentence", sentence, "must be text");
  check.oneOf("the system", system, ["metric", "US"]);
  if (system === "metric") return sentence;
  return sentence.replace(QUANTITY, (_, numbers: string, space: string, unit: string) => {
    const dimension = PRINTED[unit]!;
    const metric = unit === "N m" ? "N·m" : unit;
    const values = numbers.match(new RegExp(NUMBER, "g"))!;
    const inSI = (text: string): number => toSI(Number(text.replace("−", "-")), metric, dimension);
    const largest = Math.max(...values.map((text) => Math.abs(inSI(text))));
    const shown = rung(ladders[dimension].US, largest);
    const written = numbers.replace(
      new RegExp(`(± )?(${NUMBER})`, "g"),
      (_, spread: string | undefined, text: string) => {
        // A spread of temperatures has no zero of its own.
        const value = spread !== undefined && dimension === "temperature"
          ? 1.8 * Number(text)
          : fromSI(inSI(text), shown, dimension);
        return `${spread ?? ""}${withDigitsOf(text, value)}`;
      },
    );
    return `${written}${space}${printed(shown)}`;
  });
}

/** A value with as many significant digits as a text shows, two at least. */
function withDigitsOf(text: string, value: number): string {
  const digits = Math.max(2, text.replace(/^[−-]?0*\.?0*/, "").replace(".", "").length);
  const size = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)));
  return value.toFixed(Math.min(9, Math.max(0, digits - 1 - size))).replace("-", "−");
}
