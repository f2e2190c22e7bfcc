import { checksFor } from "../check/mod.ts";
import type { Stack } from "../materials/mod.ts";
import { checkStack } from "./_checks.ts";
import type { FailureOptions } from "./failure_criterion.ts";
import { failureNotes, surfacesFor } from "./_failure_criterion.ts";
import {
  combined,
  faceCrossing,
  FACES,
  type FaceStates,
  mechanicalStates,
  type PlyFace,
  residualStates,
  TIED,
} from "./_failure_ply_states.ts";
import type { FailureMode } from "./failure_verdict.ts";
import { type LaminateLoad, laminateResponse } from "./response.ts";

export type { PlyFace } from "./_failure_ply_states.ts";

const check = checksFor("find the first ply to fail");

/** How near to failure one face of one layer is. */
export interface FaceFailure {
  /** Place of the layer in the stack, mould side first, from 1 [1]. */
  readonly layer: number;
  /** Its face towards the mould (bottom) or the bag (top). */
  readonly face: PlyFace;
  /** The load times this fails the face; `null` where no multiple of it does [1]. */
  readonly ratio: number | null;
  /** How it fails there; `null` where it does not. */
  readonly mode: FailureMode | null;
}

/** Which layer of a laminate fails first under a growing load. */
export interface FirstPlyFailure {
  /** The load times this fails the first ply; `null` where no multiple of it does [1]. */
  readonly ratio: number | null;
  /** Every face whose ratio is the smallest to 1e-9; empty where nothing fails. */
  readonly tied: readonly FaceFailure[];
  /** Every face that was judged, mould side first. */
  readonly faces: readonly FaceFailure[];
  /** What limits the answer. */
  readonly notes: readonly string[];
}

/**
 * First ply failure under a load of which all grows: forces, moments or imposed strains, and
 * with them the stress left by cure, temperature and moisture.
 *
 * Formula: R = min over faces of the strength ratio of the total stress
 *
 * Range: linear; plies judged at both faces, layers without strengths left out. Scaling the cure
 * stress with the load is not what nature does: see `firstPlyFailure`.
 *
 * Source: A. K. Kaw, Mechanics of Composite Materials, 2nd ed. 2006, section 5.2, from memory
 *
 * @param stack Plies, mould side first.
 * @param load What is done to it.
 * @param options Criterion, its inputs and the knock-down.
 * @returns The ratio [1], the faces that fail at it, and every face.
 * @throws {InputError} If the stack, the load or the options cannot be used, or no layer has
 * strengths.
 *
 * @example
 * ```ts
 * import { firstPlyFailureAllScaled } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass ply", E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.28, G13: 4e9, G23: 3e9,
 *   density: 1900, alpha1: 7e-6, alpha2: 25e-6,
 *   strengths: { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 },
 * };
 * const stack = [{ lamina, thickness: 1e-3, angleDeg: 90 }];
 * const { ratio } = firstPlyFailureAllScaled(stack, { Nx: 10e3 }, { criterion: "Tsai-Wu" });
 * assertAlmostEquals(ratio!, 4, 1e-12);
 * ```
 */
export function firstPlyFailureAllScaled(
  stack: Stack,
  load: LaminateLoad,
  options: FailureOptions,
): FirstPlyFailure {
  checkJudged(stack, load);
  const total = combined([[1, mechanicalStates(stack, load)], [1, residualStates(stack, load)]]);
  return judged(stack, { fixed: null, growing: total, options });
}

/**
 * First ply failure under a growing load, while the stress left by cure, temperature and moisture
 * stays as it is.
 *
 * Formula: R = min over faces of the smallest R ≥ 0 at which σ(climate) + R σ(load) fails; 0 if
 * the climate alone fails a ply
 *
 * Range: linear; plies judged at both faces, layers without strengths left out
 *
 * Source: A. K. Kaw, Mechanics of Composite Materials, 2nd ed. 2006, section 5.2, from memory
 *
 * @param stack Plies, mould side first.
 * @param load What is done to it; forces, moments and imposed strains grow, the climate stays.
 * @param options Criterion, its inputs and the knock-down.
 * @returns The ratio [1], the faces that fail at it, and every face.
 * @throws {InputError} If the stack, the load or the options cannot be used, or no layer has
 * strengths.
 *
 * @example
 * ```ts
 * import { firstPlyFailure, stackOfCode } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass ply", E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.28, G13: 4e9, G23: 3e9,
 *   density: 1900, alpha1: 7e-6, alpha2: 25e-6,
 *   strengths: { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 },
 * };
 * const stack = stackOfCode("[0/90]s", { ply: { lamina, thickness: 0.25e-3 } });
 * const load = { Nx: 50e3, temperatureChange: -60 };
 * const { ratio, tied } = firstPlyFailure(stack, load, { criterion: "Tsai-Wu" });
 * assertAlmostEquals(ratio!, 1.617, 0.0005);
 * assertEquals(tied[0]!.mode, "2t");
 * ```
 */
export function firstPlyFailure(
  stack: Stack,
  load: LaminateLoad,
  options: FailureOptions,
): FirstPlyFailure {
  checkJudged(stack, load);
  return judged(stack, {
    fixed: residualStates(stack, load),
    growing: mechanicalStates(stack, load),
    options,
  });
}

/** Everything that the response of the laminate refuses. */
function checkJudged(stack: Stack, load: LaminateLoad): void {
  checkStack(check, stack);
  laminateResponse(stack, load);
}

function judged(
  stack: Stack,
  { fixed, growing, options }: {
    readonly fixed: readonly FaceStates[] | null;
    readonly growing: readonly FaceStates[];
    readonly options: FailureOptions;
  },
): FirstPlyFailure {
  const surfaces = surfacesFor(check, stack, options);
  if (surfaces.every((surface) => surface === undefined)) {
    check.refuse("set of strengths", undefined, "must be given for at least one layer");
  }
  const faces = stack.flatMap((_, index) => {
    const surface = surfaces[index];
    if (surface === undefined) return [];
    return FACES.map((face): FaceFailure => {
      const stays = fixed?.[index]?.[face] ?? null;
      const found = faceCrossing(surface, stays, growing[index]![face]);
      if (found !== null) check.result("strength ratio", found.ratio);
      return { layer: index + 1, face, ratio: found?.ratio ?? null, mode: found?.mode ?? null };
    });
  });
  const smallest = faces.reduce<number | null>(
    (least, { ratio }) => ratio !== null && (least === null || ratio < least) ? ratio : least,
    null,
  );
  const tied = smallest === null
    ? []
    : faces.filter(({ ratio }) => ratio !== null && ratio <= smallest * (1 + TIED));
  return { ratio: smallest, tied, faces, notes: failureNotes(stack, options) };
}
