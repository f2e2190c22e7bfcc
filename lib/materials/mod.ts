/**
 * What is this cloth, resin, core, filler made of? Types only: the figures stand in
 * `data/materials/*.csv`, and `records` reads them.
 *
 * Start with {@link Reinforcement}, {@link Fibre}, {@link Resin} and {@link Core}, rows of the
 * catalogue, and with {@link Ply} and {@link Stack}, which the rooms further up compute with.
 *
 * @example Two plies of cured cloth, and what a square metre weighs
 * ```ts
 * import type { Ply } from "@laminate/notebooks/materials";
 * import { massPerArea } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass cloth", E1: 20e9, E2: 20e9, G12: 4e9, nu12: 0.13, G13: 3e9, G23: 3e9,
 *   density: 1800, alpha1: 15e-6, alpha2: 15e-6,
 * };
 * const ply: Ply = { lamina, thickness: 0.25e-3, angleDeg: 0 };
 * assertAlmostEquals(massPerArea([ply, ply]), 2 * 1800 * 0.25e-3, 1e-12);
 * ```
 *
 * @module
 */
export * from "./catalogued.ts";
export * from "./fibre.ts";
export * from "./resin.ts";
export * from "./reinforcement.ts";
export * from "./core.ts";
export * from "./filler.ts";
export * from "./lamina.ts";
