/**
 * What does this mix of fibre and resin do?
 *
 * @module
 */
export * from "./two_phase.ts";
export * from "./rule_of_mixtures.ts";
export * from "./halpin_tsai.ts";
export * from "./hashin_hill.ts";
export * from "./expansion.ts";
