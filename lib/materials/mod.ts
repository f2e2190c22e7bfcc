/**
 * What is this cloth, resin, core, filler made of? Types only: the figures stand in
 * `data/materials/*.csv`, and `records` reads them.
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
