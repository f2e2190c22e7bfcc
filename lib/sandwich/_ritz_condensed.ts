/** The panel's energy in the deflection alone: rotations settle as they like. */
import type { Checks } from "../check/mod.ts";
import { addSprings, checkSupports, type SpringVector } from "./_contact.ts";
import type { Panel } from "./panel.ts";
import { checkPanel } from "./_panel_checks.ts";
import {
  loadVector,
  padProfiles,
  type RitzSystem,
  ritzSystem,
  stiffnessMatrix,
} from "./_ritz_system.ts";
import { factorSymmetric, solveFactored } from "./_symmetric_solve.ts";

/** A checked panel in polynomials, with its stiffness against deflection. */
export interface CondensedPanel {
  readonly system: RitzSystem;
  readonly matrix: Float64Array;
  /** Number of deflection functions. */
  readonly count: number;
}

/** Checks the panel and takes its rotations out. One-way supports hold if they are preloaded. */
export function condensedPanel(check: Checks, panel: Panel, degree: number): CondensedPanel {
  checkPanel(check, panel);
  check.count("degree", degree, 4);
  check.within("degree", degree, { min: 4, max: 20 });
  const supports = panel.supports ?? [];
  checkSupports(check, supports, panel);
  const system = ritzSystem(panel, degree);
  const { size } = system;
  const full = stiffnessMatrix(system);
  const springs: SpringVector[] = supports.map((support) => {
    const { x, y, padX = 0, padY = 0 } = support;
    return { support, vector: loadVector(system, [padProfiles({ x, y, padX, padY }, panel)]) };
  });
  addSprings(full, springs, supports.map(({ oneWay, preload }) => !oneWay || preload > 0));
  const count = system.fields.X.offset;
  const rest = size - count;
  const rotations = new Float64Array(rest * rest);
  for (let i = 0; i < rest; i++) {
    for (let k = 0; k < rest; k++) {
      rotations[i * rest + k] = full[(count + i) * size + count + k]!;
    }
  }
  const factor = factorSymmetric(rotations, rest) ??
    check.refuse("stiffness", panel.stiffness, "must hold the rotations");
  const matrix = new Float64Array(count * count);
  const column = new Float64Array(rest);
  for (let k = 0; k < count; k++) {
    for (let i = 0; i < rest; i++) column[i] = full[(count + i) * size + k]!;
    const settled = solveFactored(factor, column);
    for (let i = 0; i <= k; i++) {
      let sum = full[i * size + k]!;
      for (let j = 0; j < rest; j++) sum -= full[(count + j) * size + i]! * settled[j]!;
      matrix[i * count + k] = matrix[k * count + i] = sum;
    }
  }
  return { system, matrix, count };
}

/** Makes a matrix exactly symmetric. */
export function symmetrised(matrix: Float64Array, size: number): Float64Array {
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) matrix[k * size + i] = matrix[i * size + k]!;
  }
  return matrix;
}

/** The deflection that a vector of deflection unknowns means, largest value on a grid 1. */
export function shapeOf(
  { fields, panel }: RitzSystem,
  vector: Float64Array,
): (x: number, y: number) => number {
  const value = (x: number, y: number): number => {
    const f = fields.w.x.at(2 * x / panel.length - 1).value;
    const g = fields.w.y.at(2 * y / panel.width - 1).value;
    let sum = 0;
    for (let i = 0; i < f.length; i++) {
      for (let j = 0; j < g.length; j++) sum += vector[i * g.length + j]! * f[i]! * g[j]!;
    }
    return sum;
  };
  let largest = 0;
  for (let i = 0; i <= 20; i++) {
    for (let j = 0; j <= 20; j++) {
      const here = value(i / 20 * panel.length, j / 20 * panel.width);
      if (Math.abs(here) > Math.abs(largest)) largest = here;
    }
  }
  return (x, y) => value(x, y) / largest;
}
