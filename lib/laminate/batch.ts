import type { Lamina } from "../materials/mod.ts";
import { finishBatch, makeOutput, prepareBatch } from "./_batch.ts";
import { runKernel } from "./_batch_kernel.ts";

/**
 * Many laminates at once, as arrays of numbers: laminate after laminate, and in each its plies,
 * mould side first.
 */
export interface LaminateBatch {
  /** The laminas of which the plies are made. */
  readonly laminas: readonly Lamina[];
  /** Plies of each laminate [1]. */
  readonly plyCount: number;
  /** Place in `laminas` of each ply's lamina, counted from 0 [1]. */
  readonly lamina: Uint16Array;
  /** Thickness of each ply; 0 leaves the ply out [m]. */
  readonly thickness: Float64Array;
  /** From x to the 1 direction of each ply, positive towards y [deg]. */
  readonly angleDeg: Float64Array;
  /** Nx, Ny, Nxy [N/m], Mx, My, Mxy [N]: six for all laminates, or six for each. */
  readonly loads: Float64Array;
  /** Temperature less the temperature free of stress, for all [K]. */
  readonly temperatureChange?: number;
  /** Moisture content by mass less that free of stress, for all [1]. */
  readonly moistureChange?: number;
}

/** How to rate a batch and what to keep of it. */
export interface BatchOptions {
  /**
   * Whether the stress left by temperature and moisture grows with the load, as
   * `firstPlyFailureAllScaled` has it; if not given it is held, as `firstPlyFailure` has it.
   */
  readonly scaleResidual?: boolean;
  /** Whether to keep the stresses of every ply; six numbers a ply. */
  readonly keepPlyStress?: boolean;
}

/** What a batch of laminates does, one entry a laminate in the order of the batch. */
export interface BatchResult {
  /**
   * Largest Tsai–Wu utilisation of any ply at either face: 1 over the strength ratio, the number
   * by which the load may be multiplied. 0 where no multiple of it fails a ply;
   * `Number.MAX_VALUE` where temperature and moisture alone fail one [1].
   */
  readonly utilisation: Float64Array;
  /** Place of the ply that has it, counted from 0 at the mould; −1 for none [1]. */
  readonly criticalPly: Int16Array;
  /** Face at which it has it: 0 towards the mould, 1 towards the bag [1]. */
  readonly criticalFace: Uint8Array;
  /** ε⁰x, ε⁰y, γ⁰xy [1], κx, κy, κxy [1/m]: six a laminate. */
  readonly strains: Float64Array;
  /** Modulus along x in the plane, free to bend [Pa]. */
  readonly membraneEx: Float64Array;
  /**
   * σ1, σ2, τ12 at the bottom of a ply, then at its top: six a ply, 0 for a ply left out;
   * empty if not kept [Pa].
   */
  readonly plyStress: Float64Array;
}

/**
 * Analyses many laminates in one go: strain, curvature, ply stress, first ply by Tsai–Wu. The same
 * as `laminateResponse` for each, to rounding, hundreds of times as fast.
 *
 * Formula: as `laminateResponse`; Tsai–Wu with F12 = −½ √(F11 F22): the utilisation is u = 1/R, R
 * the positive root of f(σ(climate) + R σ(load)) = 1, or of f(R σ) = 1 if all stress is scaled
 *
 * Range: as `laminateResponse`; forces and moments only; a ply's lamina without `strengths` is not
 * rated. Runs to the end on the thread that calls;
 * `analyseBatchAsync` shows progress, can be stopped and can use several threads.
 *
 * Source: as `laminateResponse`; S. W. Tsai and E. M. Wu, J. Composite Materials 5 (1971) 58, from
 * memory.
 *
 * @param batch The laminates and their loads.
 * @param options How to rate and what to keep.
 * @returns One entry a laminate.
 * @throws {InputError} If an array has the wrong type or length, a lamina, thickness, angle or load
 * is not possible, or a laminate has no thickness.
 *
 * @example
 * ```ts
 * import { analyseBatch, batchOf } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass", E1: 38e9, E2: 9e9, G12: 3.6e9, nu12: 0, G13: 3.6e9, G23: 3e9,
 *   density: 1850, alpha1: 7e-6, alpha2: 28e-6,
 *   strengths: { Xt: 900e6, Xc: 600e6, Yt: 40e6, Yc: 140e6, S: 60e6 },
 * };
 * const along = [{ lamina, thickness: 0.001, angleDeg: 0 }];
 * const across = [{ lamina, thickness: 0.001, angleDeg: 90 }];
 * const { utilisation, criticalPly } = analyseBatch(batchOf([along, across], { Nx: 30e3 }));
 * assertAlmostEquals(utilisation[0]!, 30 / 900, 1e-12);
 * assertAlmostEquals(utilisation[1]!, 30 / 40, 1e-12);
 * assertEquals(criticalPly[1], 0);
 * ```
 */
export function analyseBatch(batch: LaminateBatch, options: BatchOptions = {}): BatchResult {
  const prepared = prepareBatch(batch, options);
  const output = makeOutput(prepared);
  runKernel(prepared.input, output, { start: 0, end: prepared.count });
  return finishBatch(output);
}
