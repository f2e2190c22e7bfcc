import { assertClose } from "../close.ts";
import { geopotentialAltitude, standardAtmosphere } from "../../lib/shop/mod.ts";

// International Standard Atmosphere, table against geometric altitude (ISO 2533 / US Standard
// Atmosphere 1976), as read in a public text: height m, pressure bar, temperature K.
const TABLE: readonly (readonly [number, number, number])[] = [
  [-1000, 1.1393, 294.7],
  [-500, 1.0748, 291.4],
  [0, 1.01325, 288.15],
  [500, 0.9546, 284.9],
  [1000, 0.8988, 281.7],
  [1500, 0.8456, 278.4],
  [2000, 0.7950, 275.2],
  [2500, 0.7469, 271.9],
  [3000, 0.7012, 268.7],
  [4000, 0.6166, 262.2],
  [5000, 0.5405, 255.7],
  [6000, 0.4722, 249.2],
  [8000, 0.3565, 236.2],
  [10000, 0.2650, 223.3],
  [11000, 0.2270, 216.8],
];

for (const [height, bar, kelvin] of TABLE) {
  Deno.test(`standard atmosphere at a height of ${height} m`, () => {
    const { pressure, temperature } = standardAtmosphere(geopotentialAltitude(height));
    // Half of the last printed digit; the sea level is printed in full.
    assertClose(pressure / 1e5, bar, { absolute: height === 0 ? 1.1e-9 : 5e-5 });
    assertClose(temperature, kelvin, { absolute: height === 0 ? 2.9e-7 : 0.05 });
  });
}

// US Standard Atmosphere 1976, base pressures of the layers (geopotential), as read in a public
// text. Its table prints 22632.10 where its formula gives 22632.06 and the constants of ISO 2533
// give 22632.04, and 5474.88 for 5474.89.
Deno.test("standard atmosphere at the bases of its layers", () => {
  assertClose(standardAtmosphere(11_000).pressure, 22632.06, { absolute: 0.037 });
  assertClose(standardAtmosphere(20_000).pressure, 5474.89, { absolute: 0.015 });
});

// ISO 2533, from memory: its pressures at geopotential altitudes, and densities that are printed
// against geometric ones (1.1117 at 1000 m is 1.11164 at a geopotential 1000 m).
Deno.test("standard atmosphere at round altitudes", () => {
  for (
    const [altitude, pressure, density] of [
      [0, 101325, 1.225],
      [1000, 89874.6, 1.1117],
      [2000, 79495.2, 1.0066],
      [5000, 54020, 0.7364],
    ] as const
  ) {
    assertClose(standardAtmosphere(altitude).pressure, pressure, { relative: 1e-5 });
    const atHeight = standardAtmosphere(geopotentialAltitude(altitude));
    assertClose(atHeight.density, density, { absolute: 5e-5 });
  }
});

// ASHRAE Handbook Fundamentals, chapter 1, table of standard pressures in psia against feet, as
// read in a public text. The printed figures differ from the handbook's own equation by up to
// 0.15 % (4000 ft printed 12.682, equation 12.692: a slip), hence a tolerance each.
const FEET: readonly (readonly [number, number, number])[] = [
  [-1000, 15.236, 0.0012],
  [500, 14.430, 0.0025],
  [1000, 14.175, 0.0024],
  [2000, 13.664, 0.00051],
  [3000, 13.173, 0.0019],
  [4000, 12.682, 0.011],
  [5000, 12.230, 0.0023],
  [6000, 11.778, 0.00091],
  [7000, 11.341, 0.0011],
  [8000, 10.914, 0.0021],
  [9000, 10.506, 0.0011],
  [10000, 10.108, 0.0015],
  [15000, 8.296, 0.0024],
  [20000, 6.758, 0.0046],
  [30000, 4.371, 0.0069],
];

for (const [feet, psia, tolerance] of FEET) {
  Deno.test(`standard pressure at ${feet} ft in pounds per square inch`, () => {
    const { pressure } = standardAtmosphere(feet * 0.3048);
    // The handbook's rounded constants add 0.0005 psia to what its table is off.
    assertClose(pressure / 6894.757293168361, psia, { absolute: tolerance + 5e-4 });
  });
}

// US Standard Atmosphere 1976, constants of the short formulas, as read in a public text.
Deno.test("ratios at the tropopause are the printed ones", () => {
  const [ground, top] = [standardAtmosphere(0), standardAtmosphere(11_000)];
  assertClose(top.pressure / ground.pressure, 0.223361, { absolute: 5e-7 });
  assertClose(top.temperature / ground.temperature, 0.751865, { absolute: 5e-7 });
  assertClose(top.density / ground.density, 0.297076, { absolute: 5e-7 });
  // Exponent of p ~ T^n, read off two altitudes. The printed one rests on a gas constant of
  // 8314.32/28.9644 J/(kg K), larger than that of ISO 2533 by 8e-7: 4e-6 of the exponent.
  const half = standardAtmosphere(5500);
  const exponent = Math.log(half.pressure / ground.pressure) /
    Math.log(half.temperature / ground.temperature);
  assertClose(exponent, 5.255876, { absolute: 5e-6 });
  // T0 over lapse rate, printed 44329 m and in truth 44330.77 m; scale height above 11 km, printed
  // 6341.4 m and in truth 6341.62 m.
  const lapse = (ground.temperature - half.temperature) / 5500;
  assertClose(ground.temperature / lapse, 44329, { absolute: 1.9 });
  const scale = -2000 / Math.log(standardAtmosphere(13_000).pressure / top.pressure);
  assertClose(scale, 6341.4, { absolute: 0.23 });
});
