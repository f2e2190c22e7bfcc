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
} from "./_failure_ply_states.ts";
import type { FailureMode } from "./failure_verdict.ts";
import type { ForcesAndMoments } from "./plane_state.ts";
import { type LaminateLoad, laminateResponse } from "./response.ts";
import { FORCES } from "./_response.ts";

const check = checksFor("draw the failure envelope");

/** Which two loads an envelope is drawn for. */
export interface EnvelopeAxes {
  /** Force or moment along the first axis. */
  readonly first: keyof ForcesAndMoments;
  /** Force or moment along the second axis. */
  readonly second: keyof ForcesAndMoments;
  /** Number of points round the envelope, 4 or more; 72 if left out [1]. */
  readonly points?: number;
  /** Other forces [N/m] and moments [N] that act all the while; none if left out. */
  readonly held?: Partial<ForcesAndMoments>;
  /** Temperature less that at which the laminate was free of stress; 0 if left out [K]. */
  readonly temperatureChange?: number;
  /** Moisture content less that at which it was free of stress; 0 if left out [1]. */
  readonly moistureChange?: number;
}

/** One point of a failure envelope. */
export interface EnvelopePoint {
  /** Load along the first axis at first ply failure [N/m], or [N] for a moment. */
  readonly first: number;
  /** Load along the second axis at first ply failure [N/m], or [N] for a moment. */
  readonly second: number;
  /** Layer that fails there, mould side first, from 1 [1]. */
  readonly layer: number;
  /** Face of the layer that fails. */
  readonly face: PlyFace;
  /** How it fails. */
  readonly mode: FailureMode;
}

/** The loads at which a laminate meets its first ply failure. */
export interface FailureEnvelope {
  /** Points in order round the envelope, the first along the first axis. */
  readonly points: readonly EnvelopePoint[];
  /** What limits the answer. */
  readonly notes: readonly string[];
}

/**
 * First ply failure under every mix of two loads, while the stress left by cure, temperature and
 * moisture stays, and other loads that are held.
 *
 * The directions are spread evenly once each load is divided by what it reaches alone, so that a
 * force and a moment can share a picture.
 *
 * Formula: for each direction, as `firstPlyFailure`
 *
 * Range: linear; all points 0 where climate and held loads alone fail a ply
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 4.5, from memory
 *
 * @param stack Plies, mould side first.
 * @param axes The two loads, the number of points, what is held and the climate.
 * @param options Criterion, its inputs and the knock-down.
 * @returns Points round the envelope [N/m] or [N], with the layer and mode at each.
 * @throws {InputError} If the stack, the axes or the options cannot be used, or no layer has
 * strengths.
 *
 * @example
 * ```ts
 * import { failureEnvelope } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass ply", E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.28, G13: 4e9, G23: 3e9,
 *   density: 1900, alpha1: 7e-6, alpha2: 25e-6,
 *   strengths: { Xt: 800e6, Xc: 600e6, Yt: 40e6, Yc: 120e6, S: 60e6 },
 * };
 * const { points } = failureEnvelope(
 *   [{ lamina, thickness: 1e-3, angleDeg: 0 }],
 *   { first: "Nx", second: "Ny", points: 4 },
 *   { criterion: "Tsai-Wu" },
 * );
 * assertAlmostEquals(points[0]!.first, 800e3, 1e-6);
 * assertAlmostEquals(points[3]!.second, -120e3, 1e-6);
 * ```
 */
export function failureEnvelope(
  stack: Stack,
  axes: EnvelopeAxes,
  options: FailureOptions,
): FailureEnvelope {
  checkAxes(stack, axes);
  const surfaces = surfacesFor(check, stack, options);
  if (surfaces.every((surface) => surface === undefined)) {
    check.refuse("set of strengths", undefined, "must be given for at least one layer");
  }
  const { first, second, points: count = 72 } = axes;
  const fixed = combined([
    [1, residualStates(stack, climateOf(axes))],
    [1, mechanicalStates(stack, axes.held ?? {})],
  ]);
  const alone = [first, second].map((name) => mechanicalStates(stack, { [name]: 1 }));
  const worst = (states: readonly FaceStates[]): Found | null => {
    let least: Found | null = null;
    states.forEach((ply, index) => {
      const surface = surfaces[index];
      if (surface === undefined) return;
      for (const face of FACES) {
        const found = faceCrossing(surface, fixed[index]![face], ply[face]);
        if (found !== null && (least === null || found.ratio < least.ratio)) {
          least = { ratio: found.ratio, layer: index + 1, face, mode: found.mode };
        }
      }
    });
    return least;
  };
  // What each load reaches alone, to and fro, sets the scale of its axis.
  const scales = alone.map((states) => {
    const reach = [1, -1].map((sign) => worst(combined([[sign, states]]))?.ratio ?? 0);
    return (reach[0]! + reach[1]!) / 2;
  });
  const points = Array.from({ length: count }, (_, i): EnvelopePoint => {
    const [across, up] = direction(i / count).map((share, axis) => share * (scales[axis]! || 1));
    const { ratio, ...where } = worst(combined([[across!, alone[0]!], [up!, alone[1]!]])) ??
      check.refuse("load", `${first} and ${second}`, "must reach a layer with strengths");
    return {
      first: check.result("load", ratio * across!),
      second: check.result("load", ratio * up!),
      ...where,
    };
  });
  return { points, notes: failureNotes(stack, options) };
}

interface Found {
  readonly ratio: number;
  readonly layer: number;
  readonly face: PlyFace;
  readonly mode: FailureMode;
}

/** A unit direction for a share of the turn, exact along the axes. */
function direction(share: number): [number, number] {
  const quarter = 4 * share;
  if (Number.isInteger(quarter)) {
    return ([[1, 0], [0, 1], [-1, 0], [0, -1]] as const)[quarter] as [number, number];
  }
  return [Math.cos(2 * Math.PI * share), Math.sin(2 * Math.PI * share)];
}

function climateOf({ temperatureChange = 0, moistureChange = 0 }: EnvelopeAxes): LaminateLoad {
  return { temperatureChange, moistureChange };
}

function checkAxes(stack: Stack, axes: EnvelopeAxes): void {
  checkStack(check, stack);
  check.object("set of axes", axes);
  check.oneOf("first load", axes.first, FORCES);
  check.oneOf("second load", axes.second, FORCES);
  if (axes.first === axes.second) {
    check.refuse("second load", axes.second, "must be another than the first");
  }
  for (const [name, value] of Object.entries(check.object("held loads", axes.held ?? {}))) {
    const others = FORCES.filter((force) => force !== axes.first && force !== axes.second);
    check.oneOf("name of a held load", name as keyof ForcesAndMoments, others);
    check.finite(`held ${name}`, value);
  }
  const count = check.count("number of points", axes.points ?? 72, 4);
  check.within("number of points", count, { min: 4, max: MOST_POINTS });
  laminateResponse(stack, climateOf(axes));
}

/** Beyond this a picture gains nothing. */
const MOST_POINTS = 3600;
