import type { PanelStiffness } from "../../lib/sandwich/mod.ts";

/** A sandwich whose shear gives a third of the deflection of 0.6 m by 0.4 m. */
export const sandwich: PanelStiffness = {
  D11: 2e3,
  D12: 0.4e3,
  D16: 0,
  D22: 1.6e3,
  D26: 0,
  D66: 0.45e3,
  shear: { S44: 6e4, S45: 0, S55: 6.5e4 },
  massPerArea: 4,
  notes: [],
};
