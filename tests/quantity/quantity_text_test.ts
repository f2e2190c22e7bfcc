import { InputError } from "../../lib/check/mod.ts";
import { type Dimension, readNumberIn, readQuantity, toSI } from "../../lib/quantity/mod.ts";
import { assertClose } from "../close.ts";
import { assertEquals, assertThrows } from "@std/assert";

/** An ounce per square yard: 45359237/1337803776 kg/m², from 16 oz = 0.45359237 kg, 0.9144 m. */
const ouncePerYard2 = 45359237 / 1337803776;

Deno.test("quantities as the trade writes them", () => {
  const cases: readonly [string, Dimension, number][] = [
    ["200 g/m^2", "areal weight", 0.2],
    ["200 g/m²", "areal weight", 0.2],
    ["200gsm", "areal weight", 0.2],
    ["6 oz/yd^2", "areal weight", 6 * ouncePerYard2],
    ["6 oz / yd²", "areal weight", 6 * ouncePerYard2],
    ["6 oz", "areal weight", 6 * ouncePerYard2],
    ["6 oz", "mass", 6 * 0.028349523125],
    ["8 fl oz", "volume", 8 * 29.5735295625e-6],
    ["1/4 in", "length", 0.00635],
    ['0.25"', "length", 0.00635],
    ["1 1/2 in", "length", 0.0381],
    ['1-1/2"', "length", 0.0381],
    ["1½ in", "thickness", 0.0381],
    ["10 mil", "thickness", 0.000254],
    ["10 thou", "thickness", 0.000254],
    [`5'6"`, "length", 1.6764],
    [`5' 6 1/2"`, "length", 1.6891],
    ["-5 ft 6 in", "length", -1.6764],
    ["1,5 mm", "length", 0.0015],
    ["1.234,5 mm", "length", 1.2345],
    ["1 lb 4 oz", "mass", 1.25 * 0.45359237],
    ["1 h 30 min", "time", 5400],
    ["25 inHg", "pressure", 84659.716008525],
    ['25 "Hg', "pressure", 84659.716008525],
    ["68 degF", "temperature", 293.15],
    ["68°F", "temperature", 293.15],
    ["20 °C", "temperature", 293.15],
    ["9 degF", "temperature difference", 5],
    ["20 °C", "temperature difference", 20],
    ["20 kgf", "force", 196.133],
    ["4.5 lbf", "force", 4.5 * 4.4482216152605],
    ["15 N/mm", "force per length", 15000],
    ["72 GPa", "modulus", 72e9],
    ["240 N/mm²", "stress", 240e6],
    ["80 kg/m3", "density", 80],
    ["1.16 g/cm³", "density", 1160],
    ["22.5e-6/K", "thermal expansion", 22.5e-6],
    ["22.5 1e-6/K", "thermal expansion", 22.5e-6],
    ["22.5×10⁻⁶/K", "thermal expansion", 22.5e-6],
    ["5.4 µm/m/K", "thermal expansion", 5.4e-6],
    ["54 %", "ratio", 0.54],
    ["0.54", "ratio", 0.54],
    ["7", "count", 7],
    ["-45°", "angle", -45],
  ];
  for (const [text, dimension, si] of cases) {
    assertClose(readQuantity(text, dimension), si, { relative: 4e-16 }, text);
  }
});

Deno.test("a product of known units reads as well as a named one", () => {
  // 1 kN/m² = 1000 Pa; 1 lbf in in = 4.4482216152605 N × 0.0254² m²; 1/ft = 1/0.3048 m.
  assertClose(readQuantity("3 kN/m2", "pressure"), 3000, { relative: 1e-15 });
  assertClose(readQuantity("1 lbf*in*in", "bending stiffness"), 0.0028698146573014642, {
    relative: 1e-15,
  });
  assertClose(readQuantity("2/ft", "curvature"), 6.561679790026247, { relative: 1e-15 });
  assertClose(readQuantity("1 psi ft2", "force"), 640.5439125975120, { relative: 1e-14 });
  assertThrows(() => readQuantity("3 kN/m2", "force"), InputError, "must be a unit of force");
  assertThrows(() => readQuantity("3 kg//m3", "density"), InputError, "must be a unit of density");
});

Deno.test("each kind of refusal says what would do", () => {
  const cases: readonly [unknown, Dimension, string][] = [
    ["20 N", "mass", "must be a unit of mass: kg, g, mg, lb, oz (N is a unit of force)"],
    ["200 g/m² or so", "areal weight", "must be a unit of areal weight: kg/m2, g/m2, oz/yd2"],
    ["200", "areal weight", "must carry a unit of areal weight: kg/m2, g/m2, oz/yd2"],
    ["heavy", "mass", 'must be a number and a unit such as "410 g" or "14.5 oz"'],
    ["1,500 mm", "length", "could be 1500 or 1.5"],
    ["NaN mm", "length", "must be a finite number"],
    ["Infinity mm", "length", "must be a finite number"],
    ["1e400 mm", "length", "beyond the range of numbers"],
    ["1e308 GPa", "modulus", "beyond the range of numbers"],
    ["6 oz", "volume", "oz is a mass; a fluid ounce is floz"],
    ["6 oz", "force", "oz is a mass; an ounce of force is ozf"],
    ["6 troy oz", "mass", "a troy ounce is 31.1 g"],
    ["6 oz/yd", "areal weight", "must be a unit of areal weight"],
    ["20 kg", "force", "a kilogram of force is kgf"],
    ["3 lb", "force", "a pound of force is lbf"],
    ["1 constructor", "mass", "must be a unit of mass: kg, g, mg, lb, oz"],
    ["20 C", "temperature", "write degC"],
    ["-300 degC", "temperature", "must not be below absolute zero"],
    [`5.5'6"`, "length", "must have a whole number of ' and less than 12 in"],
    [`5'13"`, "length", "must have a whole number of ' and less than 12 in"],
    ["12 in", "Länge" as Dimension, "the kind of quantity"],
    [12, "length", "must be text such as"],
    [undefined, "length", "must be text such as"],
  ];
  for (const [text, dimension, message] of cases) {
    assertThrows(() => readQuantity(text as string, dimension), InputError, message, String(text));
  }
});

Deno.test("a number in a known unit", () => {
  assertEquals(readNumberIn("1,5", "mm"), 0.0015);
  assertEquals(readNumberIn("6", "oz", "areal weight"), 6 * 45359237 / 1337803776);
  assertThrows(() => readNumberIn("1,500", "mm"), InputError, "could be 1500 or 1.5");
  assertThrows(() => readNumberIn("5 mm", "mm"), InputError, "must be a number such as");
  assertThrows(() => toSI(NaN, "mm"), InputError, "must be a finite number");
  assertThrows(() => toSI(1, "Nm"), InputError, "Nm is also a count of yarn");
});
