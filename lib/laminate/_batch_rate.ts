/**
 * The batch kernel's search for the ply that fails first by Tsai–Wu, f = a(σ) + b(σ) with a the
 * quadratic and b the linear part. Utilisation u = 1/R, since it stays finite where nothing fails.
 * A hot kernel: see `_batch_kernel.ts` for the `!`.
 */
import { type Kernel, LAMINA, PLACE, PLY } from "./_batch_layout.ts";

/** All stress grows: a R² + b R = 1, so u is the positive root of u² − b u − a = 0. */
export function rateScaled({ input, output, w }: Kernel, laminate: number): void {
  const { plyCount, constants, lamina, thickness } = input;
  const first = laminate * plyCount;
  let worst = 0, criticalPly = -1, criticalFace = 0;
  for (let k = 0; k < plyCount; k++) {
    if (thickness[first + k]! === 0) continue;
    const row = LAMINA.length * lamina[first + k]!;
    const F1 = constants[row + LAMINA.F1]!, F2 = constants[row + LAMINA.F2]!;
    const F11 = constants[row + LAMINA.F11]!, F22 = constants[row + LAMINA.F22]!;
    const F66 = constants[row + LAMINA.F66]!, twoF12 = constants[row + LAMINA.twoF12]!;
    let at = PLACE.plies + PLY.length * k + PLY.stress;
    for (let face = 0; face < 2; face++) {
      const s1 = w[at]!, s2 = w[at + 1]!, s12 = w[at + 2]!;
      at += 3;
      const b = F1 * s1 + F2 * s2;
      const a = F11 * s1 * s1 + F22 * s2 * s2 + F66 * s12 * s12 + twoF12 * s1 * s2;
      // Whether u is above the worst so far, without the root: the polynomial is below 0 there.
      if (!(a > worst * (worst - b))) continue;
      worst = (b + Math.sqrt(b * b + 4 * a)) / 2;
      criticalPly = k;
      criticalFace = face;
    }
  }
  output.utilisation[laminate] = worst;
  output.criticalPly[laminate] = criticalPly;
  output.criticalFace[laminate] = criticalFace;
}

/**
 * The stress r of the free strain stays, that of the load m grows: with the room left
 * g = 1 − a(r) − b(r) and the slope l = 2 a(r, m) + b(m), u is the positive root of
 * g u² − l u − a(m) = 0. With no room left no load can be borne: u is the largest number.
 */
export function rateHeld({ input, output, w }: Kernel, laminate: number): void {
  const { plyCount, constants, lamina, thickness } = input;
  const first = laminate * plyCount;
  let worst = 0, criticalPly = -1, criticalFace = 0;
  for (let k = 0; k < plyCount; k++) {
    if (thickness[first + k]! === 0) continue;
    const row = LAMINA.length * lamina[first + k]!;
    const F1 = constants[row + LAMINA.F1]!, F2 = constants[row + LAMINA.F2]!;
    const F11 = constants[row + LAMINA.F11]!, F22 = constants[row + LAMINA.F22]!;
    const F66 = constants[row + LAMINA.F66]!, twoF12 = constants[row + LAMINA.twoF12]!;
    let at = PLACE.plies + PLY.length * k + PLY.stress;
    for (let face = 0; face < 2; face++) {
      const m1 = w[at]!, m2 = w[at + 1]!, m12 = w[at + 2]!;
      const r1 = w[at + 6]!, r2 = w[at + 7]!, r12 = w[at + 8]!;
      at += 3;
      const a = F11 * m1 * m1 + F22 * m2 * m2 + F66 * m12 * m12 + twoF12 * m1 * m2;
      const l = 2 * (F11 * r1 * m1 + F22 * r2 * m2 + F66 * r12 * m12) +
        twoF12 * (r1 * m2 + r2 * m1) + F1 * m1 + F2 * m2;
      const g = 1 - F1 * r1 - F2 * r2 - F11 * r1 * r1 - F22 * r2 * r2 - F66 * r12 * r12 -
        twoF12 * r1 * r2;
      const u = g > 0 ? (l + Math.sqrt(l * l + 4 * g * a)) / (2 * g) : Number.MAX_VALUE;
      if (!(u > worst)) continue;
      worst = u;
      criticalPly = k;
      criticalFace = face;
    }
  }
  output.utilisation[laminate] = worst;
  output.criticalPly[laminate] = criticalPly;
  output.criticalFace[laminate] = criticalFace;
}
