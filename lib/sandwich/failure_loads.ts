import { checksFor } from "../check/mod.ts";
import type { BeamLoadCase } from "./beam_load_cases.ts";
import { failureModes, type SandwichFailure, type SandwichFailureName } from "./failure_modes.ts";
import type { SandwichDesign } from "./sandwich_design.ts";

const check = checksFor("find the load that a beam stands");

/** A sandwich beam along x and how it is loaded. */
export interface FailureBeam {
  /** How it is held and loaded. */
  readonly loadCase: BeamLoadCase;
  /** Span, or length of a cantilever [m]. */
  readonly span: number;
  /** Width [m]. */
  readonly width: number;
  /** Faces and core with what they stand. */
  readonly design: SandwichDesign;
  /** Length along the span over which each point load presses; no local check if not given [m]. */
  readonly padLength?: number;
}

/** The load at which one way to give comes about. */
export interface FailureLoad extends SandwichFailure {
  /** Total load on the beam [N]. */
  readonly load: number;
}

/**
 * Total load at which each way to give comes about in a sandwich beam, the smallest first.
 *
 * Formula: largest moment and shear force of the load case, then as `failureModes`
 *
 * Range: as `failureModes`; moment and shear force each taken at its own worst place.
 *
 * Source: named in each result; beam theory.
 *
 * @param beam Load case, span [m], width [m], faces and core.
 * @returns Ways to give with their loads [N].
 * @throws {InputError} If a span or width is not above 0, or the design cannot be meant.
 *
 * @example
 * ```ts
 * import { balancedFace, beamLoadCases, failureLoads } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const face = balancedFace({
 *   thickness: 1e-3, E: 20e9, nu: 0.1, tensile: 3e8, compressive: 2e8, shear: 4e7,
 * });
 * const core = {
 *   kind: "foam", thickness: 0.01, Ex: 0, Ey: 0, Ez: 6e7, Gx: 2e7, Gy: 2e7, shearX: 8e5,
 *   shearY: 8e5, compressive: 9e5, cellSize: 0,
 * } as const;
 * const design = { topFace: face, bottomFace: face, core };
 * const { threePoint } = beamLoadCases;
 * const [first] = failureLoads({ loadCase: threePoint, span: 0.2, width: 0.05, design });
 * // Core shear: V = P/2 over b d gives 2 × 0.8 MPa × 0.05 m × 0.011 m.
 * assertAlmostEquals(first!.load / 880, 1, 0.01);
 * ```
 */
export function failureLoads(beam: FailureBeam): readonly FailureLoad[] {
  check.object("beam", beam);
  const { loadCase, span, width, design, padLength } = beam;
  check.object("load case", loadCase);
  check.positive("span", span, "m");
  check.positive("width", width, "m");
  // One newton of total load, so that the reserve is the load itself.
  const Mx = loadCase.moment * span / width;
  const Qx = loadCase.shearForce / width;
  const points = loadCase.load === "points" && padLength !== undefined;
  const count = loadCase.loadSpanFraction > 0 ? 2 : 1;
  const modes = failureModes(design, {
    Mx,
    Qx,
    ...(points ? { patch: { force: 1 / count, lengthX: padLength, lengthY: width } } : {}),
  });
  // A pad as wide as the beam cannot punch through: its rim is the two lines across.
  return Object.freeze(
    modes.filter(({ mode }) => mode !== "punching")
      .map((mode) => Object.freeze({ ...mode, load: mode.reserve })),
  );
}

/** What gives first over thickness of faces and core. */
export interface FailureMap {
  /** Thickness of each face [m]. */
  readonly faceThicknesses: readonly number[];
  /** Thickness of the core [m]. */
  readonly coreThicknesses: readonly number[];
  /** Ways to give that occur. */
  readonly modes: readonly SandwichFailureName[];
  /** Index into `modes`: all cores of the first face thickness, then of the next. */
  readonly first: Uint8Array;
  /** Total load at which it comes about, in the same order [N]. */
  readonly loads: Float64Array;
}

/**
 * Map of what gives first in a beam, and at which load, over face and core thickness.
 *
 * Formula: `failureLoads` at each pair, both faces of the given thickness
 *
 * Range: as `failureLoads`.
 *
 * Source: as `failureLoads`; the idea of a map: T. C. Triantafillou and L. J. Gibson, Mater. Sci.
 * Eng. 95 (1987) 37, from memory.
 *
 * @param beam The beam; the thicknesses of its design are replaced.
 * @param faceThicknesses Thicknesses of each face [m].
 * @param coreThicknesses Thicknesses of the core [m].
 * @returns For each pair the first way to give and its load [N].
 * @throws {InputError} If a list is empty or a thickness is not above 0.
 *
 * @example
 * ```ts
 * import { balancedFace, beamLoadCases, failureMap } from "@laminate/notebooks/sandwich";
 * import { assertEquals } from "@std/assert";
 *
 * const face = balancedFace({
 *   thickness: 1e-3, E: 20e9, nu: 0.1, tensile: 3e8, compressive: 2e8, shear: 4e7,
 * });
 * const core = {
 *   kind: "foam", thickness: 0.01, Ex: 0, Ey: 0, Ez: 6e7, Gx: 2e7, Gy: 2e7, shearX: 8e5,
 *   shearY: 8e5, compressive: 9e5, cellSize: 0,
 * } as const;
 * const design = { topFace: face, bottomFace: face, core };
 * const beam = { loadCase: beamLoadCases.threePoint, span: 0.4, width: 0.05, design };
 * const { modes, first } = failureMap(beam, [1e-4, 2e-3], [0.01]);
 * assertEquals(modes[first[0]!], "wrinkling");
 * assertEquals(modes[first[1]!], "core shear");
 * ```
 */
export function failureMap(
  beam: FailureBeam,
  faceThicknesses: readonly number[],
  coreThicknesses: readonly number[],
): FailureMap {
  check.object("beam", beam);
  check.object("design", beam.design);
  check.list("face thicknesses", faceThicknesses);
  check.list("core thicknesses", coreThicknesses);
  const modes: SandwichFailureName[] = [];
  const first = new Uint8Array(faceThicknesses.length * coreThicknesses.length);
  const loads = new Float64Array(first.length);
  const { topFace, bottomFace, core } = beam.design;
  faceThicknesses.forEach((t, i) => {
    coreThicknesses.forEach((c, j) => {
      const design = {
        topFace: { ...topFace, thickness: t },
        bottomFace: { ...bottomFace, thickness: t },
        core: { ...core, thickness: c },
      };
      const [worst] = failureLoads({ ...beam, design });
      if (worst === undefined) return;
      if (!modes.includes(worst.mode)) modes.push(worst.mode);
      const at = i * coreThicknesses.length + j;
      first[at] = modes.indexOf(worst.mode);
      loads[at] = worst.load;
    });
  });
  return Object.freeze({ faceThicknesses, coreThicknesses, modes, first, loads });
}
