/**
 * Orthogonal polynomials on a side, each zero where the side's ends demand it:
 * (1 − ξ)^p (1 + ξ)^q P_k^(2p, 2q)(ξ), of length 1, from Jacobi's polynomials.
 */
import { gaussLegendre } from "../numeric/mod.ts";

/** Which ends of a side hold the field at zero. */
export interface HeldEnds {
  readonly start: boolean;
  readonly end: boolean;
}

/** Values of all functions of a basis at one place, and their derivatives by ξ. */
export interface BasisValues {
  readonly value: Float64Array;
  readonly slope: Float64Array;
}

/** The functions of one field along one side. */
export interface SideBasis {
  readonly count: number;
  at(xi: number): BasisValues;
}

/** All polynomials up to `degree` that are zero at the held ends. */
export function sideBasis(held: HeldEnds, degree: number): SideBasis {
  const p = held.end ? 1 : 0;
  const q = held.start ? 1 : 0;
  const count = degree + 1 - p - q;
  return { count, at: (xi) => jacobiBasis(count, { p, q }, xi) };
}

function jacobiBasis(
  count: number,
  { p, q }: { readonly p: number; readonly q: number },
  xi: number,
): BasisValues {
  const a = 2 * p;
  const b = 2 * q;
  const P = new Float64Array(count);
  const dP = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    if (k === 0) P[k] = 1;
    else if (k === 1) {
      P[k] = (a - b + (a + b + 2) * xi) / 2;
      dP[k] = (a + b + 2) / 2;
    } else {
      const n = 2 * k + a + b;
      const c0 = 2 * k * (k + a + b) * (n - 2);
      const c1 = (n - 1) * n * (n - 2);
      const c2 = (n - 1) * (a * a - b * b);
      const c3 = 2 * (k + a - 1) * (k + b - 1) * n;
      P[k] = ((c1 * xi + c2) * P[k - 1]! - c3 * P[k - 2]!) / c0;
      dP[k] = ((c1 * xi + c2) * dP[k - 1]! + c1 * P[k - 1]! - c3 * dP[k - 2]!) / c0;
    }
  }
  const factor = (p === 1 ? 1 - xi : 1) * (q === 1 ? 1 + xi : 1);
  const factorSlope = (p === 1 ? -1 : 0) * (q === 1 ? 1 + xi : 1) +
    (q === 1 ? 1 : 0) * (p === 1 ? 1 - xi : 1);
  const value = new Float64Array(count);
  const slope = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    const both = p === 1 && q === 1;
    const share = both ? (k + 1) * (k + 2) / ((k + 3) * (k + 4)) : 1;
    const norm = 1 / Math.sqrt(2 ** (a + b + 1) / (2 * k + a + b + 1) * share);
    value[k] = norm * factor * P[k]!;
    slope[k] = norm * (factorSlope * P[k]! + factor * dP[k]!);
  }
  return { value, slope };
}

/** Integrals over a side of products of two bases, value or slope of each: rows of the first. */
export type Gram = (first: 0 | 1, second: 0 | 1) => Float64Array;

/** Product integrals over −1 to 1 of two bases of at most `degree`. */
export function gramOf(first: SideBasis, second: SideBasis, degree: number): Gram {
  const { nodes, weights } = gaussLegendre(degree + 1);
  const tables = Array.from(nodes, (xi) => [first.at(xi), second.at(xi)] as const);
  const made = new Map<number, Float64Array>();
  return (r, s) => {
    const known = made.get(2 * r + s);
    if (known !== undefined) return known;
    const gram = new Float64Array(first.count * second.count);
    tables.forEach(([f, g], n) => {
      const u = r === 0 ? f.value : f.slope;
      const v = s === 0 ? g.value : g.slope;
      for (let i = 0; i < first.count; i++) {
        const w = weights[n]! * u[i]!;
        for (let k = 0; k < second.count; k++) gram[i * second.count + k]! += w * v[k]!;
      }
    });
    made.set(2 * r + s, gram);
    return gram;
  };
}
