/**
 * The batch kernel's loops over the plies of a laminate. Plies turn by cos 2θ and sin 2θ and the
 * invariants U1 to U5: less work than the fourth powers of cos θ and sin θ, the same by
 * trigonometry. A hot kernel: see `_batch_kernel.ts` for the `!`.
 */
import { type Kernel, LAMINA, PLACE, PLY } from "./_batch_layout.ts";

/** Sums A, B, D, N_T and M_T of one laminate, and keeps each ply's turn; returns the thickness. */
export function sumPlies({ input, w }: Kernel, laminate: number): number {
  const { plyCount, constants, lamina, thickness, angleDeg, hasFreeStrain } = input;
  const first = laminate * plyCount;
  let h = 0;
  for (let k = 0; k < plyCount; k++) h += thickness[first + k]!;
  // For A, B and D: sums of U1, U4, and of the parts that turn with 2θ (c, s) and 4θ (cc, ss).
  let a1 = 0, a4 = 0, ac = 0, as = 0, acc = 0, ass = 0;
  let b1 = 0, b4 = 0, bc = 0, bs = 0, bcc = 0, bss = 0;
  let d1 = 0, d4 = 0, dc = 0, ds = 0, dcc = 0, dss = 0;
  let nm = 0, nc = 0, ns = 0, mm = 0, mc = 0, ms = 0;
  let z = -h / 2;
  for (let k = 0; k < plyCount; k++) {
    const t = thickness[first + k]!;
    const row = LAMINA.length * lamina[first + k]!;
    const ply = PLACE.plies + PLY.length * k;
    turnPly(w, ply, angleDeg[first + k]!);
    const c = w[ply + PLY.cosine]!, s = w[ply + PLY.sine]!;
    w[ply + PLY.z] = z;
    const middle = z + t / 2;
    const w1 = t * middle, w2 = t * (middle * middle + t * t / 12);
    const U1 = constants[row + LAMINA.U1]!, U2 = constants[row + LAMINA.U2]!;
    const U3 = constants[row + LAMINA.U3]!, U4 = constants[row + LAMINA.U4]!;
    const pc = U2 * c, ps = U2 * s * 0.5;
    const pcc = U3 * (c - s) * (c + s), pss = U3 * 2 * s * c;
    a1 += U1 * t, b1 += U1 * w1, d1 += U1 * w2;
    a4 += U4 * t, b4 += U4 * w1, d4 += U4 * w2;
    ac += pc * t, bc += pc * w1, dc += pc * w2;
    as += ps * t, bs += ps * w1, ds += ps * w2;
    acc += pcc * t, bcc += pcc * w1, dcc += pcc * w2;
    ass += pss * t, bss += pss * w1, dss += pss * w2;
    if (hasFreeStrain) {
      const mean = constants[row + LAMINA.freeMean]!, half = constants[row + LAMINA.freeHalf]!;
      nm += mean * t, nc += half * c * t, ns += half * s * t;
      mm += mean * w1, mc += half * c * w1, ms += half * s * w1;
    }
    z += t;
  }
  w[0] = a1 + ac + acc, w[1] = a4 - acc, w[2] = as + ass;
  w[3] = a1 - ac + acc, w[4] = as - ass, w[5] = (a1 - a4) / 2 - acc;
  w[6] = b1 + bc + bcc, w[7] = b4 - bcc, w[8] = bs + bss;
  w[9] = b1 - bc + bcc, w[10] = bs - bss, w[11] = (b1 - b4) / 2 - bcc;
  w[12] = d1 + dc + dcc, w[13] = d4 - dcc, w[14] = ds + dss;
  w[15] = d1 - dc + dcc, w[16] = ds - dss, w[17] = (d1 - d4) / 2 - dcc;
  const free = PLACE.freeForces;
  w[free] = nm + nc, w[free + 1] = nm - nc, w[free + 2] = ns;
  w[free + 3] = mm + mc, w[free + 4] = mm - mc, w[free + 5] = ms;
  return h;
}

// Taylor's series of sine and cosine: on ±45° the next term is below 1e-16.
const S3 = -1 / 6, S5 = 1 / 120, S7 = -1 / 5040, S9 = 1 / 362880;
const S11 = -1 / 39916800, S13 = 1 / 6227020800, S15 = -1 / 1307674368000;
const C2 = -1 / 2, C4 = 1 / 24, C6 = -1 / 720, C8 = 1 / 40320;
const C10 = -1 / 3628800, C12 = 1 / 479001600, C14 = -1 / 87178291200, C16 = 1 / 20922789888000;

/** Writes cos 2θ and sin 2θ of a ply. The engine's own sine costs half of `Math.sin`. */
function turnPly(w: Float64Array, ply: number, angleDeg: number): void {
  // θ less the nearest multiple of 90°, which turns 2θ by half a turn: a sign.
  const quarter = Math.floor(angleDeg * (1 / 90) + 0.5);
  const x = (angleDeg - 90 * quarter) * (Math.PI / 180);
  const q = x * x;
  const sine = x *
    (1 + q * (S3 + q * (S5 + q * (S7 + q * (S9 + q * (S11 + q * (S13 + q * S15)))))));
  const cosine = 1 + q * (C2 + q * (C4 + q * (C6 +
                q * (C8 + q * (C10 + q * (C12 + q * (C14 + q * C16)))))));
  const sign = 1 - 2 * (quarter & 1);
  w[ply + PLY.cosine] = sign * (cosine - sine) * (cosine + sine);
  w[ply + PLY.sine] = sign * 2 * sine * cosine;
}

/**
 * Stress at both faces of each ply, in its own axes. `set` is 0 for strains and stresses of the
 * load, 6 for those of the climate where that is held.
 */
export function stressPlies({ input, w, holds }: Kernel, laminate: number, set: 0 | 6): void {
  const { plyCount, constants, lamina, thickness } = input;
  // The ply's own free strain counts once: with the climate if that stands apart.
  const free = holds && set === 0 ? 0 : 1;
  const first = laminate * plyCount;
  const from = PLACE.strains + set;
  const ex = w[from]!, ey = w[from + 1]!, kx = w[from + 3]!, ky = w[from + 4]!;
  const eMean = (ex + ey) / 2, eHalf = (ex - ey) / 2, eShear = w[from + 2]! / 2;
  const kMean = (kx + ky) / 2, kHalf = (kx - ky) / 2, kShear = w[from + 5]! / 2;
  for (let k = 0; k < plyCount; k++) {
    const ply = PLACE.plies + PLY.length * k;
    const c = w[ply + PLY.cosine]!, s = w[ply + PLY.sine]!;
    const row = LAMINA.length * lamina[first + k]!;
    const Q11 = constants[row + LAMINA.Q11]!, Q12 = constants[row + LAMINA.Q12]!;
    const Q22 = constants[row + LAMINA.Q22]!, Q66 = constants[row + LAMINA.Q66]!;
    const mean = free * constants[row + LAMINA.freeMean]!;
    const half = free * constants[row + LAMINA.freeHalf]!;
    // Strain in the axes of the ply, at the middle of the laminate (e) and per height (k).
    const eTurned = eHalf * c + eShear * s, kTurned = kHalf * c + kShear * s;
    const e1 = eMean + eTurned, e2 = eMean - eTurned;
    const k1 = kMean + kTurned, k2 = kMean - kTurned;
    const s1 = Q11 * e1 + Q12 * e2 - mean - half, r1 = Q11 * k1 + Q12 * k2;
    const s2 = Q12 * e1 + Q22 * e2 - mean + half, r2 = Q12 * k1 + Q22 * k2;
    const s12 = 2 * Q66 * (eShear * c - eHalf * s), r12 = 2 * Q66 * (kShear * c - kHalf * s);
    const bottom = w[ply + PLY.z]!, top = bottom + thickness[first + k]!;
    const to = ply + PLY.stress + set;
    w[to] = s1 + bottom * r1;
    w[to + 1] = s2 + bottom * r2;
    w[to + 2] = s12 + bottom * r12;
    w[to + 3] = s1 + top * r1;
    w[to + 4] = s2 + top * r2;
    w[to + 5] = s12 + top * r12;
  }
}
