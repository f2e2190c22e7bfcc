import { type Dimension, siUnits } from "./dimension.ts";
import { type Unit, units } from "./unit_table.ts";

/** Every kind of quantity, in the order of the table. */
export const kinds: readonly Dimension[] = Object.keys(siUnits) as Dimension[];

/** The units to offer when one of this kind is wanted. */
export function unitsWanted(dimension?: Dimension): string {
  if (dimension === undefined) {
    return "a unit such as mm, g, N, MPa, g/m2, kg/m3, deg, %, or 1 for a plain number";
  }
  const symbols = units.filter((unit) => unit.si === siUnits[dimension])
    .map((unit) => unit.symbol);
  return `a unit of ${dimension}: ${symbols.join(", ")}`;
}

/** What to say of a unit of another kind; the traps of the trade by name. */
export function mismatch(unit: Unit, dimension: Dimension): string {
  const traps: Readonly<Record<string, Partial<Record<Dimension, string>>>> = {
    oz: {
      volume: "oz is a mass; a fluid ounce is floz",
      force: "oz is a mass; an ounce of force is ozf",
      density: "an ounce by itself is a mass, not a density; write lb/ft3 or kg/m3",
    },
    lb: { force: "lb is a mass; a pound of force is lbf", pressure: "lb is a mass; write psi" },
    kg: { force: "kg is a mass; a kilogram of force is kgf" },
    g: { force: "g is a mass; a gram of force is gf", "areal weight": "g is a mass; write g/m2" },
    inHg: { length: "inHg is a pressure; an inch is in" },
    mm: { "force per length": "mm is a length; write N/mm" },
  };
  const trap = traps[unit.symbol]?.[dimension];
  const said = trap ??
    `${unit.symbol} is a unit of ${kinds.filter((kind) => siUnits[kind] === unit.si).join(" or ")}`;
  return `must be ${unitsWanted(dimension)} (${said})`;
}

/** What to say of an unknown unit; letters with two meanings by name. */
export function hint(text: string, dimension?: Dimension): string {
  const doubtful: Readonly<Record<string, string>> = {
    C: "C alone could be many things: write degC",
    F: "F alone could be many things: write degF",
    Nm: "Nm is also a count of yarn: write N*m",
    "oz t": "a troy ounce is 31.1 g: write grams",
    ozt: "a troy ounce is 31.1 g: write grams",
    "troy oz": "a troy ounce is 31.1 g: write grams",
    ton: "there are several tons: write kg or lb",
    t: "write kg, or mm for a thickness",
  };
  const said = Object.hasOwn(doubtful, text.trim()) ? doubtful[text.trim()] : undefined;
  return `must be ${unitsWanted(dimension)}${said === undefined ? "" : ` (${said})`}`;
}
