/**
 * Laminate calculations for builders: every room of the library behind one door.
 *
 * A program that needs one room only imports that room, `@laminate/notebooks/laminate` for
 * example, and loads no more than it. Numbers are in SI everywhere: m, kg, s, N, Pa, K. What cannot
 * be meant is refused with an `InputError`.
 *
 * @module
 */
export * from "./check/mod.ts";
export * from "./numeric/mod.ts";
export * from "./statistics/mod.ts";
export * from "./materials/mod.ts";
export * from "./constituents/mod.ts";
export * from "./micromechanics/mod.ts";
export * from "./laminate/mod.ts";
export * from "./sandwich/mod.ts";
export * from "./filler/mod.ts";
export * from "./joints/mod.ts";
export * from "./shop/mod.ts";
export * from "./quantity/mod.ts";
export * from "./records/mod.ts";
export * from "./comparison/mod.ts";
export * from "./study/mod.ts";
export * from "./charts/mod.ts";
export * from "./notebook/mod.ts";

// Two rooms have a table and a progress of their own: behind this door the names are those of records.
export type { Column, Progress, TableOptions } from "./records/mod.ts";
