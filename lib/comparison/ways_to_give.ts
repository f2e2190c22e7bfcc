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
   * Load over the load that brings it about, the stress from cooling held; 0 where no multiple
   * does, null where the cooling alone does [1].
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
 * What breaks first in a strip: each ply by a failure criterion, and in a sandwich the core and
 * the buckling of the faces too. In a sandwich a ply is often not the first.
 *
 * Formula: plies 1/R of `firstPlyFailure`, the stress from cooling held; sandwich
 * 1/(reserve × knock-down) of `failureModes`, a pull along the faces not counted in their favour
 *
 * Range: as the functions named. Bond, edges, inserts, fatigue, impact and water are not counted.
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
 * const demand = stripDemand({ span: 0.4, width: 0.3, force: 900, pressedOn: "bag" });
 * const options = { criterion: "maximum stress", knockDown: 0.5 } as const;
 * const { ways } = waysToGive({ layup, stack: layupStack(layup), demand, options });
 * assertEquals([ways[0]!.layer, ways[0]!.how], [5, "compression along the fibres"]);
 * ```
 */
export function waysToGive(loaded: LoadedLayup): WaysToGive {
  check.object("loaded lay-up", loaded);
  const { layup, stack, demand, temperatureChange = 0, options } = loaded;
  check.object("demand", demand);
  const { Nx, Mx } = demand;
  const design = layupDesign(layup, stack);
  const load: LaminateLoad = { Nx, Mx, temperatureChange };
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
      [...plies, ...(design === null ? [] : ofSandwich(design, demand, options))]
        .toSorted((a, b) => rank(b) - rank(a)),
    ),
    notes: [
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

function ofSandwich(
  design: SandwichDesign,
  { pressedOn, Nx, Mx, Qx, patch }: StripDemand,
  { knockDown = 1 }: FailureOptions,
): readonly WayToGive[] {
  // The formulas press on the top face: where that is the mould side the sandwich is turned over.
  const onBag = pressedOn === "bag";
  const turned = onBag
    ? design
    : { ...design, topFace: design.bottomFace, bottomFace: design.topFace };
  const found = failureModes(turned, {
    Mx: onBag ? 0 - Mx : Mx,
    Qx,
    compressionX: Math.max(0, -Nx),
    ...(patch === undefined ? {} : { patch }),
  });
  const side = (where: string): string =>
    where.replace("top face", onBag ? "bag-side face" : "mould-side face")
      .replace("bottom face", onBag ? "mould-side face" : "bag-side face");
  return found.filter(({ mode }) => !BY_PLY.includes(mode)).map(
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
