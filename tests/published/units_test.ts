import { create, unitDependencies } from "mathjs";
import { readQuantity, toSI } from "../../lib/quantity/mod.ts";
import { assertClose } from "../close.ts";

/**
 * Factors to SI as exact fractions. Source: international yard and pound agreement of 1959 (inch
 * 25.4 mm, pound 0.45359237 kg), standard gravity 9.80665 m/s² (CGPM 1901), US gallon 231 in³,
 * atmosphere 101325 Pa, torr a 760th of it, conventional millimetre of mercury 133.322387415 Pa;
 * NIST SP 811 (definitions from memory). Checked against GNU Units, which agrees to 5e-15.
 */
const exact: readonly (readonly [unit: string, numerator: bigint, denominator: bigint])[] = [
  ["mm", 1n, 1000n],
  ["in", 127n, 5000n],
  ["ft", 381n, 1250n],
  ["mil", 127n, 5000000n],
  ["lb", 45359237n, 100000000n],
  ["oz", 45359237n, 1600000000n],
  ["lbf", 8896443230521n, 2000000000000n],
  ["kgf", 196133n, 20000n],
  ["psi", 8896443230521n, 1290320000n],
  ["ksi", 8896443230521n, 1290320n],
  ["bar", 100000n, 1n],
  ["mbar", 100n, 1n],
  ["atm", 101325n, 1n],
  ["torr", 20265n, 152n],
  ["mmHg", 26664477483n, 200000000n],
  ["inHg", 3386388640341n, 1000000000n],
  ["oz/yd2", 45359237n, 1337803776n],
  ["lb/ft3", 28349523125n, 1769802912n],
  ["g/cm3", 1000n, 1n],
  ["lb/in3", 56699046250n, 2048383n],
  ["gal", 473176473n, 125000000000n],
  ["floz", 473176473n, 16000000000000n],
  ["lb/gal", 736351250n, 6145149n],
  ["cP", 1n, 1000n],
  ["tex", 1n, 1000000n],
  ["denier", 1n, 9000000n],
  ["lbf/in", 8896443230521n, 50800000000n],
  ["N/mm2", 1000000n, 1n],
  ["lbf*in2", 143490732865073209n, 50000000000000000000n],
  ["min", 60n, 1n],
];

Deno.test("NIST SP 811: unit factors are the exact definitions", () => {
  for (const [unit, numerator, denominator] of exact) {
    assertClose(toSI(1, unit), Number(numerator) / Number(denominator), { relative: 1e-15 }, unit);
  }
});

Deno.test("NIST SP 811: temperatures and their differences", () => {
  // K = °C + 273.15, °C = (°F − 32) × 5/9: water boils at 212 °F = 373.15 K and freezes at 32 °F.
  assertClose(toSI(212, "degF"), 373.15, { relative: 1e-15 });
  assertClose(toSI(32, "degF"), 273.15, { relative: 1e-15 });
  assertClose(toSI(-40, "degF"), toSI(-40, "degC"), { relative: 1e-15 });
  assertClose(toSI(1, "degF", "temperature difference"), 5 / 9, { relative: 1e-15 });
});

Deno.test("GNU Units: an ounce per square yard is 33.90574747488229 g/m²", () => {
  assertClose(readQuantity("1 oz/yd^2", "areal weight"), 0.03390574747488229, { relative: 1e-15 });
  // torr and mmHg differ by 1.4e-7: neither may stand for the other.
  assertClose(toSI(1, "torr") / toSI(1, "mmHg") - 1, -1.4e-7, { relative: 0.02 });
});

Deno.test("mathjs's own definitions agree where they are exact", () => {
  // Not compared: its psi, mmHg, torr and kip are rounded, inHg and msi are missing.
  const math = create({ ...unitDependencies });
  const pairs: readonly (readonly [ours: string, theirs: string])[] = [
    ["in", "in"],
    ["ft", "ft"],
    ["yd", "yd"],
    ["mil", "mil"],
    ["lb", "lbm"],
    ["oz", "oz"],
    ["oz/yd2", "oz/yd^2"],
    ["lb/ft3", "lbm/ft^3"],
    ["lb/in3", "lbm/in^3"],
    ["lbf", "lbf"],
    ["kgf", "kgf"],
    ["lbf/in", "lbf/in"],
    ["lbf/in2", "lbf/in^2"],
    ["lbf*in2", "lbf in^2"],
    ["gal", "gal"],
    ["floz", "floz"],
    ["atm", "atm"],
    ["mbar", "mbar"],
    ["h", "h"],
    ["in/min", "in/min"],
    ["N/mm2", "N/mm^2"],
  ];
  for (const [ours, theirs] of pairs) {
    const factor: number = math.unit(1, theirs).toSI().toJSON().value;
    assertClose(toSI(1, ours), factor, { relative: 2e-15 }, ours);
  }
});
