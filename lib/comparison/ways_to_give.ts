import { checksFor } from "../check/mod.ts";
import {
  describeFailureMode,
  type FailureOptions,
  firstPlyFailure,
  type LaminateLoad,
  utilisationByLayer,
} from "../laminate/mod.ts";
import type { Stack } from "../materials/mod.ts";
import type { LayupRecord } from "../records/mod.ts";
import { failureModes, type SandwichDesign, type SandwichFailureName } from "../sandwich/mod.ts";
import { layupDesign } from "./layup_design.ts";
import type { StripDemand } from "./strip_load.ts";

const check = checksFor("find what breaks first");

/** A loaded lay-up, and by what it is judged. */
export interface LoadedLayup {
  /** The schedule, materials filled in. */
  readonly layup: LayupRecord;
  /** Its stack, such as that of `layupStack`. */
  readonly stack: Stack;
  /** What acts on it. */
  readonly demand: StripDemand;
  /** Temperature of use less that at which the resin set hard; 0 if left out [K]. */
  readonly temperatureChange?: number;
  /** Criterion for the plies, and the knock-down of every strength. */
  readonly options: FailureOptions;
}

/** One way in which it may give. */
export interface WayToGive {
  /** Layer that gives, mould side first, from 1; null for the sandwich as a whole [1]. */
  readonly layer: number | null;
  /** What gives, in words. */
  readonly what: string;
  /** How, in words; of the sandwich as a whole where. */
  readonly how: string;
  /**
   * Load over the load that brings it about, the stress from cooling and the growth of moments
   * under a push held; 0 where no multiple does, null where the cooling alone does [1].
   */
  readonly utilisation: number | null;
  /** Where the formula comes from. */
  readonly source: string;
  /** How far real parts scatter about it. */
  readonly scatter: string;
}

/** All ways to give of a loaded lay-up. */
export interface WaysToGive {
  /** The nearest first. */
  readonly ways: readonly WayToGive[];
  /** What limits the answer. */
  readonly notes: readonly string[];
}

/** What the criterion of the plies judges already. */
const BY_PLY: readonly SandwichFailureName[] = ["face tension", "face compression"];

/**
 * What breaks first in a strip: each ply by a failure criterion, under a push the whole strip by
 * buckling, and in a sandwich the core and the buckling of the faces too. In a sandwich a ply is
 * often not the first.
 *
 * Formula: plies 1/R of `firstPlyFailure`, the stress from cooling held; sandwich
 * 1/(reserve × knock-down) of `failureModes`, each way by its worst face and direction, a pull
 * along the faces not counted in their favour; buckling N/(critical push × knock-down)
 *
 * Range: as the functions named. Below 1 it holds as counted; under a push, whose growth of
 * moments is that of this load, a use of 1/2 is not half of what it bears. Bond, edges, inserts,
 * fatigue, impact and water are not counted.
 *
 * Source: as the functions named.
 *
 * @param loaded Lay-up, stack, what acts on it, criterion and knock-down [SI].
 * @returns Ways to give, the nearest first, with notes.
 * @throws {InputError} If the stack has not the schedule's layers, or a load or the options cannot
 * be meant.
 *
 * @example
 * ```ts
 * import { layupStack, stripDemand, waysToGive } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const layup = (await readPart("data/sole-panels")).layups.get("sole")!;
 * const stack = layupStack(layup);
 * const demand = stripDemand({ span: 0.4, width: 0.3, force: 900, pressedOn: "bag" }, stack);
 * const options = { criterion: "maximum stress", knockDown: 0.5 } as const;
 * const { ways } = waysToGive({ layup, stack, demand, options });
 * assertEquals([ways[0]!.layer, ways[0]!.how], [5, "compression along the fibres"]);
 * ```
 */
export function waysToGive(loaded: LoadedLayup): WaysToGive {
  check.object("loaded lay-up", loaded);
  const { layup, stack, demand, temperatureChange = 0, options } = loaded;
  check.shape("demand", demand, { notes: ["text"] });
  const { Nx, Mx, My } = demand;
  const design = layupDesign(layup, stack);
  const load: LaminateLoad = { Nx, Mx, My, temperatureChange };
  const { faces, notes } = firstPlyFailure(stack, load, options);
  const plies = utilisationByLayer(faces).map(({ layer, utilisation, mode }): WayToGive => ({
    layer,
    what: `layer ${layer}${sideOf(layer, stack.length)}`,
    how: mode === null ? "no multiple of the load breaks it" : describeFailureMode(mode),
    utilisation,
    source: options.criterion,
    scatter: "coupons some 5 to 10 %, hand-laid parts more; the strengths are estimates",
  }));
  const cores = layup.layers.filter(({ kind }) => kind === "core").length;
  return Object.freeze({
    ways: Object.freeze(
      [
        ...plies,
        ...ofWholeStrip(demand, options),
        ...(design === null ? [] : ofSandwich(design, demand, options)),
      ]
        .toSorted((a, b) => rank(b) - rank(a)),
    ),
    notes: [
      ...demand.notes,
      ...notes,
      ...(design === null && cores > 0
        ? ["The core is not judged: that needs one core with plies on both sides."]
        : []),
      ...(design === null ? [] : [
        "The core is no ply: it is judged by shear, crushing and the faces that wrinkle on it.",
      ]),
    ],
  });
}

/** A ply that cooling alone breaks goes before all. */
function rank({ utilisation }: WayToGive): number {
  return utilisation ?? Infinity;
}

function sideOf(layer: number, count: number): string {
  if (count === 1) return "";
  return layer === 1 ? " (mould side)" : layer === count ? " (bag side)" : "";
}

/** Under a push the strip may buckle between its bearers, solid or sandwich. */
function ofWholeStrip(
  { Nx, criticalPush }: StripDemand,
  { knockDown = 1 }: FailureOptions,
): readonly WayToGive[] {
  if (!(Nx < 0)) return [];
  check.positive("critical push", criticalPush, "N/m");
  return [{
    layer: null,
    what: "buckling",
    how: "whole strip between its bearers",
    utilisation: check.result("utilisation", -Nx / (criticalPush * knockDown)),
    source: "Euler's load lowered by shear: Timoshenko and Gere (1961), from memory",
    scatter: "some 10 %, as its stiffness; a strip that is bowed bends from the start",
  }];
}

function ofSandwich(
  design: SandwichDesign,
  { pressedOn, Nx, Mx, My, Qx, Qy, patch }: StripDemand,
  { knockDown = 1 }: FailureOptions,
): readonly WayToGive[] {
  // The formulas press on the top face: where that is the mould side the sandwich is turned over.
  const onBag = pressedOn === "bag";
  const turned = onBag
    ? design
    : { ...design, topFace: design.bottomFace, bottomFace: design.topFace };
  const found = [
    ...failureModes(turned, {
      Mx: onBag ? 0 - Mx : Mx,
      My: onBag ? 0 - My : My,
      Qx,
      compressionX: Math.max(0, -Nx),
      ...(patch === undefined ? {} : { patch }),
    }),
    // By itself: the largest shear forces along and across lie at different rims of the pad.
    ...failureModes(turned, { Qy }),
  ].toSorted((a, b) => a.reserve - b.reserve);
  const worst = found.filter(({ mode }, i) => found.findIndex((by) => by.mode === mode) === i);
  const side = (where: string): string =>
    where.replace("top face", onBag ? "bag-side face" : "mould-side face")
      .replace("bottom face", onBag ? "mould-side face" : "bag-side face");
  return worst.filter(({ mode }) => !BY_PLY.includes(mode)).map(
    ({ mode, where, reserve, source, scatter }) => ({
      layer: null,
      what: mode,
      how: side(where),
      utilisation: check.result("utilisation", 1 / (reserve * knockDown)),
      source,
      scatter,
    }),
  );
}
