/**
 * Small dense algebra, integrals, roots, quantiles and random numbers, without a word of the trade.
 *
 * A matrix is a flat list of numbers, row after row.
 *
 * @module
 */
export * from "./linear.ts";
export * from "./cholesky.ts";
export * from "./eigen.ts";
export * from "./least_squares.ts";
export * from "./quadrature.ts";
export * from "./quantile.ts";
export * from "./random.ts";
export * from "./root.ts";
