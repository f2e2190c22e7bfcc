import { checksFor } from "../check/mod.ts";
import { fillNormals, nextBits, nextNormal, nextUniform, seededState } from "./_ziggurat.ts";

const check = checksFor("draw random numbers");

/** A stream of random numbers that its seed decides to the last digit. */
export interface RandomGenerator {
  /** A whole number from 0 to 2³² − 1. */
  bits(): number;
  /** A number above 0 and below 1, all equally likely, in steps of 2⁻³² [1]. */
  uniform(): number;
  /** A standard normal number: mean 0, standard deviation 1 [1]. */
  normal(): number;
  /** Fills an array with what `uniform` would give, one after another; returns it. */
  fillUniform(target: Float64Array): Float64Array;
  /** Fills an array with what `normal` would give, one after another; returns it. */
  fillNormal(target: Float64Array): Float64Array;
}

/**
 * A seeded random generator: the same seed gives the same numbers everywhere.
 *
 * Formula: xoshiro128++ on 32-bit words; normal numbers by a ziggurat of 256 layers
 *
 * Range: period 2¹²⁸ − 1; a normal number steps by 2⁻²³ of its layer's width, its tail is exact.
 *
 * Source: Blackman and Vigna, ACM Transactions on Mathematical Software 47 (2021); Marsaglia and
 * Tsang, Journal of Statistical Software 5 (2000); both from memory.
 *
 * @param seed Any whole number from 0 up.
 * @returns The generator.
 * @throws {InputError} If the seed is not a whole number, 0 or above.
 *
 * @example
 * ```ts
 * import { randomGenerator } from "@laminate/notebooks/numeric";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(randomGenerator(1).normal(), randomGenerator(1).normal());
 * ```
 */
export function randomGenerator(seed: number): RandomGenerator {
  const state = seededState(check.count("seed", seed));
  return {
    bits: () => nextBits(state) >>> 0,
    uniform: () => nextUniform(state),
    normal: () => nextNormal(state),
    fillUniform(target): Float64Array {
      for (let i = 0; i < target.length; i++) target[i] = nextUniform(state);
      return target;
    },
    fillNormal(target): Float64Array {
      fillNormals(state, target);
      return target;
    },
  };
}
