/** A panel as an orthotropic plate, and with its axes changed over. */
import type { Checks } from "../check/mod.ts";
import type { PlateConstants } from "./_levy_roots.ts";
import type { Panel, PanelLoad, PanelPoint } from "./panel.ts";
import type { PanelStiffness } from "./panel_stiffness.ts";

/** Coupling of bending and twist below this share counts as none: rounding. */
const ROUNDING = 1e-9;

/**
 * Stiff shear that stands for "rigid" in a solution with shear: its share of the deflection is
 * near the reciprocal.
 */
export const RIGID = 1e10;

/** Whether bending along x and y, and shear, are uncoupled from twist. */
export function isOrthotropic({ D11, D22, D16, D26, shear }: PanelStiffness): boolean {
  const small = ROUNDING * Math.sqrt(D11 * D22);
  return Math.abs(D16) <= small && Math.abs(D26) <= small &&
    (shear === "rigid" || Math.abs(shear.S45) <= ROUNDING * Math.sqrt(shear.S44 * shear.S55));
}

/** Constants of an orthotropic panel; refuses one whose bending and twist are coupled. */
export function plateConstants(check: Checks, panel: Panel): PlateConstants {
  const { stiffness } = panel;
  if (!isOrthotropic(stiffness)) {
    check.refuse(
      "D16, D26 or S45",
      `${stiffness.D16}, ${stiffness.D26}`,
      "must be 0 for a series: use ritzPanel for plies that lie askew",
    );
  }
  const { D11, D12, D22, D66, shear } = stiffness;
  const stiff = RIGID * Math.max(D11, D22) / Math.min(panel.length, panel.width) ** 2;
  const { S44, S55 } = shear === "rigid" ? { S44: stiff, S55: stiff } : shear;
  return { D11, D12, D22, D66, S44, S55 };
}

/** The same panel with x and y changed over. */
export function swapAxes(panel: Panel): Panel {
  const { D11, D12, D16, D22, D26, D66, shear, massPerArea, notes } = panel.stiffness;
  const { x0, x1, y0, y1 } = panel.edges;
  return {
    length: panel.width,
    width: panel.length,
    stiffness: {
      D11: D22,
      D12,
      D16: D26,
      D22: D11,
      D26: D16,
      D66,
      shear: shear === "rigid" ? "rigid" : { S44: shear.S55, S45: shear.S45, S55: shear.S44 },
      massPerArea,
      notes,
    },
    edges: { x0: y0, x1: y1, y0: x0, y1: x1 },
    loads: panel.loads.map(swapLoad),
  };
}

function swapLoad(load: PanelLoad): PanelLoad {
  switch (load.kind) {
    case "uniform":
      return load;
    case "linear":
    case "line":
      return { ...load, along: load.along === "x" ? "y" : "x" };
    case "patch":
      return { ...load, x: load.y, y: load.x, lengthX: load.lengthY, lengthY: load.lengthX };
  }
}

/** A result of the swapped panel in the panel's own axes. */
export function swapPoint(point: PanelPoint): PanelPoint {
  return {
    x: point.y,
    y: point.x,
    deflection: point.deflection,
    rotationX: point.rotationY,
    rotationY: point.rotationX,
    Mx: point.My,
    My: point.Mx,
    Mxy: point.Mxy,
    Qx: point.Qy,
    Qy: point.Qx,
  };
}
