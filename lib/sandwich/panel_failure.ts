import { checksFor } from "../check/mod.ts";
import { failureModes, type SandwichFailure, type SandwichFailureName } from "./failure_modes.ts";
import type { PanelField } from "./panel_field.ts";
import type { PanelLoad } from "./panel.ts";
import type { SandwichDesign } from "./sandwich_design.ts";

const check = checksFor("find what gives first in the panel");

/** One way to give, at the worst place of a panel. */
export interface PanelFailure extends SandwichFailure {
  /** Place along x [m]. */
  readonly x: number;
  /** Place along y [m]. */
  readonly y: number;
}

/**
 * What gives first in a panel: every way to give at its worst place on the field's grid, the
 * nearest first. The reserve is the factor on all loads together.
 *
 * Formula: as `failureModes` with the moments and forces at each place, patches where they press
 *
 * Range: as `failureModes`; each stress of a face alone against its strength: where bending meets
 * twist and plies lie askew see `plyStresses`. By polynomials forces near edges and patches are
 * rough.
 *
 * Source: named in each result.
 *
 * @param field The panel's points: a grid that has the edges, the patches' middles and their rims,
 * such as `failurePlaces`.
 * @param loads The panel's loads, for its patches.
 * @param design Faces and core with what they stand.
 * @returns Ways to give with their place, the smallest reserve first.
 * @throws {InputError} If the design cannot be meant.
 *
 * @example
 * ```ts
 * import { allEdges, balancedFace, isotropicPanel, panelFailure, panelField, solvePanel }
 *   from "@laminate/notebooks/sandwich";
 * import { assertEquals } from "@std/assert";
 *
 * const face = balancedFace({
 *   thickness: 1e-3, E: 20e9, nu: 0.1, tensile: 3e8, compressive: 2e8, shear: 1.2e8,
 * });
 * const core = {
 *   kind: "foam", thickness: 0.01, Ex: 0, Ey: 0, Ez: 6e7, Gx: 2e7, Gy: 2e7, shearX: 8e5,
 *   shearY: 8e5, compressive: 9e5, cellSize: 0,
 * } as const;
 * const stiffness = {
 *   ...isotropicPanel({ E: 1, nu: 0.1, thickness: 1, density: 1 }),
 *   D11: 1220, D22: 1220, D12: 122, D66: 549, shear: { S44: 2.4e5, S45: 0, S55: 2.4e5 },
 * };
 * const loads = [{ kind: "uniform", pressure: 5000 }] as const;
 * const panel = { length: 0.6, width: 0.4, stiffness, edges: allEdges("simple"), loads };
 * const field = panelField(solvePanel(panel), { x: 7, y: 7 });
 * const [first] = panelFailure(field, loads, { topFace: face, bottomFace: face, core });
 * assertEquals(first!.mode, "core shear");
 * ```
 */
export function panelFailure(
  field: Pick<PanelField, "points">,
  loads: readonly PanelLoad[],
  design: SandwichDesign,
): readonly PanelFailure[] {
  check.object("field", field);
  check.list("points of the field", field.points, 1);
  field.points.forEach((point, i) => check.object(`point ${i + 1} of the field`, point));
  check.list("loads", loads, 0);
  loads.forEach((load, i) => check.object(`load ${i + 1}`, load));
  const worst = new Map<SandwichFailureName, PanelFailure>();
  const keep = (mode: SandwichFailure, x: number, y: number): void => {
    const known = worst.get(mode.mode);
    if (known !== undefined && known.reserve <= mode.reserve) return;
    worst.set(mode.mode, Object.freeze({ ...mode, x, y }));
  };
  for (const { x, y, Mx, My, Mxy, Qx, Qy } of field.points) {
    check.finite("x of a point", x, "m");
    check.finite("y of a point", y, "m");
    for (const mode of failureModes(design, { Mx, My, Mxy, Qx, Qy })) keep(mode, x, y);
  }
  for (const load of loads) {
    if (load.kind !== "patch" || load.force <= 0) continue;
    const { force, lengthX, lengthY } = load;
    check.finite("x of a patch", load.x, "m");
    check.finite("y of a patch", load.y, "m");
    const modes = failureModes(design, { patch: { force, lengthX, lengthY } });
    for (const mode of modes) keep(mode, load.x, load.y);
  }
  return Object.freeze([...worst.values()].sort((a, b) => a.reserve - b.reserve));
}
