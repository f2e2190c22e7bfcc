import { checksFor } from "../check/mod.ts";
import {
  allEdges,
  navierPanel,
  type PanelFailure,
  panelFailure,
  type PanelLoad,
  type PanelPoint,
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

/** Shares of the sides at which every panel is looked at. */
const SHARES = [0, 0.25, 0.5, 0.75, 1];

/** Most waves that are worth their time. */
const MOST_WAVES = 199;

/**
 * Deflection of a panel on four simply supported edges, and what gives first: quick, for sweeps
 * and maps of hundreds of panels.
 *
 * Formula: `navierPanel` at a grid of 5 × 5 places, at the middle and the rim of each patch;
 * `panelFailure` there
 *
 * Range: as `navierPanel`; with 49 waves shear at the edges is about 1 % low and moments under a
 * heel about 1 % rough: look closely at the one you choose with `solvePanel`.
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
  const points = placesOf(task).map(([x, y]): PanelPoint => solution.at(x, y));
  const largest = points.reduce((a, b) => Math.abs(b.deflection) > Math.abs(a.deflection) ? b : a);
  const failures = panelFailure(fieldOf(points), loads, make.design);
  return Object.freeze({
    deflection: check.result("deflection", Math.abs(largest.deflection), "m"),
    failures,
    reserve: failures[0]?.reserve ?? null,
  });
}

type Place = readonly [x: number, y: number];

/** The grid, and of each patch the middle and the middles of its rim. */
function placesOf({ length, width, loads }: FourEdgeTask): readonly Place[] {
  const grid = SHARES.flatMap((i) => SHARES.map((j): Place => [i * length, j * width]));
  const patches = loads.flatMap((load): readonly Place[] => {
    if (load.kind !== "patch") return [];
    const { x, y, lengthX, lengthY } = load;
    return [
      [x, y],
      [x - lengthX / 2, y],
      [x + lengthX / 2, y],
      [x, y - lengthY / 2],
      [x, y + lengthY / 2],
    ];
  });
  return [...grid, ...patches];
}

/** The points as a field. */
function fieldOf(points: readonly PanelPoint[]): Parameters<typeof panelFailure>[0] {
  return {
    xs: Float64Array.from(points, ({ x }) => x),
    ys: Float64Array.from(points, ({ y }) => y),
    points,
    largest: (amount) => points.reduce((a, b) => Math.abs(b[amount]) > Math.abs(a[amount]) ? b : a),
    values: (amount) => Float64Array.from(points, (point) => point[amount]),
  };
}
