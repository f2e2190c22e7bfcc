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

/** The unit with that spelling; a space may stand for a product. */
export function findUnit(text: string): Unit | undefined {
  const key = plainSpelling(text);
  return bySpelling.get(key) ?? bySpelling.get(key.replaceAll(" ", "*"));
}

/**
 * The unit as it is meant for a kind of quantity: a cloth's ounces are per square yard, and a
 * degree of a temperature difference has no zero.
 */
export function unitFor(unit: Unit, dimension: Dimension): Unit | undefined {
  if (dimension === "areal weight" && unit.symbol === "oz") return findUnit("oz/yd2");
  if (siUnits[dimension] !== unit.si) return undefined;
  if (dimension !== "temperature difference" || unit.offset === undefined) return unit;
  const { offset: _, ...plain } = unit;
  return plain;
}

/** The spellings to offer when a unit of this kind is wanted. */
export function symbolsFor(dimension: Dimension): string {
  return units.filter((unit) => unit.si === siUnits[dimension]).map((unit) => unit.symbol)
    .join(", ");
}
