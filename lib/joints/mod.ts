/**
 * Will the mount hold? Bolts in thin sandwich, bonded laps and doublers, stays with preload.
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
