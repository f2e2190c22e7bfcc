/** The state of a panel in polynomials at a place. */
import type { PanelPoint } from "./panel.ts";
import type { Field, RitzSystem } from "./_ritz_system.ts";

/** A field and its slopes at a place. */
export interface FieldState {
  readonly value: number;
  readonly byX: number;
  readonly byY: number;
}

/** A field and its slopes at a place. */
export function fieldAt(
  { fields, panel }: RitzSystem,
  unknowns: Float64Array,
  { field, x, y }: { readonly field: Field; readonly x: number; readonly y: number },
): FieldState {
  const basis = fields[field];
  const f = basis.x.at(2 * x / panel.length - 1);
  const g = basis.y.at(2 * y / panel.width - 1);
  let [value, byX, byY] = [0, 0, 0];
  for (let i = 0; i < f.value.length; i++) {
    let [sum, slope] = [0, 0];
    const from = basis.offset + i * basis.y.count;
    for (let j = 0; j < g.value.length; j++) {
      sum += unknowns[from + j]! * g.value[j]!;
      slope += unknowns[from + j]! * g.slope[j]!;
    }
    value += f.value[i]! * sum;
    byX += f.slope[i]! * sum;
    byY += f.value[i]! * slope;
  }
  return { value, byX: byX * 2 / panel.length, byY: byY * 2 / panel.width };
}

/** Deflection, rotations, moments and forces at a place. */
export function ritzPoint(
  system: RitzSystem,
  unknowns: Float64Array,
  { x, y }: { readonly x: number; readonly y: number },
): PanelPoint {
  const w = fieldAt(system, unknowns, { field: "w", x, y });
  const X = fieldAt(system, unknowns, { field: "X", x, y });
  const Y = fieldAt(system, unknowns, { field: "Y", x, y });
  const { D11, D12, D16, D22, D26, D66 } = system.panel.stiffness;
  const { S44, S45, S55 } = system.shear;
  const twist = X.byY + Y.byX;
  const [gx, gy] = [w.byX + X.value, w.byY + Y.value];
  return {
    x,
    y,
    deflection: w.value,
    rotationX: X.value,
    rotationY: Y.value,
    Mx: D11 * X.byX + D12 * Y.byY + D16 * twist,
    My: D12 * X.byX + D22 * Y.byY + D26 * twist,
    Mxy: D16 * X.byX + D26 * Y.byY + D66 * twist,
    Qx: S55 * gx + S45 * gy,
    Qy: S45 * gx + S44 * gy,
  };
}
