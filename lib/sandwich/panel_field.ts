import { checksFor } from "../check/mod.ts";
import { laminateResponse, type PlyResponse } from "../laminate/mod.ts";
import type { Stack } from "../materials/mod.ts";
import { checkPlies } from "./_core_of_stack.ts";
import type { PanelPoint } from "./panel.ts";
import type { PanelSolution } from "./solve_panel.ts";

const check = checksFor("compute the panel's fields");

/** Amounts of which a field can be drawn. */
export type PanelAmount = Exclude<keyof PanelPoint, "x" | "y">;

/** A panel on a grid: all y of the first x, then of the next. */
export interface PanelField {
  /** Places along x [m]. */
  readonly xs: Float64Array;
  /** Places along y [m]. */
  readonly ys: Float64Array;
  /** The points, all y of the first x, then of the next. */
  readonly points: readonly PanelPoint[];
  /** The point where an amount has its largest magnitude. */
  largest(amount: PanelAmount): PanelPoint;
  /** One amount at all points, in their order [unit of the amount]. */
  values(amount: PanelAmount): Float64Array;
}

/**
 * A panel's deflection, moments and forces on an even grid, edges included.
 *
 * Formula: the solution asked at each place
 *
 * Range: as the solution's.
 *
 * Source: as the solution's.
 *
 * @param solution The panel's solution.
 * @param grid Number of places along x and along y, 2 or more each.
 * @returns The points, and for each amount its values and its largest [SI units].
 * @throws {InputError} If a number of places is not a whole number from 2 to 400.
 *
 * @example
 * ```ts
 * import { allEdges, isotropicPanel, panelField, solvePanel } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const stiffness = isotropicPanel({ E: 70e9, nu: 0.3, thickness: 0.003, density: 2700 });
 * const loads = [{ kind: "uniform", pressure: 1000 }] as const;
 * const panel = { length: 0.6, width: 0.4, stiffness, edges: allEdges("simple"), loads };
 * const field = panelField(solvePanel(panel), { x: 5, y: 5 });
 * assertAlmostEquals(field.largest("deflection").x, 0.3, 1e-12);
 * ```
 */
export function panelField(
  solution: PanelSolution,
  grid: {
    /** Places along x. */
    readonly x: number;
    /** Places along y. */
    readonly y: number;
  },
): PanelField {
  check.object("solution", solution);
  check.object("panel of the solution", solution.panel);
  check.positive("length", solution.panel.length, "m");
  check.positive("width", solution.panel.width, "m");
  if (typeof solution.at !== "function") {
    check.refuse("at of the solution", solution.at, "must be a function of place");
  }
  check.object("grid", grid);
  for (const side of ["x", "y"] as const) {
    check.count(`places along ${side}`, grid[side], 2);
    check.within(`places along ${side}`, grid[side], { min: 2, max: 400 });
  }
  const { length, width } = solution.panel;
  const places = (count: number, extent: number): Float64Array =>
    Float64Array.from(
      { length: count },
      (_, i) => i === count - 1 ? extent : i / (count - 1) * extent,
    );
  const xs = places(grid.x, length);
  const ys = places(grid.y, width);
  // Row by row along x: a series keeps what it has found for one y.
  const rows = Array.from(ys, (y) => Array.from(xs, (x) => solution.at(x, y)));
  const points = Array.from(xs, (_, i) => rows.map((row) => row[i] as PanelPoint)).flat();
  return Object.freeze({
    xs,
    ys,
    points: Object.freeze(points),
    largest: (amount: PanelAmount): PanelPoint =>
      points.reduce((best, p) => Math.abs(p[amount]) > Math.abs(best[amount]) ? p : best),
    values: (amount: PanelAmount): Float64Array => Float64Array.from(points, (p) => p[amount]),
  });
}

/**
 * Strain and stress of each ply where a panel carries given moments.
 *
 * Formula: classical lamination theory, with M of the laminate = −M of the panel if the load
 * presses on the bag side (a sagging moment then pulls on the mould side), + if on the mould side
 *
 * Range: as `laminateResponse`.
 *
 * Source: as `laminateResponse`; sign conventions of this room.
 *
 * @param stack Plies, mould side first.
 * @param point Moments of the panel for each metre of width [N].
 * @param loadedSide On which side the load presses.
 * @returns One entry a ply: strain and stress at its bottom, middle and top [Pa].
 * @throws {InputError} If a ply or a moment cannot be meant, or the side is not known.
 *
 * @example A sheet bent by 1 N: 6 M/h² outside, tension away from the load
 * ```ts
 * import { plyStresses } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const sheet = {
 *   name: "sheet", E1: 70e9, E2: 70e9, G12: 26e9, nu12: 0.3, G13: 26e9, G23: 26e9,
 *   density: 2700, alpha1: 23e-6, alpha2: 23e-6,
 * };
 * const stack = [{ lamina: sheet, thickness: 0.001, angleDeg: 0 }];
 * const [ply] = plyStresses(stack, { Mx: 1, My: 0, Mxy: 0 }, "bag");
 * assertAlmostEquals(ply!.bottom.stress.sigmaX, 6e6, 1e-3);
 * ```
 */
export function plyStresses(
  stack: Stack,
  point: Pick<PanelPoint, "Mx" | "My" | "Mxy">,
  loadedSide: "bag" | "mould",
): readonly PlyResponse[] {
  check.object("point", point);
  checkPlies(check, stack, 1);
  const sign = check.oneOf("loaded side", loadedSide, ["bag", "mould"]) === "bag" ? -1 : 1;
  const { plies } = laminateResponse(stack, {
    Mx: sign * check.finite("Mx", point.Mx, "N"),
    My: sign * check.finite("My", point.My, "N"),
    Mxy: sign * check.finite("Mxy", point.Mxy, "N"),
  });
  return plies;
}
