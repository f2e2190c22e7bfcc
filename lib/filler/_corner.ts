import { type Checks } from "../check/mod.ts";

/** Half of the angle through which the arc of a fillet turns, (π − θ)/2 [rad]. */
export function halfTurn(check: Checks, cornerDeg: number): number {
  check.finite("angle of the corner", cornerDeg, "°");
  if (!(cornerDeg > 0 && cornerDeg <= 180)) {
    check.refuse("angle of the corner", cornerDeg, "must be above 0 and up to 180°");
  }
  return (180 - cornerDeg) / 360 * Math.PI;
}

/** Below this the two terms of tan x − x agree too far for their difference to keep its digits. */
const SERIES_BELOW = 0.25;

/** Coefficients of x³, x⁵, ... in tan x − x (Bernoulli numbers; DLMF 4.19.3). */
const TANGENT_SERIES: readonly number[] = [
  1 / 3,
  2 / 15,
  17 / 315,
  62 / 2835,
  1382 / 155925,
  21844 / 6081075,
  929569 / 638512875,
  6404582 / 10854718875,
  443861162 / 1856156927625,
  18888466084 / 194896477400625,
];

/** tan x − x with full digits for small x too; x in radian, 0 to below π/2. */
export function tangentExcess(x: number): number {
  if (x >= SERIES_BELOW) return Math.tan(x) - x;
  let sum = 0;
  for (const coefficient of TANGENT_SERIES.toReversed()) sum = sum * x * x + coefficient;
  return sum * x ** 3;
}
