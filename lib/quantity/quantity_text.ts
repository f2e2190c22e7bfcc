import { checksFor } from "../check/mod.ts";
import { unitsWanted } from "./_hints.ts";
import { checkedSI, findUnit, meantUnit } from "./_lookup.ts";
import { type NumberRead, parseNumber, plainNumber } from "./_number.ts";
import { type Dimension, siUnits } from "./dimension.ts";

/**
 * A quantity as the trade writes it, in SI.
 *
 * Numbers may be fractions (`1 1/2 in`, `1-1/2"`, `½ in`) and carry a decimal comma where it can
 * mean one thing (see `readNumber`). Feet and inches, pounds and ounces, hours and minutes may
 * stand together: `5'6"`. A bare `oz` is a mass, except that a cloth's ounces are per square
 * yard where an areal weight is asked for; it is refused where a volume or a force is.
 *
 * Formula: number × unit, as `toSI`
 *
 * Range: the units of `units` and products of them; ratios and counts need no unit; an angle
 * stays in degrees
 *
 * Source: exact definitions (see `units`); spellings: common practice, no source
 *
 * @param text The quantity, such as `6 oz/yd^2`.
 * @param dimension The kind of quantity that it must be.
 * @returns The quantity in SI, degrees for an angle [1].
 * @throws {InputError} If the text is no quantity of this kind, has a rest that does not belong
 * to it, or could mean two things; the message says what would do.
 *
 * @example
 * ```ts
 * import { readQuantity } from "@laminate/notebooks/quantity";
 * import { InputError } from "@laminate/notebooks/check";
 * import { assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
 *
 * assertEquals(readQuantity("200 g/m²", "areal weight"), 0.2);
 * assertAlmostEquals(readQuantity("6 oz", "areal weight"), 0.203434, 5e-7);
 * assertAlmostEquals(readQuantity("25 inHg", "pressure"), 84659.7, 0.05);
 * assertEquals(readQuantity(`1-1/2"`, "length"), 0.0381);
 * assertThrows(() => readQuantity("6 oz", "volume"), InputError, "a fluid ounce is floz");
 * ```
 */
export function readQuantity(text: string, dimension: Dimension): number {
  const check = checksFor(`read the ${dimension}`);
  check.oneOf("the kind of quantity", dimension, Object.keys(siUnits) as Dimension[]);
  const refuse = (wanted: string): never => check.refuse("the text", text, wanted);
  if (typeof text !== "string") return refuse(`must be text such as ${examples[dimension]}`);
  const plain = plainNumber(text);
  const read = pairRead(plain) ?? singleRead(plain, dimension);
  if ("wanted" in read) return refuse(read.wanted);
  const meant = meantUnit(read.unit, dimension);
  if ("wanted" in meant) return refuse(meant.wanted);
  return checkedSI(check, read.value, meant.unit);
}

type Read = { readonly value: number; readonly unit: string } | { readonly wanted: string };

const fractionText = String.raw`\d+(?: | ?- ?)\d+ ?\/ ?\d+|\d+ ?\/ ?\d+`;
const decimalText = String.raw`[\d.,]+(?:e[+-]?\d+)?`;
const leadingNumber = new RegExp(`^[+-]? ?(?:${fractionText}|${decimalText})`, "i");

/** A number, then a unit to the end of the text. */
function singleRead(plain: string, dimension: Dimension): Read {
  const match = leadingNumber.exec(plain);
  if (match === null) {
    return {
      wanted: /^[+-]? ?(nan|inf|∞)/i.test(plain)
        ? "must be a finite number"
        : `must be a number and a unit such as ${examples[dimension]}`,
    };
  }
  const number = parseNumber(match[0]);
  if ("wanted" in number) return number;
  const unit = plain.slice(match[0].length).trim();
  if (unit !== "") return { value: number.value, unit };
  return siUnits[dimension] === "1"
    ? { value: number.value, unit: "1" }
    : { wanted: `must carry ${unitsWanted(dimension)}; such as ${examples[dimension]}` };
}

const pairText = new RegExp(
  String.raw`^([+-]?) ?([\d.,]+) ?([^\d.,+\-\s]+)[ -]*(${fractionText}|[\d.,]+) ?([^\d]+)$`,
);

/** How many of the second unit make one of the first. */
const pairs: Readonly<Record<string, number>> = {
  "ft in": 12,
  "lb oz": 16,
  "h min": 60,
  "min s": 60,
};

/** Two units in one quantity, `5'6"`; nothing if the text is not of that form. */
function pairRead(plain: string): Read | undefined {
  const match = pairText.exec(plain);
  if (match === null) return undefined;
  const [, sign, first, large = "", second, small = ""] = match;
  const unit = findUnit(small)?.symbol ?? "";
  const share = pairs[`${findUnit(large)?.symbol} ${unit}`];
  if (share === undefined) return undefined;
  const whole: NumberRead = parseNumber(first!);
  const rest: NumberRead = parseNumber(second!);
  if ("wanted" in whole) return whole;
  if ("wanted" in rest) return rest;
  if (!Number.isInteger(whole.value) || !(rest.value < share)) {
    return { wanted: `must have a whole number of ${large} and less than ${share} ${unit}` };
  }
  return { value: (sign === "-" ? -1 : 1) * (whole.value * share + rest.value), unit };
}

/** One quantity of each kind, to show in messages. */
const examples: Readonly<Record<Dimension, string>> = {
  "length": '"600 mm" or "1 1/2 in"',
  "thickness": '"0.3 mm" or "10 mil"',
  "area": '"0.25 m2" or "4 ft2"',
  "volume": '"250 mL" or "8 floz"',
  "mass": '"410 g" or "14.5 oz"',
  "areal weight": '"200 g/m2" or "6 oz/yd2"',
  "density": '"80 kg/m3" or "5 lb/ft3"',
  "linear density": '"800 tex" or "12 g/m"',
  "time": '"25 min"',
  "speed": '"2 mm/min"',
  "force": '"20 N" or "4.5 lbf"',
  "force per length": '"15 N/mm" or "86 lbf/in"',
  "moment": '"12 N*m" or "106 lbf*in"',
  "energy": '"1.5 J"',
  "bending stiffness": '"85 N*m2"',
  "bending compliance": '"0.05 mm/N"',
  "curvature": '"0.12 1/m"',
  "pressure": '"85 kPa" or "25 inHg"',
  "stress": '"240 MPa" or "35 ksi"',
  "modulus": '"72 GPa" or "10.4 Msi"',
  "viscosity": '"600 mPa*s" or "600 cP"',
  "temperature": '"20 degC" or "68 degF"',
  "temperature difference": '"15 K" or "27 degF"',
  "thermal expansion": '"22.5e-6/K"',
  "angle": '"45 deg"',
  "ratio": '"0.45" or "45 %"',
  "strain": '"0.0015" or "0.15 %"',
  "count": '"4"',
};
