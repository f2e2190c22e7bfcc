import { create, createUnitDependencies, type Unit as MathUnit, unitDependencies } from "mathjs";
import { type Unit, units } from "./unit_table.ts";

/**
 * Units put together from those of the table, such as `kN/m2` or `lbf*in/deg`: mathjs does the
 * algebra, with the table's own factors, since its pound per square inch and its millimetre of
 * mercury are rounded.
 */
const math = create({ ...unitDependencies, ...createUnitDependencies });

/** Spellings that may stand in a compound: one word, and no zero of its own. */
const words = new Map(
  units.flatMap((unit) =>
    [unit.symbol, ...unit.aliases].filter((word) =>
      /^[A-Za-z]+$/.test(word) && unit.offset === undefined && !["1", "deg"].includes(unit.si)
    ).map((word) => [word, unit] as const)
  ),
);

/** What mathjs calls our units: a prefix of ours keeps its own, rounded ones out of the way. */
const mathName = (unit: Unit): string => `trade${unit.symbol}`;

const isKnown = new Set<string>();

function know(unit: Unit): void {
  if (isKnown.has(unit.symbol)) return;
  isKnown.add(unit.symbol);
  math.createUnit(mathName(unit), `${unit.multiply / unit.divide} ${siExpression(unit.si)}`);
}

/** mathjs's spelling of the SI unit of a kind of quantity. */
function siExpression(si: string): string {
  return si.replaceAll("²", "^2").replaceAll("³", "^3");
}

/**
 * A unit made of the table's units, held in the SI unit asked for.
 *
 * @param key The unit in its plain spelling, such as `kN/m2`.
 * @param si The SI unit that it must reduce to.
 */
export function compoundUnit(key: string, si: string): Unit | undefined {
  if (si === "1" || si === "deg" || !/^[A-Za-z0-9*/ -]+$/.test(key)) return undefined;
  let known = true;
  const expression = key.replaceAll(/([A-Za-z]+)(-?\d)?/g, (_, word: string, power?: string) => {
    const unit = words.get(word);
    if (unit === undefined) known = false;
    else know(unit);
    return known ? `${mathName(unit!)}${power === undefined ? "" : `^${power}`}` : "";
  });
  if (!known) return undefined;
  const product = one(expression);
  const wanted = one(siExpression(si));
  if (product === undefined || wanted === undefined || !product.equalBase(wanted)) return undefined;
  const multiply = product.toSI().toJSON().value / wanted.toSI().toJSON().value;
  return Number.isFinite(multiply) && multiply > 0
    ? { symbol: key, si, multiply, divide: 1, aliases: [] }
    : undefined;
}

/** One of a product of units; nothing if it is none, such as `kg//m3`. */
function one(expression: string): MathUnit | undefined {
  try {
    return math.unit(`1 ${expression.replace(/^1\s*\//, "/")}`);
  } catch {
    return undefined;
  }
}
