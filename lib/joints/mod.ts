/**
 * Will the mount hold? Bolts in thin sandwich, bonded laps and doublers, stays with preload.
 *
 * Start with {@link designLoad}, then {@link boltedReserve} for a row of bolts,
 * {@link smallestWasher} and {@link pottedInsert} where the core is soft, {@link lapShear} and
 * {@link bondReserve} for a bond, and {@link stayedPanel} for a stay. A mount that carries people
 * needs the tests that its rule asks for.
 *
 * @example Two bolts of 6 mm through 2 mm, three times the load of 800 N
 * ```ts
 * import { boltedReserve, designLoad } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const { mode, reserve } = boltedReserve({
 *   load: designLoad(800, { loadFactor: 3, fittingFactor: 1 }),
 *   boltCount: 2,
 *   boltDiameter: 0.006,
 *   holeDiameter: 0.0065,
 *   thickness: 0.002,
 *   width: 0.06,
 *   edgeDistance: 0.02,
 * }, { bearing: 200e6, netTension: 150e6, shearOut: 60e6 });
 * // 2400 N on two holes of 6 mm by 2 mm press with 100 MPa.
 * assertEquals(mode, "bearing");
 * assertAlmostEquals(reserve, 2, 1e-12);
 * ```
 *
 * @module
 */
export * from "./design_load.ts";
export * from "./bolted_joint.ts";
export * from "./hole_layout.ts";
export * from "./build_up.ts";
export * from "./clamped_core.ts";
export * from "./potted_insert.ts";
export * from "./lap_shear.ts";
export * from "./bent_lap.ts";
export * from "./bond_reserve.ts";
export * from "./doubler.ts";
export * from "./stay.ts";
export * from "./preload.ts";
export * from "./impact.ts";
export * from "./stay_chain.ts";
