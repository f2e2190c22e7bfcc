import { checksFor } from "../check/mod.ts";
import { generalisedEigen } from "../numeric/mod.ts";
import type { Panel } from "./panel.ts";
import { condensedPanel, shapeOf, symmetrised } from "./_ritz_condensed.ts";
import { deflectionMatrix } from "./_ritz_system.ts";

const check = checksFor("compute the panel's buckling load");

/** Forces in the plane of a panel, for each metre of edge. */
export interface EdgeCompression {
  /** Along x, compression positive [N/m]. */
  readonly Nx: number;
  /** Along y, compression positive [N/m]. */
  readonly Ny: number;
  /** Shear, either sign [N/m]. */
  readonly Nxy: number;
}

/** How a panel buckles. */
export interface PanelBuckling {
  /** The forces given times this make the panel buckle [1]. */
  readonly factor: number;
  /** Shape at x, y [m]: largest value 1 [1]. */
  shape(x: number, y: number): number;
}

/**
 * Factor on forces in the plane at which a panel buckles out of it, by compression, shear or
 * both. Includes crimping: no load above the shear stiffness comes out.
 *
 * Formula: K v = λ ∫ (Nx w,x² + Ny w,y² + 2 Nxy w,x w,y) dA, least λ above 0
 *
 * Range: perfect flat panel, forces the same all over; real ones bow from the start. Edges must
 * hold the panel. Faces may wrinkle or dimple first: see `failureModes`.
 *
 * Source: Timoshenko and Gere, Theory of Elastic Stability (1961), chapter 9; Ritz's method with
 * first-order shear.
 *
 * @param panel The panel; loads across it do not count.
 * @param forces Forces in its plane, compression positive [N/m].
 * @param degree Degree of the polynomials, 4 to 20; 10 if not given.
 * @returns The factor, and the shape [1].
 * @throws {InputError} If the panel cannot be meant or nothing holds it, it has beams, all forces
 * are 0, or they only pull.
 *
 * @example A thin square panel on simple supports: 4 π² D/b²
 * ```ts
 * import { allEdges, isotropicPanel, panelBuckling } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const stiffness = isotropicPanel({ E: 10.92, nu: 0.3, thickness: 1, density: 1 }, "rigid");
 * const panel = { length: 1, width: 1, stiffness, edges: allEdges("simple"), loads: [] };
 * const { factor } = panelBuckling(panel, { Nx: Math.PI ** 2, Ny: 0, Nxy: 0 });
 * assertAlmostEquals(factor, 4, 1e-4);
 * ```
 */
export function panelBuckling(
  panel: Panel,
  forces: EdgeCompression,
  degree = 10,
): PanelBuckling {
  check.object("forces", forces);
  if ((check.object("panel", panel).beams ?? []).length > 0) {
    check.refuse("beams", panel.beams, "must be none: a beam takes its own share of the forces");
  }
  const Nx = check.finite("Nx", forces.Nx, "N/m");
  const Ny = check.finite("Ny", forces.Ny, "N/m");
  const Nxy = check.finite("Nxy", forces.Nxy, "N/m");
  if (Nx === 0 && Ny === 0 && Nxy === 0) check.refuse("forces", forces, "must not all be 0");
  const { system, matrix, count } = condensedPanel(check, panel, degree);
  const geometric = deflectionMatrix(system, [
    [Nx, ["w", 1, 0], ["w", 1, 0]],
    [Ny, ["w", 0, 1], ["w", 0, 1]],
    [Nxy, ["w", 1, 0], ["w", 0, 1]],
    [Nxy, ["w", 0, 1], ["w", 1, 0]],
  ]);
  const { values, vectors } = generalisedEigen(symmetrised(geometric, count), matrix);
  const largest = values[count - 1] ?? 0;
  if (!(largest > 0)) {
    check.refuse("forces", forces, "must press or shear: a panel that is only pulled stays flat");
  }
  const shape = shapeOf(system, vectors.slice((count - 1) * count, count * count));
  return Object.freeze({ factor: check.result("factor", 1 / largest), shape });
}
