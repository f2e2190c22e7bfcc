import { checksFor } from "../check/mod.ts";
import {
  allEdges,
  failurePlaces,
  navierPanel,
  type PanelFailure,
  panelFailure,
  type PanelLoad,
  type PanelStiffness,
  type SandwichDesign,
} from "../sandwich/mod.ts";

const check = checksFor("judge the panel on four edges");

/** What a panel is, whatever it was made from. */
export interface JudgedMake {
  /** Stiffness for each metre of width. */
  readonly stiffness: PanelStiffness;
  /** Faces and core with what they stand. */
  readonly design: SandwichDesign;
}

/** A panel that lies on all four edges, and what presses on it. */
export interface FourEdgeTask {
  /** Side along x [m]. */
  readonly length: number;
  /** Side along y [m]. */
  readonly width: number;
  /** The loads. */
  readonly loads: readonly PanelLoad[];
  /** Waves along each side; 49 if not given. */
  readonly waves?: number;
}

/** How a panel on four edges does. */
export interface FourEdgeVerdict {
  /** Largest deflection at the places looked at, a magnitude [m]. */
  readonly deflection: number;
  /** Ways to give, the nearest first. */
  readonly failures: readonly PanelFailure[];
  /** Factor on all loads at which something gives first; null if nothing acts [1]. */
  readonly reserve: number | null;
}

/** Places of the grid along each side at which every panel is looked at. */
const GRID = 5;

/** Most waves that are worth their time. */
const MOST_WAVES = 199;

/**
 * Deflection of a panel on four simply supported edges, and what gives first: quick, for sweeps
 * and maps of hundreds of panels.
 *
 * Formula: `navierPanel` with completed shear forces at the `failurePlaces` of a grid of 5 × 5;
 * `panelFailure` there
 *
 * Range: as `navierPanel`. On panels up to 3 by 1, heels of 30 mm or more, reserves are good to
 * 2 % with 49 waves and 3 % with 25; to 4 and 6 % on 5 by 1. Look closely at the one you choose, by
 * `solvePanel`.
 *
 * Source: as `navierPanel` and `panelFailure`.
 *
 * @param make Stiffness and design.
 * @param task Sides [m], loads, waves.
 * @returns Deflection [m] and ways to give.
 * @throws {InputError} If a side, a load or the design cannot be meant.
 *
 * @example
 * ```ts
 * import { fourEdgePanel, layupDesign, layupStack } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { panelStiffness } from "@laminate/notebooks/sandwich";
 * import { assert } from "@std/assert";
 *
 * const sole = (await readPart("data/sole-panels")).layups.get("sole")!;
 * const stack = layupStack(sole);
 * const make = { stiffness: panelStiffness(stack), design: layupDesign(sole, stack)! };
 * const loads = [{ kind: "uniform", pressure: 2000 }] as const;
 * const { reserve } = fourEdgePanel(make, { length: 0.6, width: 0.4, loads });
 * assert(reserve! > 1);
 * ```
 */
export function fourEdgePanel(make: JudgedMake, task: FourEdgeTask): FourEdgeVerdict {
  check.object("make", make);
  check.object("task", task);
  const { length, width, loads, waves = 49 } = task;
  check.count("waves", waves, 1);
  check.within("waves", waves, { min: 1, max: MOST_WAVES });
  check.list("loads", loads);
  const solution = navierPanel({
    length,
    width,
    stiffness: make.stiffness,
    edges: allEdges("simple"),
    loads,
  }, waves);
  const points = failurePlaces({ length, width, loads }, GRID)
    .map(({ x, y }) => solution.completedAt(x, y));
  const largest = points.reduce((a, b) => Math.abs(b.deflection) > Math.abs(a.deflection) ? b : a);
  const failures = panelFailure({ points }, loads, make.design);
  return Object.freeze({
    deflection: check.result("deflection", Math.abs(largest.deflection), "m"),
    failures,
    reserve: failures[0]?.reserve ?? null,
  });
}
