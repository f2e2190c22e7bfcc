import { checksFor } from "../check/mod.ts";
import { levyPanel } from "./levy.ts";
import { checkPanel } from "./_panel_checks.ts";
import { isOrthotropic } from "./_panel_plate.ts";
import type { Panel, PanelPoint } from "./panel.ts";
import { type PanelReactions, ritzPanel } from "./ritz.ts";

const check = checksFor("solve the panel");

/** A panel's solution, by the method that suits it best. */
export interface PanelSolution {
  /** "series": exact sine waves; "polynomials": minimum energy. */
  readonly method: "series" | "polynomials";
  /** The panel solved. */
  readonly panel: Panel;
  /** The state at a place x, y [m]. */
  at(x: number, y: number): PanelPoint;
  /** What holds the panel; computed by polynomials when asked. */
  reactions(): PanelReactions;
  /** Remarks, empty where there is nothing to say. */
  readonly notes: readonly string[];
  /** Where the equations come from. */
  readonly source: string;
}

/**
 * Solves a panel: by sine waves where two opposite edges are "simple", no ply lies askew and
 * there are no point supports and no beams (exact, also under a heel and at the edges), otherwise
 * by polynomials.
 *
 * Formula: as `levyPanel` and `ritzPanel`
 *
 * Range: small deflections: beyond about half the thickness a panel held all round is stiffer
 * than this, because its middle stretches.
 *
 * Source: as `levyPanel` and `ritzPanel`.
 *
 * @param panel The panel.
 * @param degree Degree of the polynomials where they are used, 4 to 30; 12 if not given.
 * @returns The solution, to be asked at any place.
 * @throws {InputError} If the panel cannot be meant, a support is off the panel, or nothing holds
 * it.
 *
 * @example
 * ```ts
 * import { allEdges, isotropicPanel, solvePanel } from "@laminate/notebooks/sandwich";
 * import { assertEquals } from "@std/assert";
 *
 * const stiffness = isotropicPanel({ E: 70e9, nu: 0.3, thickness: 0.003, density: 2700 });
 * const loads = [{ kind: "uniform", pressure: 1000 }] as const;
 * const panel = { length: 0.6, width: 0.4, stiffness, edges: allEdges("simple"), loads };
 * assertEquals(solvePanel(panel).method, "series");
 * ```
 */
export function solvePanel(panel: Panel, degree = 12): PanelSolution {
  checkPanel(check, panel);
  const { edges, stiffness, supports = [], beams = [] } = panel;
  const opposite = (edges.x0 === "simple" && edges.x1 === "simple") ||
    (edges.y0 === "simple" && edges.y1 === "simple");
  let reactions: PanelReactions | undefined;
  if (opposite && isOrthotropic(stiffness) && supports.length + beams.length === 0) {
    const { at, source } = levyPanel(panel);
    return Object.freeze({
      method: "series",
      panel,
      at,
      reactions: () => reactions ??= ritzPanel(panel, degree).reactions,
      notes: stiffness.notes,
      source,
    });
  }
  const solution = ritzPanel(panel, degree);
  return Object.freeze({
    method: "polynomials",
    panel,
    at: solution.at,
    reactions: () => solution.reactions,
    notes: solution.notes,
    source: solution.source,
  });
}
