import type { Stack } from "../../lib/materials/mod.ts";

/** A sandwich of round figures: faces 20 GPa and 1 mm, core 100 MPa, G 40 MPa and 10 mm. */
export const PLAIN: Stack = (() => {
  const common = { nu12: 0, density: 1000, alpha1: 0, alpha2: 0 };
  const face = { name: "face", E1: 20e9, E2: 20e9, G12: 4e9, G13: 4e9, G23: 4e9, ...common };
  const foam = { name: "foam", E1: 1e8, E2: 1e8, G12: 4e7, G13: 4e7, G23: 4e7, ...common };
  const ply = { lamina: face, thickness: 0.001, angleDeg: 0 };
  return [ply, { lamina: foam, thickness: 0.01, angleDeg: 0 }, ply];
})();
