/**
 * The batch kernel's solve of six equations, by blocks in closed form.
 * A hot kernel: see `_batch_kernel.ts` for the `!`.
 */
import { PLACE } from "./_batch_layout.ts";

/**
 * Inverts [A B; B D] by blocks: keeps A⁻¹, P = A⁻¹ B and d = (D − B P)⁻¹, and returns
 * a11 = (A⁻¹ + P d Pᵀ)11.
 */
export function invertStiffness(w: Float64Array): number {
  const a = PLACE.compliance, p = a + 6, d = a + 15;
  invertSymmetric(w, PLACE.stiffness, a);
  const B11 = w[6]!, B12 = w[7]!, B16 = w[8]!, B22 = w[9]!, B26 = w[10]!, B66 = w[11]!;
  const a11 = w[a]!, a12 = w[a + 1]!, a16 = w[a + 2]!;
  const a22 = w[a + 3]!, a26 = w[a + 4]!, a66 = w[a + 5]!;
  const P11 = a11 * B11 + a12 * B12 + a16 * B16;
  const P12 = a11 * B12 + a12 * B22 + a16 * B26;
  const P16 = a11 * B16 + a12 * B26 + a16 * B66;
  const P21 = a12 * B11 + a22 * B12 + a26 * B16;
  const P22 = a12 * B12 + a22 * B22 + a26 * B26;
  const P26 = a12 * B16 + a22 * B26 + a26 * B66;
  const P61 = a16 * B11 + a26 * B12 + a66 * B16;
  const P62 = a16 * B12 + a26 * B22 + a66 * B26;
  const P66 = a16 * B16 + a26 * B26 + a66 * B66;
  w[p] = P11, w[p + 1] = P12, w[p + 2] = P16;
  w[p + 3] = P21, w[p + 4] = P22, w[p + 5] = P26;
  w[p + 6] = P61, w[p + 7] = P62, w[p + 8] = P66;
  w[d] = w[12]! - (B11 * P11 + B12 * P21 + B16 * P61);
  w[d + 1] = w[13]! - (B11 * P12 + B12 * P22 + B16 * P62);
  w[d + 2] = w[14]! - (B11 * P16 + B12 * P26 + B16 * P66);
  w[d + 3] = w[15]! - (B12 * P12 + B22 * P22 + B26 * P62);
  w[d + 4] = w[16]! - (B12 * P16 + B22 * P26 + B26 * P66);
  w[d + 5] = w[17]! - (B16 * P16 + B26 * P26 + B66 * P66);
  invertSymmetric(w, d, d);
  return a11 + P11 * (w[d]! * P11 + 2 * (w[d + 1]! * P12 + w[d + 2]! * P16)) +
    P12 * (w[d + 3]! * P12 + 2 * w[d + 4]! * P16) + P16 * w[d + 5]! * P16;
}

/** Inverse of a symmetric 3 × 3 matrix, held as 11, 12, 16, 22, 26, 66, from one place to another. */
function invertSymmetric(w: Float64Array, from: number, to: number): void {
  const m11 = w[from]!, m12 = w[from + 1]!, m16 = w[from + 2]!;
  const m22 = w[from + 3]!, m26 = w[from + 4]!, m66 = w[from + 5]!;
  const c11 = m22 * m66 - m26 * m26, c12 = m16 * m26 - m12 * m66, c16 = m12 * m26 - m16 * m22;
  const scale = 1 / (m11 * c11 + m12 * c12 + m16 * c16);
  w[to] = c11 * scale;
  w[to + 1] = c12 * scale;
  w[to + 2] = c16 * scale;
  w[to + 3] = (m11 * m66 - m16 * m16) * scale;
  w[to + 4] = (m12 * m16 - m11 * m26) * scale;
  w[to + 5] = (m11 * m22 - m12 * m12) * scale;
}

/** Strains under six forces: κ = d (M − Pᵀ N), ε⁰ = A⁻¹ N − P κ. */
export function strainsUnder(w: Float64Array, from: number, to: number): void {
  const a = PLACE.compliance, p = a + 6, d = a + 15;
  const P11 = w[p]!, P12 = w[p + 1]!, P16 = w[p + 2]!;
  const P21 = w[p + 3]!, P22 = w[p + 4]!, P26 = w[p + 5]!;
  const P61 = w[p + 6]!, P62 = w[p + 7]!, P66 = w[p + 8]!;
  const Nx = w[from]!, Ny = w[from + 1]!, Nxy = w[from + 2]!;
  const Mx = w[from + 3]! - (P11 * Nx + P21 * Ny + P61 * Nxy);
  const My = w[from + 4]! - (P12 * Nx + P22 * Ny + P62 * Nxy);
  const Mxy = w[from + 5]! - (P16 * Nx + P26 * Ny + P66 * Nxy);
  const kx = w[d]! * Mx + w[d + 1]! * My + w[d + 2]! * Mxy;
  const ky = w[d + 1]! * Mx + w[d + 3]! * My + w[d + 4]! * Mxy;
  const kxy = w[d + 2]! * Mx + w[d + 4]! * My + w[d + 5]! * Mxy;
  const a12 = w[a + 1]!, a16 = w[a + 2]!, a26 = w[a + 4]!;
  w[to] = w[a]! * Nx + a12 * Ny + a16 * Nxy - (P11 * kx + P12 * ky + P16 * kxy);
  w[to + 1] = a12 * Nx + w[a + 3]! * Ny + a26 * Nxy - (P21 * kx + P22 * ky + P26 * kxy);
  w[to + 2] = a16 * Nx + a26 * Ny + w[a + 5]! * Nxy - (P61 * kx + P62 * ky + P66 * kxy);
  w[to + 3] = kx, w[to + 4] = ky, w[to + 5] = kxy;
}
