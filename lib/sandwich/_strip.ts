/** A simply supported strip across the panel: the closed form that the sine waves add up to. */
import type { Profile } from "./_panel_load.ts";

/** Amounts of one strip at one place, for a load profile along x that does not change along y. */
export interface StripState {
  readonly deflection: number;
  readonly rotation: number;
  readonly moment: number;
  readonly shear: number;
}

/** Stiffness of the strip along x. */
export interface StripStiffness {
  readonly D11: number;
  readonly S55: number;
}

/** Load integrated n times from 0 to x: n = 1 force, 2 moment, and on. */
function repeatedIntegral(profile: Profile, x: number, n: number): number {
  const power = (base: number, exponent: number): number =>
    base <= 0 ? 0 : base ** exponent / factorial(exponent);
  if (profile.kind === "at") {
    return x > profile.place ? profile.value * power(x - profile.place, n - 1) : 0;
  }
  const { from, to, start, end } = profile;
  const slope = (end - start) / (to - from);
  return start * power(x - from, n) - end * power(x - to, n) +
    slope * (power(x - from, n + 1) - power(x - to, n + 1));
}

function factorial(n: number): number {
  let product = 1;
  for (let k = 2; k <= n; k++) product *= k;
  return product;
}

/** The strip's state at x for a span `side`. */
export function stripAt(
  profile: Profile,
  side: number,
  { D11, S55 }: StripStiffness,
): (x: number) => StripState {
  const reaction = repeatedIntegral(profile, side, 2) / side;
  const rotation0 = (repeatedIntegral(profile, side, 4) - reaction * side ** 3 / 6) / (side * D11);
  return (x) => {
    const moment = reaction * x - repeatedIntegral(profile, x, 2);
    const third = reaction * x * x / 2 - repeatedIntegral(profile, x, 3);
    const fourth = reaction * x ** 3 / 6 - repeatedIntegral(profile, x, 4);
    return {
      deflection: moment / S55 - rotation0 * x - fourth / D11,
      rotation: rotation0 + third / D11,
      moment,
      shear: reaction - repeatedIntegral(profile, x, 1),
    };
  };
}
