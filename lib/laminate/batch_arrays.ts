import { checksFor } from "../check/mod.ts";
import type { Stack } from "../materials/mod.ts";
import type { LaminateBatch } from "./batch.ts";
import { checkLamina } from "./_checks.ts";
import type { ForcesAndMoments } from "./plane_state.ts";
import { FORCES } from "./_response.ts";

const checkRoom = checksFor("make room for the batch");
const checkStacks = checksFor("gather the stacks");

/** A hundred million plies fill two gigabytes: more are analysed in parts. */
const MOST_PLIES = 1e8;

/** How large a batch is. */
export interface BatchSize {
  /** Laminates [1]. */
  readonly count: number;
  /** Plies of each [1]. */
  readonly plyCount: number;
  /** Whether each laminate has loads of its own; if not given all share one. */
  readonly loadForEach?: boolean;
}

/** The arrays of a batch, to be filled. */
export type BatchArrays = Pick<LaminateBatch, "lamina" | "thickness" | "angleDeg" | "loads">;

/** What is done to each laminate of a batch. */
export interface BatchLoad extends Partial<ForcesAndMoments> {
  /** Temperature less the temperature free of stress [K]. */
  readonly temperatureChange?: number;
  /** Moisture content by mass less that free of stress [1]. */
  readonly moistureChange?: number;
}

/**
 * Makes room for a batch, all zeros, in memory that workers can read without a copy if there is
 * such memory.
 *
 * Formula: none
 *
 * Range: 18 bytes a ply.
 *
 * Source: none.
 *
 * @param size How large the batch is.
 * @returns Arrays to be filled: laminate after laminate, and in each its plies, mould side first.
 * @throws {InputError} If a number is not a whole number above 0.
 *
 * @example
 * ```ts
 * import { analyseBatch, makeBatchArrays } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass", E1: 38e9, E2: 9e9, G12: 3.6e9, nu12: 0.28, G13: 3.6e9, G23: 3e9,
 *   density: 1850, alpha1: 7e-6, alpha2: 28e-6,
 * };
 * const arrays = makeBatchArrays({ count: 1000, plyCount: 2 });
 * arrays.thickness.fill(0.0005);
 * arrays.loads[0] = 38e3;
 * const { strains } = analyseBatch({ laminas: [lamina], plyCount: 2, ...arrays });
 * assertAlmostEquals(strains[6 * 999]!, 0.001, 1e-15);
 * ```
 */
export function makeBatchArrays(size: BatchSize): BatchArrays {
  const { count, plyCount, loadForEach = false } = checkRoom.object("size", size);
  checkRoom.count("number of laminates", count, 1);
  checkRoom.count("number of plies", plyCount, 1);
  checkRoom.within("number of plies in all", count * plyCount, { min: 1, max: MOST_PLIES });
  const room = (bytes: number): ArrayBufferLike =>
    typeof SharedArrayBuffer === "undefined"
      ? new ArrayBuffer(bytes)
      : new SharedArrayBuffer(bytes);
  const plies = count * plyCount;
  return {
    lamina: new Uint16Array(room(2 * plies)),
    thickness: new Float64Array(room(8 * plies)),
    angleDeg: new Float64Array(room(8 * plies)),
    loads: new Float64Array(room(8 * 6 * (loadForEach ? count : 1))),
  };
}

/**
 * Gathers stacks into a batch. Stacks of fewer plies are filled up with plies of no thickness.
 *
 * Formula: none
 *
 * Range: a convenience for thousands of stacks; for many more fill `makeBatchArrays` directly.
 *
 * Source: none.
 *
 * @param stacks The stacks, mould side first.
 * @param load Forces and moments for all of them [N/m], [N], and changes of climate [K], [1]; what
 * is not given is 0.
 * @returns A batch for `analyseBatch`.
 * @throws {InputError} If there is no stack, one is no list of plies, or a thickness, angle or load
 * is not possible.
 *
 * @example
 * ```ts
 * import { batchOf } from "@laminate/notebooks/laminate";
 * import { assertEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass", E1: 38e9, E2: 9e9, G12: 3.6e9, nu12: 0.28, G13: 3.6e9, G23: 3e9,
 *   density: 1850, alpha1: 7e-6, alpha2: 28e-6,
 * };
 * const ply = { lamina, thickness: 0.001, angleDeg: 0 };
 * const batch = batchOf([[ply], [ply, ply]], { Nx: 1000 });
 * assertEquals(batch.plyCount, 2);
 * assertEquals([...batch.thickness], [0.001, 0, 0.001, 0.001]);
 * ```
 */
export function batchOf(stacks: readonly Stack[], load: BatchLoad): LaminateBatch {
  checkStacksAndLoad(stacks, load);
  const laminas = [...new Set(stacks.flatMap((stack) => stack.map(({ lamina }) => lamina)))];
  laminas.forEach((lamina, index) => checkLamina(checkStacks, lamina, `lamina ${index + 1} `));
  checkStacks.within("number of different laminas", laminas.length, { min: 1, max: 65536 });
  const place = new Map(laminas.map((lamina, index) => [lamina, index]));
  const plyCount = stacks.reduce((most, { length }) => Math.max(most, length), 0);
  const arrays = makeBatchArrays({ count: stacks.length, plyCount });
  stacks.forEach((stack, index) => {
    stack.forEach((ply, k) => {
      const at = index * plyCount + k;
      arrays.lamina[at] = place.get(ply.lamina)!;
      arrays.thickness[at] = ply.thickness;
      arrays.angleDeg[at] = ply.angleDeg;
    });
  });
  FORCES.forEach((name, i) => arrays.loads[i] = load[name] ?? 0);
  const { temperatureChange = 0, moistureChange = 0 } = load;
  return { laminas, plyCount, ...arrays, temperatureChange, moistureChange };
}

function checkStacksAndLoad(stacks: readonly Stack[], load: BatchLoad): void {
  checkStacks.list("stacks", stacks);
  stacks.forEach((stack, index) => {
    checkStacks.list(`stack ${index + 1}`, stack);
    stack.forEach((ply, k) => {
      const where = `stack ${index + 1} ply ${k + 1}`;
      checkStacks.object(where, ply);
      checkStacks.positive(`${where} thickness`, ply.thickness, "m");
      checkStacks.finite(`${where} angle`, ply.angleDeg, "°");
    });
  });
  checkStacks.object("load", load);
  const known: readonly string[] = [...FORCES, "temperatureChange", "moistureChange"];
  for (const [name, value] of Object.entries(load)) {
    checkStacks.oneOf("name of a load", name, known);
    if (value !== undefined) checkStacks.finite(name, value);
  }
}
