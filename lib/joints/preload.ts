import { checksFor } from "../check/mod.ts";

const check = checksFor("compute the preloaded stays");

/** Two stays that pull against each other and carry tension only. */
export interface OpposedStays {
  /** Stiffness of stay 1, which the load tightens [N/m]. */
  readonly stiffness1: number;
  /** Stiffness of stay 2, which the load slackens [N/m]. */
  readonly stiffness2: number;
  /** Tension in both before the load [N]. */
  readonly preload: number;
}

/** State of two opposed stays, or of a stay and a panel, under a load. */
export interface StayedState {
  /** Share of the load that stay 1 (or the stay) takes while all is taut [1]. */
  readonly share: number;
  /** Load at which a stay goes slack [N]. */
  readonly slackLoad: number;
  /** Whether it is slack. */
  readonly slack: boolean;
  /** Move of the joint in the direction of the load [m]. */
  readonly displacement: number;
}

/** State of two opposed stays. */
export interface OpposedState extends StayedState {
  /** Tension in stay 1 [N]. */
  readonly tension1: number;
  /** Tension in stay 2 [N]. */
  readonly tension2: number;
}

/**
 * Tensions of two opposed stays under a load towards tightening stay 1.
 *
 * Formula: taut: T1 = T0 + F k1/(k1 + k2), T2 = T0 − F k2/(k1 + k2), x = F/(k1 + k2); slack from
 * Fs = T0 (k1 + k2)/k2 on: T1 = F, T2 = 0, x = T0/k2 + (F − Fs)/k1
 *
 * Range: load 0 or above; a load the other way is the same with the stays exchanged.
 *
 * Source: statics.
 *
 * @param stays Stiffnesses [N/m] and preload [N].
 * @param load Load towards tightening stay 1 [N].
 * @returns Tensions [N], move [m], share [1] and when stay 2 goes slack [N].
 * @throws {InputError} If a stiffness is not above 0, or preload or load below 0.
 *
 * @example
 * ```ts
 * import { opposedStays } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const state = opposedStays({ stiffness1: 3e5, stiffness2: 1e5, preload: 100 }, 200);
 * assertAlmostEquals(state.tension1, 250, 1e-9);
 * assertAlmostEquals(state.tension2, 50, 1e-9);
 * ```
 */
export function opposedStays(stays: OpposedStays, load: number): OpposedState {
  const { stiffness1, stiffness2, preload } = check.object("stays", stays);
  check.positive("stiffness of stay 1", stiffness1, "N/m");
  check.positive("stiffness of stay 2", stiffness2, "N/m");
  check.nonNegative("preload", preload, "N");
  check.nonNegative("load", load, "N");
  const both = stiffness1 + stiffness2;
  const share = stiffness1 / both;
  const slackLoad = check.result("slack load", preload * (both / stiffness2), "N");
  const slack = load >= slackLoad;
  return {
    share,
    slackLoad,
    slack,
    displacement: check.result(
      "displacement",
      slack ? preload / stiffness2 + (load - slackLoad) / stiffness1 : load / both,
      "m",
    ),
    tension1: slack ? load : preload + load * share,
    tension2: slack ? 0 : preload - load * (stiffness2 / both),
  };
}

/** A panel held by a stay, both working against the same move. */
export interface StayedPanel {
  /** Stiffness of the panel at the stay's foot: load over deflection [N/m]. */
  readonly panelStiffness: number;
  /** Stiffness of the stay in the direction of the deflection, `vertical` of a stay [N/m]. */
  readonly stayStiffness: number;
  /** Pull of the stay in that direction before the load [N]. */
  readonly preload: number;
}

/** State of a panel held by a stay. */
export interface StayedPanelState extends StayedState {
  /** Pull of the stay in the direction of the deflection [N]. */
  readonly stayForce: number;
  /** Load that the panel takes beyond what the preload put on it [N]. */
  readonly panelForce: number;
}

/**
 * How a panel and its stay share a load, and when the stay goes slack.
 *
 * Formula: taut: x = F/(kp + ks), stay T0 + ks x; slack below Fs = −T0 (kp + ks)/ks: stay 0,
 * x = (F + T0)/kp
 *
 * Range: load positive where it tightens the stay; the panel as it stands under the preload is the
 * zero of the move.
 *
 * Source: statics; springs in parallel.
 *
 * @param panel Stiffnesses [N/m] and preload [N].
 * @param load Load, positive where it tightens the stay [N].
 * @returns Share [1], forces [N], move [m], and the load at which the stay goes slack [N].
 * @throws {InputError} If a stiffness is not above 0, the preload below 0 or the load no number.
 *
 * @example
 * ```ts
 * import { stayedPanel } from "@laminate/notebooks/joints";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const panel = { panelStiffness: 1e5, stayStiffness: 5e4, preload: 100 };
 * assertAlmostEquals(stayedPanel(panel, 600).stayForce, 300, 1e-9);
 * assertEquals(stayedPanel(panel, -400).slack, true);
 * ```
 */
export function stayedPanel(panel: StayedPanel, load: number): StayedPanelState {
  const { panelStiffness, stayStiffness, preload } = check.object("panel", panel);
  check.positive("stiffness of the panel", panelStiffness, "N/m");
  check.positive("stiffness of the stay", stayStiffness, "N/m");
  check.nonNegative("preload", preload, "N");
  check.finite("load", load, "N");
  const both = panelStiffness + stayStiffness;
  const share = stayStiffness / both;
  const slackLoad = check.result("slack load", -preload * (both / stayStiffness), "N");
  const slack = load <= slackLoad;
  const stayForce = slack ? 0 : preload + load * share;
  return {
    share,
    slackLoad,
    slack,
    displacement: check.result(
      "displacement",
      slack ? (load + preload) / panelStiffness : load / both,
      "m",
    ),
    stayForce,
    panelForce: load - (stayForce - preload),
  };
}
