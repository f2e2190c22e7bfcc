/**
 * Every unit and every spelling of it against the definitions of its parts, in exact fractions:
 * `lbf/in2` is a pound-force over an inch squared, whatever the table says.
 *
 * Sources, from memory: SI Brochure, 9th ed. 2019 (SI units, prefixes, litre, minute, hour, day,
 * degree); international yard and pound agreement 1959; CGPM 1901 (standard gravity 9.80665 m/s²);
 * NIST SP 811 (US gallon 231 in³, 128 fluid ounces; conventional mercury 13595.1 kg/m³ at 0 °C;
 * atmosphere 101325 Pa, torr a 760th; poise 0.1 Pa s); tex and denier: ISO 1144.
 */
import { type Dimension, siUnits, toSI, units } from "../../lib/quantity/mod.ts";
import { assertClose } from "../close.ts";
import { assert, assertEquals } from "@std/assert";

/** A factor to SI as a fraction, and its powers of metre, kilogram, second and kelvin. */
interface Exact {
  readonly over: bigint;
  readonly under: bigint;
  readonly powers: readonly [m: number, kg: number, s: number, K: number];
}

const made = (over: bigint, under: bigint, powers: Exact["powers"]): Exact => ({
  over,
  under,
  powers,
});
const NOTHING = made(1n, 1n, [0, 0, 0, 0]);
const METRE = made(1n, 1n, [1, 0, 0, 0]);
const GRAM = made(1n, 1000n, [0, 1, 0, 0]);
const SECOND = made(1n, 1n, [0, 0, 1, 0]);
const NEWTON = made(1n, 1n, [1, 1, -2, 0]);
const JOULE = made(1n, 1n, [2, 1, -2, 0]);
const PASCAL = made(1n, 1n, [-1, 1, -2, 0]);
const KELVIN = made(1n, 1n, [0, 0, 0, 1]);

function times(one: Exact, other: Exact, power = 1): Exact {
  const [over, under] = power > 0 ? [other.over, other.under] : [other.under, other.over];
  const n = BigInt(Math.abs(power));
  const powers = one.powers.map((own, i) => own + power * other.powers[i]!);
  return made(
    one.over * over ** n,
    one.under * under ** n,
    powers as [number, number, number, number],
  );
}
const scaled = (over: bigint, under: bigint, unit: Exact): Exact =>
  times(made(over, under, [0, 0, 0, 0]), unit);

const INCH = scaled(254n, 10_000n, METRE);
const POUND = scaled(45_359_237n, 100_000n, GRAM);
const GRAVITY = made(980_665n, 100_000n, [1, 0, -2, 0]);
const POUND_FORCE = times(POUND, GRAVITY);
const GALLON = scaled(231n, 1n, times(NOTHING, INCH, 3));
const PSI = times(POUND_FORCE, INCH, -2);
const MERCURY = times(GRAVITY, made(135_951n, 10n, [-3, 1, 0, 0]));
const MMHG = times(MERCURY, scaled(1n, 1000n, METRE));
const INHG = times(MERCURY, INCH);
const LITRE = made(1n, 1000n, [3, 0, 0, 0]);
const MINUTE = scaled(60n, 1n, SECOND);
const HOUR = scaled(60n, 1n, MINUTE);

/** Prefixes of the SI before a unit. */
function prefixed(letters: string, symbol: string, unit: Exact): [string, Exact][] {
  const prefixes: Readonly<Record<string, [bigint, bigint]>> = {
    ...{ u: [1n, 1_000_000n], m: [1n, 1000n], c: [1n, 100n], h: [100n, 1n] },
    ...{ k: [1000n, 1n], M: [1_000_000n, 1n], G: [1_000_000_000n, 1n] },
  };
  const all = [...letters].map((letter): [string, Exact] => {
    const [over, under] = prefixes[letter]!;
    return [letter + symbol, scaled(over, under, unit)];
  });
  return [[symbol, unit], ...all];
}

/** Each word that may stand in a unit, and what it means. */
const WORDS = new Map<string, Exact>([
  ...prefixed("umck", "m", METRE),
  ...prefixed("mk", "g", GRAM),
  ...prefixed("k", "N", NEWTON),
  ...prefixed("mk", "J", JOULE),
  ...prefixed("mhkMG", "Pa", PASCAL),
  ...prefixed("m", "L", LITRE),
  ...prefixed("m", "l", LITRE),
  ...prefixed("u", "in", INCH),
  ...prefixed("m", "bar", scaled(100_000n, 1n, PASCAL)),
  ...([
    [NOTHING, "1"],
    [METRE, "metre metres meter meters"],
    [scaled(1n, 1000n, METRE), "millimetre millimetres millimeter millimeters"],
    [scaled(1n, 100n, METRE), "centimetre centimetres centimeter centimeters"],
    [scaled(1n, 1_000_000n, METRE), "micron microns"],
    [INCH, `inch inches " ″ ” ''`],
    [scaled(12n, 1n, INCH), "ft foot feet ' ′ ’"],
    [scaled(36n, 1n, INCH), "yd yard yards"],
    [scaled(1n, 1000n, INCH), "mil mils thou"],
    [LITRE, "litre litres liter liters"],
    [scaled(1n, 1000n, LITRE), "cc millilitre milliliter"],
    [GALLON, "gal gallon gallons"],
    [scaled(1n, 128n, GALLON), "floz fl_oz fl._oz fl.oz"],
    [GRAM, "gram grams gramme grammes"],
    [scaled(1000n, 1n, GRAM), "kilogram kilograms"],
    [POUND, "lb lbs lbm pound pounds"],
    [scaled(1n, 16n, POUND), "oz ounce ounces"],
    [SECOND, "s sec second seconds"],
    [MINUTE, "min minute minutes"],
    [HOUR, "h hr hour hours"],
    [scaled(24n, 1n, HOUR), "d day days"],
    [NEWTON, "newton newtons"],
    [times(GRAM, GRAVITY), "gf"],
    [scaled(1000n, 1n, times(GRAM, GRAVITY)), "kgf kp"],
    [POUND_FORCE, "lbf"],
    [scaled(1n, 16n, POUND_FORCE), "ozf"],
    [JOULE, "joule joules"],
    [PSI, "psi"],
    [scaled(1000n, 1n, PSI), "ksi"],
    [scaled(1_000_000n, 1n, PSI), "Msi msi"],
    [scaled(1n, 144n, PSI), "psf"],
    [scaled(101_325n, 1n, PASCAL), "atm"],
    [scaled(101_325n, 760n, PASCAL), "torr Torr"],
    [MMHG, "mmHg mm_Hg"],
    [INHG, `inHg in_Hg "Hg ″Hg`],
    [scaled(1n, 1000n, times(PASCAL, SECOND)), "cP"],
    [KELVIN, "K kelvin degC"],
    [scaled(5n, 9n, KELVIN), "degF"],
    [scaled(1n, 1_000_000n, NOTHING), "1e-6 10^-6 ×10^-6 ppm ustrain microstrain"],
    [scaled(1n, 100n, NOTHING), "% percent pct"],
    // Grams of a kilometre and of nine; grams of a square metre, ounces of a square yard, pounds of
    // a cubic foot.
    [times(GRAM, scaled(1000n, 1n, METRE), -1), "tex"],
    [times(GRAM, scaled(9000n, 1n, METRE), -1), "denier den"],
    [times(GRAM, METRE, -2), "gsm"],
    [times(scaled(1n, 16n, POUND), scaled(36n, 1n, INCH), -2), "osy"],
    [times(POUND, scaled(12n, 1n, INCH), -3), "pcf"],
  ] as const).flatMap(([unit, words]) =>
    words.split(" ").map((word): [string, Exact] => [word.replaceAll("_", " "), unit])
  ),
]);

/** A spelling taken apart: products, quotients and powers of the words. */
function meaningOf(spelling: string): Exact {
  const whole = WORDS.get(spelling);
  if (whole !== undefined) return whole;
  return spelling.split("/").reduce(
    (all, product, i) =>
      product.split("*").reduce((sum, factor) => {
        const [, word, power = "1"] = WORDS.has(factor)
          ? [factor, factor]
          : /^([A-Za-z]+)(\d)$/.exec(factor) ?? [];
        const unit = WORDS.get(word ?? "");
        assert(unit !== undefined, `no definition here for ${factor} in ${spelling}`);
        return times(sum, unit, (i === 0 ? 1 : -1) * Number(power));
      }, all),
    NOTHING,
  );
}

const kinds = Object.keys(siUnits) as Dimension[];
const plain = units.filter(({ si, offset }) => si !== "deg" && offset === undefined);

Deno.test("every unit and spelling is what its parts are by definition", () => {
  let spellings = 0;
  for (const unit of plain) {
    const kind = kinds.find((one) => siUnits[one] === unit.si)!;
    for (const spelling of [unit.symbol, ...unit.aliases]) {
      const { over, under } = meaningOf(spelling);
      // 60 digits after the point, so that only the last rounding to a double is left.
      const expected = Number(over * 10n ** 60n / under) / 1e60;
      assertClose(toSI(1, spelling, kind), expected, { relative: 1e-15 }, spelling);
      spellings++;
    }
  }
  assert(plain.length > 100 && spellings > 200, `${plain.length} units, ${spellings} spellings`);
});

Deno.test("every unit has the base units of the kind that it stands under", () => {
  const si: Readonly<Record<string, Exact["powers"]>> = {
    ...{ "m": [1, 0, 0, 0], "m²": [2, 0, 0, 0], "m³": [3, 0, 0, 0], "kg": [0, 1, 0, 0] },
    ...{ "kg/m²": [-2, 1, 0, 0], "kg/m³": [-3, 1, 0, 0], "kg/m": [-1, 1, 0, 0] },
    ...{ "s": [0, 0, 1, 0], "m/s": [1, 0, -1, 0], "N": [1, 1, -2, 0], "N/m": [0, 1, -2, 0] },
    ...{ "N m": [2, 1, -2, 0], "J": [2, 1, -2, 0], "N m²": [3, 1, -2, 0], "m/N": [0, -1, 2, 0] },
    ...{ "1/m": [-1, 0, 0, 0], "Pa": [-1, 1, -2, 0], "Pa s": [-1, 1, -1, 0] },
    ...{ "K": [0, 0, 0, 1], "1/K": [0, 0, 0, -1], "1": [0, 0, 0, 0] },
  };
  for (const unit of plain) {
    assertEquals(meaningOf(unit.symbol).powers, si[unit.si], unit.symbol);
  }
});

Deno.test("an angle stays in degrees: a radian is 180/π of them", () => {
  for (const spelling of ["deg", "°", "degree", "degrees"]) assertEquals(toSI(1, spelling), 1);
  assertClose(toSI(Math.PI, "rad"), 180, { relative: 1e-15 });
});
