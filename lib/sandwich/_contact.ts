/** Springs at points of a panel, some of which let go: which of them hold is found by iteration. */
import type { Checks } from "../check/mod.ts";
import type { PointSupport } from "./panel.ts";
import { factorSymmetric, solveFactored, type SymmetricFactor } from "./_symmetric_solve.ts";

/** A support with its functions' means over the pad. */
export interface SpringVector {
  readonly support: PointSupport;
  readonly vector: Float64Array;
}

/** State of the springs with the unknowns that belong to it. */
export interface ContactState {
  readonly unknowns: Float64Array;
  /** Force of each support, 0 where it has let go. */
  readonly forces: readonly number[];
  readonly holds: readonly boolean[];
  readonly factor: SymmetricFactor;
}

/** Rounds after which the search gives up. */
const MOST_ROUNDS = 60;

/** Refuses a support off the panel or with a stiffness that cannot be meant. */
export function checkSupports(
  check: Checks,
  supports: readonly PointSupport[],
  { length, width }: { readonly length: number; readonly width: number },
): void {
  check.list("supports", supports, 0);
  supports.forEach((support, i) => {
    check.object(`support ${i + 1}`, support);
    const name = `support ${JSON.stringify(support.name ?? i + 1)}`;
    check.nonNegative(`pad along x of ${name}`, support.padX ?? 0, "m");
    check.nonNegative(`pad along y of ${name}`, support.padY ?? 0, "m");
    checkPlace(check, `x of ${name}`, [support.x, support.padX ?? 0, length]);
    checkPlace(check, `y of ${name}`, [support.y, support.padY ?? 0, width]);
    check.positive(`stiffness of ${name}`, support.stiffness, "N/m");
    check.finite(`preload of ${name}`, support.preload, "N");
    check.oneOf(`side of ${name}`, support.side, ["far", "near"]);
    if (typeof support.oneWay !== "boolean") {
      check.refuse(`oneWay of ${name}`, support.oneWay, "must be true or false");
    }
    if (support.oneWay && support.preload < 0) {
      check.refuse(`preload of ${name}`, support.preload, "must be 0 or above if it is one-way");
    }
  });
}

/** Refuses a support whose pad does not lie wholly on the panel. */
function checkPlace(
  check: Checks,
  name: string,
  [place, pad, side]: readonly [number, number, number],
): void {
  check.within(name, place, { min: 0, max: side, unit: "m" });
  // A pad as wide as the panel may reach beyond by rounding.
  const slack = 1e-12 * side;
  if (!(place - pad / 2 >= -slack && place + pad / 2 <= side + slack)) {
    check.refuse(name, place, `must leave room for its pad of ${pad} m on the panel`);
  }
}

/** Solves (K + Σ k v vᵀ) u = f − Σ side preload v over the springs that hold. */
export function solveContact(
  check: Checks,
  { matrix, load }: { readonly matrix: Float64Array; readonly load: Float64Array },
  springs: readonly SpringVector[],
): ContactState {
  let holds = springs.map(() => true);
  const seen = new Set<string>();
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const factor = factorWith(matrix, springs, holds);
    if (factor === undefined) {
      return check.refuse(
        "supports",
        `${holds.filter(Boolean).length} of ${springs.length} holding`,
        "must hold the panel: it is free to move or to turn as a whole",
      );
    }
    const unknowns = solveFactored(factor, rightHandSide(load, springs, holds));
    const forces = springs.map(({ support, vector }) => forceOf(support, dot(vector, unknowns)));
    const next = springs.map(({ support }, i) => !support.oneWay || (forces[i] ?? 0) >= 0);
    if (next.every((hold, i) => hold === holds[i])) {
      return { unknowns, forces: forces.map((force, i) => holds[i] ? force : 0), holds, factor };
    }
    // A set met before would be met for ever: change only the worst support from here on.
    const key = next.join();
    holds = seen.has(key) ? changeWorst(holds, next, forces) : next;
    seen.add(key);
  }
  return check.refuse("supports", springs.length, "must settle: contact changed without end");
}

/** Force of a support against its side for a deflection of the panel there. */
function forceOf({ stiffness, preload, side }: PointSupport, deflection: number): number {
  return preload + stiffness * (side === "far" ? deflection : -deflection);
}

function changeWorst(
  holds: readonly boolean[],
  next: readonly boolean[],
  forces: readonly number[],
): boolean[] {
  let worst = -1;
  next.forEach((hold, i) => {
    if (hold === holds[i]) return;
    if (worst < 0 || Math.abs(forces[i] ?? 0) > Math.abs(forces[worst] ?? 0)) worst = i;
  });
  return holds.map((hold, i) => i === worst ? !hold : hold);
}

function factorWith(
  matrix: Float64Array,
  springs: readonly SpringVector[],
  holds: readonly boolean[],
): SymmetricFactor | undefined {
  const size = Math.round(Math.sqrt(matrix.length));
  const stiff = Float64Array.from(matrix);
  addSprings(stiff, springs, holds);
  return factorSymmetric(stiff, size);
}

/** Adds k v vᵀ of the springs that hold; a vector may be shorter than the matrix. */
export function addSprings(
  matrix: Float64Array,
  springs: readonly SpringVector[],
  holds: readonly boolean[],
): void {
  const size = Math.round(Math.sqrt(matrix.length));
  springs.forEach(({ support, vector }, s) => {
    if (!holds[s]) return;
    const count = Math.min(vector.length, size);
    for (let i = 0; i < count; i++) {
      const share = support.stiffness * vector[i]!;
      if (share === 0) continue;
      for (let k = 0; k < count; k++) matrix[i * size + k]! += share * vector[k]!;
    }
  });
}

function rightHandSide(
  load: Float64Array,
  springs: readonly SpringVector[],
  holds: readonly boolean[],
): Float64Array {
  const right = Float64Array.from(load);
  springs.forEach(({ support, vector }, s) => {
    if (!holds[s] || support.preload === 0) return;
    const sign = support.side === "far" ? 1 : -1;
    for (let i = 0; i < right.length; i++) right[i]! -= sign * support.preload * vector[i]!;
  });
  return right;
}

/** Σ a b. */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
