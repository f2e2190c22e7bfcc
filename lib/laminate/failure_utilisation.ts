import { checksFor } from "../check/mod.ts";
import type { FaceFailure, PlyFace } from "./failure_first_ply.ts";
import type { FailureMode } from "./failure_verdict.ts";

const check = checksFor("compute the utilisation of the plies");

/** How much of a layer's strength a load uses up. */
export interface LayerUtilisation {
  /** Place of the layer in the stack, mould side first, from 1 [1]. */
  readonly layer: number;
  /**
   * Load over the load that fails the layer's worse face; 0 where no multiple does, `null` where
   * the climate alone fails it [1].
   */
  readonly utilisation: number | null;
  /** The worse face; `null` where no multiple of the load fails one. */
  readonly face: PlyFace | null;
  /** How that face fails. */
  readonly mode: FailureMode | null;
}

/**
 * Utilisation of each layer that was judged, by its worse face: 0.5 means that twice the load
 * fails it, 1 that it fails now.
 *
 * Formula: 1/R, R the smaller strength ratio of the two faces
 *
 * Range: any verdict of `firstPlyFailure`
 *
 * Source: definition
 *
 * @param faces Faces as judged.
 * @returns One entry a layer, in the order of the stack [1].
 * @throws {InputError} If there is no face, or a ratio is not above or equal to 0.
 *
 * @example
 * ```ts
 * import { firstPlyFailure, utilisationByLayer } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass ply", E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.28, G13: 4e9, G23: 3e9,
 *   density: 1900, alpha1: 7e-6, alpha2: 25e-6,
 *   strengths: { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 },
 * };
 * const stack = [{ lamina, thickness: 1e-3, angleDeg: 90 }];
 * const { faces } = firstPlyFailure(stack, { Nx: 10e3 }, { criterion: "maximum stress" });
 * assertAlmostEquals(utilisationByLayer(faces)[0]!.utilisation!, 0.25, 1e-12);
 * ```
 */
export function utilisationByLayer(faces: readonly FaceFailure[]): readonly LayerUtilisation[] {
  const worst = new Map<number, FaceFailure>();
  for (const face of check.list("faces", faces)) {
    check.object("face", face);
    check.count("layer of a face", face.layer, 1);
    if (face.ratio !== null) check.nonNegative(`ratio of layer ${face.layer}`, face.ratio);
    const known = worst.get(face.layer);
    if (known === undefined || isWorse(face, known)) worst.set(face.layer, face);
  }
  return [...worst.values()].map(({ layer, face, ratio, mode }) => ({
    layer,
    utilisation: ratio === null ? 0 : ratio === 0 ? null : check.result("utilisation", 1 / ratio),
    face: ratio === null ? null : face,
    mode,
  }));
}

function isWorse({ ratio }: FaceFailure, known: FaceFailure): boolean {
  return ratio !== null && (known.ratio === null || ratio < known.ratio);
}
