/** Laminas that several tests of laminates use. */
import type { Lamina, Ply, Stack } from "../../lib/materials/mod.ts";

/**
 * Graphite/epoxy of the T300/5208 type, as printed in S. W. Tsai and H. T. Hahn, Introduction to
 * Composite Materials, 1980, and A. K. Kaw, Mechanics of Composite Materials, 2nd ed. 2006 (from
 * memory). The books give no transverse shear moduli and no density: those are placeholders.
 */
export const GRAPHITE_EPOXY: Lamina = {
  name: "graphite/epoxy",
  E1: 181e9,
  E2: 10.3e9,
  G12: 7.17e9,
  nu12: 0.28,
  G13: 7.17e9,
  G23: 3e9,
  density: 1600,
  alpha1: 0.02e-6,
  alpha2: 22.5e-6,
  beta1: 0,
  beta2: 0.6,
  strengths: { Xt: 1500e6, Xc: 1500e6, Yt: 40e6, Yc: 246e6, S: 68e6 },
};

/** An invented glass ply. */
export const GLASS: Lamina = {
  name: "glass ply",
  E1: 38e9,
  E2: 9e9,
  G12: 3.6e9,
  nu12: 0.28,
  G13: 3.6e9,
  G23: 3e9,
  density: 1850,
  alpha1: 7e-6,
  alpha2: 28e-6,
  beta1: 0.02,
  beta2: 0.4,
  strengths: { Xt: 900e6, Xc: 600e6, Yt: 40e6, Yc: 140e6, S: 60e6 },
};

/** An invented honeycomb: next to nothing in the plane, and no ply strengths. */
export const HONEYCOMB: Lamina = {
  name: "honeycomb",
  E1: 1e3,
  E2: 1e3,
  G12: 400,
  nu12: 0.3,
  G13: 45e6,
  G23: 22e6,
  density: 48,
  alpha1: 25e-6,
  alpha2: 25e-6,
  beta1: 0,
  beta2: 0,
};

/** Plies of one lamina and one thickness at the angles given, mould side first. */
export function stackOf(
  lamina: Lamina,
  thickness: number,
  anglesDeg: readonly number[],
): Stack {
  return anglesDeg.map((angleDeg): Ply => ({ lamina, thickness, angleDeg }));
}

const DEG = 180 / Math.PI;

/**
 * An unsymmetric sandwich for which exact fractions were computed (Python's `fractions`): cos and
 * sin of its plies are 4/5 and 3/5, 1 and 0, 0 and 1, 12/13 and −5/13.
 */
export const SANDWICH: Stack = [
  { lamina: GLASS, thickness: 0.0004, angleDeg: Math.atan2(3, 4) * DEG },
  { lamina: HONEYCOMB, thickness: 0.01, angleDeg: 0 },
  { lamina: GLASS, thickness: 0.0003, angleDeg: 90 },
  { lamina: GLASS, thickness: 0.0002, angleDeg: Math.atan2(-5, 12) * DEG },
];
