import { compoundUnit } from "./_compound.ts";
import { hint, kinds, mismatch, unitsWanted } from "./_hints.ts";
import type { Checks } from "../check/mod.ts";
import { type Dimension, siUnits } from "./dimension.ts";
import { type Unit, units } from "./unit_table.ts";

const bySpelling = new Map<string, Unit>();
for (const unit of units) {
  for (const spelling of [unit.symbol, ...unit.aliases]) {
    const key = plainSpelling(spelling);
    const taken = bySpelling.get(key);
    if (taken !== undefined && taken !== unit) {
      throw new Error(`the spelling ${key} stands for ${taken.symbol} and ${unit.symbol}`);
    }
    bySpelling.set(key, unit);
  }
}

const superscripts: Readonly<Record<string, string>> = { "²": "2", "³": "3", "⁻": "-", "⁶": "6" };

/** One spelling for `kg/m^3`, `kg/m³`, `kg / m**3` and `kg/m3`; `N m`, `N·m` and `N*m`. */
export function plainSpelling(text: string): string {
  return text.trim()
    .replace(/[²³⁻⁶]/g, (sign) => superscripts[sign]!)
    .replace(/\s*(?:\*\*|\^)\s*/g, "")
    .replace(/\s*[/∕⁄]\s*/g, "/")
    .replace(/\s*[·⋅×*]\s*/g, "*")
    .replace(/[°º]\s*([CF])\b/g, "deg$1")
    .replace(/\bdeg\s+([CF])\b/g, "deg$1")
    .replace(/μ/g, "u").replace(/µ/g, "u")
    .replace(/\s+/g, " ");
}

/** The unit with that spelling; a space may stand for a product, a leading `/` for `1/`. */
export function findUnit(text: string): Unit | undefined {
  const key = plainSpelling(text);
  return bySpelling.get(key) ?? bySpelling.get(key.replaceAll(" ", "*")) ??
    (key.startsWith("/") ? bySpelling.get(`1${key}`) : undefined);
}

/** A unit as it is meant for a kind of quantity, or what would do instead. */
export type Meant =
  | { readonly unit: Unit; readonly dimension: Dimension }
  | { readonly wanted: string };

/**
 * The unit as it is meant for a kind of quantity: a cloth's ounces are per square yard, and a
 * degree of a temperature difference has no zero. Without a kind, the commonest with that unit.
 */
export function meantUnit(text: unknown, dimension?: Dimension): Meant {
  if (dimension !== undefined && !kinds.includes(dimension)) {
    return { wanted: `the kind of quantity must be one of: ${kinds.join(", ")}` };
  }
  if (typeof text !== "string") return { wanted: `must be ${unitsWanted(dimension)}` };
  const unit = findUnit(text) ?? compound(text, dimension);
  if (unit === undefined) return { wanted: hint(text, dimension) };
  const kind = dimension ?? kinds.find((kind) => siUnits[kind] === unit.si)!;
  if (kind === "areal weight" && unit.symbol === "oz") {
    return { unit: findUnit("oz/yd2")!, dimension: kind };
  }
  if (siUnits[kind] !== unit.si) return { wanted: mismatch(unit, kind) };
  if (kind !== "temperature difference" || unit.offset === undefined) {
    return { unit, dimension: kind };
  }
  const { offset: _, ...difference } = unit;
  return { unit: difference, dimension: kind };
}

/** A value in a unit, in SI. */
export function intoSI(value: number, { multiply, divide, offset = 0 }: Unit): number {
  return (value + offset) * multiply / divide;
}

/** An SI value in a unit. */
export function outOfSI(value: number, { multiply, divide, offset = 0 }: Unit): number {
  return value * divide / multiply - offset;
}

function compound(text: string, dimension?: Dimension): Unit | undefined {
  const key = plainSpelling(text);
  if (dimension !== undefined) return compoundUnit(key, siUnits[dimension]);
  for (const kind of kinds) {
    const unit = compoundUnit(key, siUnits[kind]);
    if (unit !== undefined) return unit;
  }
  return undefined;
}

/** The value in SI, if it can be one: finite, and not colder than absolute zero. */
export function checkedSI(check: Checks, value: number, unit: Unit): number {
  const si = check.result("the value in SI", intoSI(value, unit), unit.si);
  if (unit.offset !== undefined && !(si >= 0)) {
    return check.refuse("the temperature", `${value} ${unit.symbol}`, belowZero);
  }
  return si;
}

const belowZero = "must not be below absolute zero (-273.15 degC, -459.67 degF)";
