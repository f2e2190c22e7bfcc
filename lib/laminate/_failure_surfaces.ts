/** The surface of each criterion. */
import type { LaminaStrengths } from "../materials/mod.ts";
import { stressLimits } from "./_failure_checks.ts";
import type { HashinStrengths } from "./failure_hashin.ts";
import type { PuckSlopes } from "./failure_puck.ts";
import type { TsaiWuCoefficients } from "./failure_quadratic.ts";
import type { Limits, Surface, SurfacePiece } from "./_failure_surface.ts";

/** The box of limits, one piece a side. */
export function limitSurface(limits: Limits): Surface {
  const { tension1, compression1, tension2, compression2, shear } = limits;
  return {
    pieces: [
      { mode: "1t", b1: 1 / tension1 },
      { mode: "1c", b1: -1 / compression1 },
      { mode: "2t", b2: 1 / tension2 },
      { mode: "2c", b2: -1 / compression2 },
      { mode: "12", a66: 1 / (shear * shear) },
    ],
    limits,
  };
}

/** One quarter for each pair of signs. */
export function hillSurface(strengths: LaminaStrengths): Surface {
  const { Xt, Xc, Yt, Yc, S } = strengths;
  const quarter = (sign1: 1 | -1, sign2: 1 | -1): SurfacePiece => {
    const X = sign1 > 0 ? Xt : Xc;
    const Y = sign2 > 0 ? Yt : Yc;
    return {
      ...hillPiece(X, Y, S),
      applies: ([one, two]) => Math.min(sign1 * one, sign2 * two),
    };
  };
  return {
    pieces: [quarter(1, 1), quarter(1, -1), quarter(-1, 1), quarter(-1, -1)],
    limits: stressLimits(strengths),
    quadraticIndex: true,
  };
}

/** See `tsaiHillTensile`. */
export function hillTensileSurface(strengths: LaminaStrengths): Surface {
  const { Xt, Yt, S } = strengths;
  return {
    pieces: [hillPiece(Xt, Yt, S)],
    limits: stressLimits({ ...strengths, Xc: Xt, Yc: Yt }),
    quadraticIndex: true,
  };
}

function hillPiece(X: number, Y: number, S: number): SurfacePiece {
  return { a11: 1 / (X * X), a12: -1 / (X * X), a22: 1 / (Y * Y), a66: 1 / (S * S) };
}

/** See `tsaiWu`. */
export function wuSurface(strengths: LaminaStrengths, interaction: number): Surface {
  const { F1, F2, F11, F22, F66, F12 } = wuCoefficients(strengths, interaction);
  return {
    pieces: [{ b1: F1, b2: F2, a11: F11, a22: F22, a66: F66, a12: 2 * F12 }],
    limits: stressLimits(strengths),
    quadraticIndex: true,
  };
}

/** See `tsaiWuCoefficients`. */
export function wuCoefficients(
  { Xt, Xc, Yt, Yc, S }: LaminaStrengths,
  interaction: number,
): TsaiWuCoefficients {
  const F11 = 1 / (Xt * Xc);
  const F22 = 1 / (Yt * Yc);
  return {
    F1: 1 / Xt - 1 / Xc,
    F2: 1 / Yt - 1 / Yc,
    F11,
    F22,
    F66: 1 / (S * S),
    F12: interaction * Math.sqrt(F11 * F22),
  };
}

/** See `hashin`. */
export function hashinSurface(strengths: HashinStrengths, shearInFibreTension: number): Surface {
  const { Xt, Xc, Yt, Yc, S, S23 } = strengths;
  const shear = 1 / (S * S);
  const across = Yc / (2 * S23);
  return {
    pieces: [
      {
        mode: "1t",
        a11: 1 / (Xt * Xt),
        a66: shearInFibreTension * shear,
        applies: ([one]) => one,
      },
      { mode: "1c", b1: -1 / Xc },
      { mode: "2t", a22: 1 / (Yt * Yt), a66: shear, applies: ([, two]) => two },
      {
        mode: "2c",
        a22: 1 / (4 * S23 * S23),
        b2: (across * across - 1) / Yc,
        a66: shear,
        applies: ([, two]) => -two,
      },
    ],
    limits: stressLimits(strengths),
  };
}

/** See `puck`; each square root is squared away, so that a piece is a quadratic. */
export function puckSurface(strengths: LaminaStrengths, slopes: PuckSlopes): Surface {
  const { Xt, Xc, Yt, Yc, S } = strengths;
  const { tension: pull, compression: push } = slopes;
  const shear = 1 / (S * S);
  const opening = (1 - pull * Yt / S) / Yt;
  const transverse = (S / (2 * push)) * (Math.sqrt(1 + 2 * push * Yc / S) - 1);
  const slope = push * transverse / S;
  const wedge = 1 / (4 * (1 + slope) * (1 + slope) * S * S);
  return {
    pieces: [
      { mode: "1t", b1: 1 / Xt },
      { mode: "1c", b1: -1 / Xc },
      {
        mode: "A",
        a66: shear,
        a22: opening * opening - pull * pull * shear,
        b2: 2 * pull / S,
        // Beyond σ2 = S/p⁺ the squared equation has a branch that the criterion has not.
        applies: ([, two]) => pull * two <= S ? two : -two,
      },
      {
        mode: "B",
        a66: shear,
        b2: 2 * push / S,
        applies: ([, two]) => Math.min(-two, two + transverse),
      },
      {
        mode: "C",
        c: 1,
        a66: wedge,
        a22: 1 / (Yc * Yc),
        b2: 1 / Yc,
        // The curves of B and C meet at σ2 = −RA; C's equation also holds at no stress at all.
        applies: ([, two]) => -two - transverse,
      },
    ],
    limits: stressLimits(strengths),
  };
}
