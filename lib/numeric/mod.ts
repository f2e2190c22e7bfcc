/**
 * How is this solved? Small dense algebra, integrals, roots, quantiles and random numbers, without a
 * word of the trade.
 *
 * Start with {@link solve} and {@link leastSquares} for equations, {@link symmetricEigen} for
 * vibration and buckling, {@link findRoot} and {@link integrate} for functions, and
 * {@link randomGenerator} for numbers that are the same at each run. A matrix is a flat list of
 * numbers, row after row.
 *
 * @example 4 x + y = 1 and x + 3 y = 2
 * ```ts
 * import { solve } from "@laminate/notebooks/numeric";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const [x, y] = solve([4, 1, 1, 3], [1, 2]);
 * assertAlmostEquals(x!, 1 / 11, 1e-15);
 * assertAlmostEquals(y!, 7 / 11, 1e-15);
 * ```
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
