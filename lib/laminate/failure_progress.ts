import { checksFor } from "../check/mod.ts";
import type { Lamina, Stack } from "../materials/mod.ts";
import { checkStack } from "./_checks.ts";
import type { FailureOptions } from "./failure_criterion.ts";
import { failureNotes, type LaminaSurface, surfacesFor } from "./_failure_criterion.ts";
import {
  faceCrossing,
  FACES,
  type FaceStates,
  mechanicalStates,
  residualStates,
  TIED,
} from "./_failure_ply_states.ts";
import type { Crossing } from "./_failure_surface.ts";
import type { FailureMode } from "./failure_verdict.ts";
import { type LaminateLoad, laminateResponse } from "./response.ts";
import { FORCES, responseOf } from "./_response.ts";

const check = checksFor("follow the failure of the laminate");

/** How failed plies are carried on. */
export interface ProgressOptions extends FailureOptions {
  /**
   * What a failed ply loses. "by mode": a crack between the fibres takes E2, G12 and nu12, broken
   * fibres take all. "whole ply": every failure takes all. "by mode" if left out.
   */
  readonly loss?: "by mode" | "whole ply";
  /** Share of E2, G12 and nu12 left after a crack between the fibres; 1e-6 if left out [1]. */
  readonly matrixShareLeft?: number;
  /**
   * The laminate is taken for broken once the work of the load has grown by this factor over that
   * of the whole laminate; 10 if left out [1].
   */
  readonly breakingWork?: number;
}

/** One layer that fails. */
export interface LayerFailure {
  /** Place of the layer in the stack, mould side first, from 1 [1]. */
  readonly layer: number;
  /** How it fails. */
  readonly mode: FailureMode;
  /** What is lost with it. */
  readonly lost: "matrix" | "all";
}

/** Layers that fail together while the load grows. */
export interface FailureEvent {
  /** The load times this fails them, in the laminate as it then is [1]. */
  readonly ratio: number;
  /** The largest ratio so far: what the laminate bore when they failed [1]. */
  readonly carried: number;
  /** Whether they fail at once, under the load that the event before had reached. */
  readonly cascade: boolean;
  /** The layers. */
  readonly layers: readonly LayerFailure[];
  /** Work of the load over that of the whole laminate, after the event [1]. */
  readonly work: number;
}

/** The failure of a laminate, layer by layer. */
export interface ProgressiveFailure {
  /** What happens, in the order in which it happens. */
  readonly events: readonly FailureEvent[];
  /** Ratio of the first event; `null` where nothing fails [1]. */
  readonly firstRatio: number | null;
  /**
   * Largest ratio borne up to the last event; `null` where nothing fails. Where the end is
   * "nothing more fails" the laminate bears more than this [1].
   */
  readonly lastRatio: number | null;
  /** Why it ended: no layer is left, it gave way, or what is left bears any multiple. */
  readonly end: "no layer left" | "gave way" | "nothing more fails";
  /** What limits the answer. */
  readonly notes: readonly string[];
}

/**
 * Failure of a laminate layer by layer under a growing load, up to the last: each failed layer
 * loses its stiffness and the others take over. Stress left by cure, temperature and moisture
 * stays as it was in the whole laminate.
 *
 * Formula: repeat: R = smallest ratio of all layers that still bear; those fail and lose E2, G12,
 * nu12 (or E1 as well); lastRatio = max R
 *
 * Range: rough estimate: no delamination, no damage that grows with load inside a ply, no
 * neighbour holding a crack small; forces and moments only
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 4.5, and A. K. Kaw,
 * Mechanics of Composite Materials, 2nd ed. 2006, section 5.2, from memory
 *
 * @param stack Plies, mould side first.
 * @param load Forces and moments, which grow, and the climate, which stays [N/m], [N], [K].
 * @param options Criterion, its inputs, the knock-down and what a failed ply loses.
 * @returns Each event with its ratio [1], first and last.
 * @throws {InputError} If the stack, the load or the options cannot be used, the load imposes
 * strains, or no layer has strengths.
 *
 * @example The layers across crack first, those along break last
 * ```ts
 * import { progressiveFailure, stackOfCode } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass ply", E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.28, G13: 4e9, G23: 3e9,
 *   density: 1900, alpha1: 7e-6, alpha2: 25e-6,
 *   strengths: { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 },
 * };
 * const stack = stackOfCode("[0/90]s", { ply: { lamina, thickness: 0.25e-3 } });
 * const { events, lastRatio } = progressiveFailure(
 *   stack, { Nx: 1e3 }, { criterion: "maximum stress", loss: "whole ply" });
 * assertEquals(events.map(({ layers }) => layers.map(({ layer }) => layer)), [[2, 3], [1, 4]]);
 * assertAlmostEquals(lastRatio! * 1e3, 800e6 * 0.5e-3, 10);
 * ```
 */
export function progressiveFailure(
  stack: Stack,
  load: LaminateLoad,
  options: ProgressOptions,
): ProgressiveFailure {
  const rules = checkRules(stack, load, options);
  const surfaces = surfacesFor(check, stack, options);
  if (surfaces.every((surface) => surface === undefined)) {
    check.refuse("set of strengths", undefined, "must be given for at least one layer");
  }
  const residual = residualStates(stack, load);
  const wholeWork = workOf(stack, load);
  const layers = surfaces.map((surface): Layer => ({ surface, state: "whole" }));
  const events: FailureEvent[] = [];
  let worn = stack;
  let end: ProgressiveFailure["end"] = "no layer left";
  while (layers.some(stillBears)) {
    const failing = nextToFail(layers, residual, mechanicalStates(worn, load));
    if (failing === null) {
      end = "nothing more fails";
      break;
    }
    const failed = failing.layers.map(([index, mode]) => wear(layers, index, { mode, rules }));
    worn = stack.map((ply, k) => ({ ...ply, lamina: wornLamina(ply.lamina, layers[k]!, rules) }));
    const work = wholeWork === 0 ? 1 : check.result("work", workOf(worn, load) / wholeWork);
    const before = events.at(-1)?.carried ?? -1;
    events.push({
      ratio: check.result("strength ratio", failing.ratio),
      carried: Math.max(before, failing.ratio),
      cascade: failing.ratio <= before,
      layers: failed,
      work,
    });
    if (work > rules.breakingWork && layers.some(stillBears)) {
      end = "gave way";
      break;
    }
  }
  return {
    events,
    firstRatio: events[0]?.ratio ?? null,
    lastRatio: events.at(-1)?.carried ?? null,
    end,
    notes: [
      ...failureNotes(stack, options),
      "Dropping the stiffness of failed plies is a rough estimate: it knows no delamination, no " +
      "holes and no edges. Trust the first failure more than the last.",
    ],
  };
}

type Rules = Required<Pick<ProgressOptions, "loss" | "matrixShareLeft" | "breakingWork">>;

function checkRules(stack: Stack, load: LaminateLoad, options: ProgressOptions): Rules {
  checkStack(check, stack);
  laminateResponse(stack, load);
  for (const name of ["epsilonX", "epsilonY", "gammaXY", "kappaX", "kappaY", "kappaXY"] as const) {
    if (load[name] !== undefined) {
      check.refuse(name, load[name], "must be left out: give forces and moments");
    }
  }
  check.object("set of options", options);
  const { loss = "by mode", matrixShareLeft = LEFT, breakingWork = 10 } = options;
  check.oneOf("loss", loss, ["by mode", "whole ply"]);
  check.within("share of the matrix left", matrixShareLeft, { min: LEFT, max: 1 });
  check.within("breaking work", breakingWork, { min: 1, max: 1e6 });
  return { loss, matrixShareLeft, breakingWork };
}

/** Share of a lost stiffness that stays in the sums, so that they can be solved [1]. */
const LEFT = 1e-6;

interface Layer {
  readonly surface: LaminaSurface | undefined;
  state: "whole" | "matrix cracked" | "lost";
}

function stillBears({ surface, state }: Layer): boolean {
  return surface !== undefined && state !== "lost";
}

/** Twice the strain energy of the load in a stack, without the climate [N/m]. */
function workOf(stack: Stack, load: LaminateLoad): number {
  const { midPlaneStrain, curvature, forces } = responseOf(stack, load, {
    temperature: 0,
    moisture: 0,
  });
  const { epsilonX, epsilonY, gammaXY } = midPlaneStrain;
  const { kappaX, kappaY, kappaXY } = curvature;
  const strains = [epsilonX, epsilonY, gammaXY, kappaX, kappaY, kappaXY];
  return FORCES.reduce((sum, name, i) => sum + forces[name] * strains[i]!, 0);
}

/** The layers whose ratio is smallest, each with the mode of its worse face. */
function nextToFail(
  layers: readonly Layer[],
  residual: readonly FaceStates[],
  growing: readonly FaceStates[],
): { ratio: number; layers: [index: number, mode: FailureMode][] } | null {
  const found = layers.map((layer, index): Crossing | null => {
    if (!stillBears(layer)) return null;
    const { drawnIn, surface, fibres } = layer.surface!;
    const drawn = { drawnIn, surface: layer.state === "whole" ? surface : fibres };
    const faces = FACES.map((face) =>
      faceCrossing(drawn, residual[index]![face], growing[index]![face])
    );
    return faces.reduce((a, b) => a === null || (b !== null && b.ratio < a.ratio) ? b : a);
  });
  const ratios = found.flatMap((crossing) => crossing === null ? [] : [crossing.ratio]);
  if (ratios.length === 0) return null;
  const ratio = Math.min(...ratios);
  return {
    ratio,
    layers: found.flatMap((crossing, index) =>
      crossing !== null && crossing.ratio <= ratio * (1 + TIED) ? [[index, crossing.mode]] : []
    ),
  };
}

/** Marks a layer as failed and says what is lost with it. */
function wear(
  layers: readonly Layer[],
  index: number,
  { mode, rules }: { readonly mode: FailureMode; readonly rules: Rules },
): LayerFailure {
  const layer = layers[index]!;
  const all = rules.loss === "whole ply" || mode === "1t" || mode === "1c";
  layer.state = all ? "lost" : "matrix cracked";
  return { layer: index + 1, mode, lost: all ? "all" : "matrix" };
}

function wornLamina(lamina: Lamina, { state }: Layer, rules: Rules): Lamina {
  if (state === "whole") return lamina;
  const matrix = state === "lost" ? LEFT : rules.matrixShareLeft;
  return {
    ...lamina,
    E1: state === "lost" ? lamina.E1 * LEFT : lamina.E1,
    E2: lamina.E2 * matrix,
    G12: lamina.G12 * matrix,
    nu12: lamina.nu12 * matrix,
  };
}
