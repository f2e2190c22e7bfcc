/**
 * Small dense algebra, integrals, roots, quantiles and random numbers, without a word of the trade.
 *
 * A matrix is a flat list of numbers, row after row.
 *
 * @module
 */
export * from "./linear.ts";
