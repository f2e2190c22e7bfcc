import { checksFor } from "../check/mod.ts";
import type { Verdict } from "./design_load.ts";
import type { StayedPanel } from "./preload.ts";

const check = checksFor("compute the impact");

/** A weight that drops on a springy structure. */
export interface DroppedWeight {
  /** The weight [N]. */
  readonly weight: number;
  /** Height it drops before it touches; 0 for a weight let go in touch [m]. */
  readonly dropHeight: number;
  /** Stiffness of the structure there [N/m]. */
  readonly stiffness: number;
}

/** What a dropped weight does. */
export interface Impact {
  /** Peak force over the weight [1]. */
  readonly factor: number;
  /** Peak force [N]. */
  readonly peakForce: number;
  /** Deepest deflection [m]. */
  readonly peakDeflection: number;
  /** How far it swings back beyond its rest position before the weight came [m]. */
  readonly rebound: number;
}

/**
 * Peak force of a dropped weight on a spring, nothing lost.
 *
 * Formula: factor 1 + √(1 + 2hk/W); rebound (√(1 + 2hk/W) − 1) W/k, the weight staying on
 *
 * Range: elastic, the structure's own mass left out; dropped from no height the factor is 2.
 *
 * Source: energy balance; any text on strength of materials.
 *
 * @param dropped Weight [N], drop [m] and stiffness [N/m].
 * @returns Factor [1], force [N], deflection and rebound [m].
 * @throws {InputError} If weight or stiffness is not above 0, or the drop below 0.
 *
 * @example
 * ```ts
 * import { dropImpact } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { factor } = dropImpact({ weight: 800, dropHeight: 0, stiffness: 1e5 });
 * assertAlmostEquals(factor, 2, 1e-12);
 * ```
 */
export function dropImpact(dropped: DroppedWeight): Impact {
  const { weight, dropHeight, stiffness } = check.object("dropped weight", dropped);
  check.positive("weight", weight, "N");
  check.nonNegative("drop height", dropHeight, "m");
  check.positive("stiffness", stiffness, "N/m");
  const drop = 2 * dropHeight * stiffness / weight;
  const root = Math.sqrt(1 + drop);
  return {
    factor: 1 + root,
    peakForce: check.result("peak force", weight * (1 + root), "N"),
    peakDeflection: check.result("peak deflection", weight / stiffness * (1 + root), "m"),
    // √(1 + y) − 1 = y/(1 + √(1 + y)) keeps the digits of a small drop.
    rebound: check.result("rebound", weight / stiffness * (drop / (1 + root)), "m"),
  };
}

/** A weight that drops on a stayed panel. */
export interface PanelDrop {
  /** The weight [N]. */
  readonly weight: number;
  /** Height it drops before it touches [m]. */
  readonly dropHeight: number;
  /** Whether the weight's side of the panel tightens the stay or slackens it. */
  readonly direction: "tightens" | "slackens";
}

/** Whether a stay stays taut under an impact. */
export interface SlackCheck {
  /** The impact, with panel and stay as one spring. */
  readonly impact: Impact;
  /** Move of the stay's foot towards slack [m]. */
  readonly slackeningMove: number;
  /** Preload that would just keep the stay taut [N]. */
  readonly preloadNeeded: number;
  /** Holds: stays taut. Fails: goes slack, and snatches when it comes taut again. */
  readonly verdict: Verdict;
  /** What to know about it. */
  readonly notes: readonly string[];
}

/**
 * Whether a stay goes slack when a weight drops on its panel.
 *
 * Formula: move towards slack is the peak deflection (or the rebound, where the weight tightens the
 * stay); slack where ks × move > T0
 *
 * Range: panel and stay as one spring until slack, nothing lost.
 *
 * Source: `dropImpact` with springs in parallel.
 *
 * @param panel Panel, stay and preload.
 * @param drop The weight and how it falls.
 * @returns Move [m], preload needed [N] and verdict.
 * @throws {InputError} If an input is outside its range.
 *
 * @example
 * ```ts
 * import { slackOnImpact } from "@laminate/notebooks/joints";
 * import { assertEquals } from "@std/assert";
 *
 * const panel = { panelStiffness: 1e5, stayStiffness: 5e4, preload: 100 };
 * const drop = { weight: 800, dropHeight: 0.01, direction: "tightens" } as const;
 * assertEquals(slackOnImpact(panel, drop).verdict, "fails");
 * ```
 */
export function slackOnImpact(panel: StayedPanel, drop: PanelDrop): SlackCheck {
  const { panelStiffness, stayStiffness, preload } = check.object("panel", panel);
  check.positive("stiffness of the panel", panelStiffness, "N/m");
  check.positive("stiffness of the stay", stayStiffness, "N/m");
  check.nonNegative("preload", preload, "N");
  const { weight, dropHeight, direction } = check.object("drop", drop);
  check.oneOf("direction", direction, ["tightens", "slackens"]);
  const impact = dropImpact({ weight, dropHeight, stiffness: panelStiffness + stayStiffness });
  const slackeningMove = direction === "slackens" ? impact.peakDeflection : impact.rebound;
  const preloadNeeded = check.result("preload", stayStiffness * slackeningMove, "N");
  const taut = preload >= preloadNeeded;
  return {
    impact,
    slackeningMove,
    preloadNeeded,
    verdict: taut ? "holds" : "fails",
    notes: taut
      ? []
      : ["A slack stay snatches when it comes taut: its fittings then see more than this."],
  };
}
