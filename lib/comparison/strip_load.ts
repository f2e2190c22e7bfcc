import { checksFor } from "../check/mod.ts";
import type { Stack } from "../materials/mod.ts";
import { levyPanel, type PanelStiffness, panelStiffness } from "../sandwich/mod.ts";
import { growthUnderPush, stripRigidity } from "./_push_growth.ts";

const check = checksFor("load the strip");

/** What presses on a strip between two bearers, and what pulls along it. */
export interface StripLoading {
  /** Span between the bearers, along x [m]. */
  readonly span: number;
  /** Width of the strip; its long sides are free [m]. */
  readonly width: number;
  /** Which side is pressed on. */
  readonly pressedOn: "bag" | "mould";
  /** Force in the middle of the strip, such as a heel; 0 if left out [N]. */
  readonly force?: number;
  /**
   * Side of the square on which the force presses; what reaches beyond the strip is cut off. The
   * force counts as a line across the whole width if left out [m].
   */
  readonly pad?: number;
  /** Pressure all over; 0 if left out [Pa]. */
  readonly pressure?: number;
  /** Moment for each metre of width beside that of the loads, bending the same way [N]. */
  readonly moment?: number;
  /** Pull along x for each metre of width; below 0 it pushes [N/m]. */
  readonly pull?: number;
}

/** What acts on the plies and the core of the strip where it is worst, for each metre of width. */
export interface StripDemand {
  /** Which side is pressed on. */
  readonly pressedOn: "bag" | "mould";
  /** Force along x [N/m]. */
  readonly Nx: number;
  /** Moment along, by the sign of laminates: positive pulls on the bag side [N]. */
  readonly Mx: number;
  /** Moment across under a pad, of the same sign; 0 without one [N]. */
  readonly My: number;
  /** Largest shear force through the thickness along x, at the bearers or at the pad [N/m]. */
  readonly Qx: number;
  /** Largest shear force through the thickness along y, at the pad; 0 without one [N/m]. */
  readonly Qy: number;
  /** Push along x at which the strip buckles between its bearers [N/m]. */
  readonly criticalPush: number;
  /** The force on its pad, if there is one [N], [m]. */
  readonly patch?: {
    /** Force [N]. */
    readonly force: number;
    /** Side along x [m]. */
    readonly lengthX: number;
    /** Side along y [m]. */
    readonly lengthY: number;
  };
  /** What limits the figures; empty if nothing does. */
  readonly notes: readonly string[];
}

/** Moments and shear forces of the force alone, for each metre of width, sagging positive. */
interface UnderForce {
  readonly Mx: number;
  readonly My: number;
  readonly Qx: number;
  readonly Qy: number;
}

/**
 * Forces and moments of a strip under a heel, a pressure and a pull or push. Under a pad the strip
 * bends more than on average over its width, and across too: that comes from the plate.
 *
 * Formula: M = ∓(Mh f + p L²/8 g + m h), minus where the bag side is pressed on; Mh of `levyPanel`
 * with long sides free, F L/(4 b) for a line across the width; Q likewise. A push N grows them:
 * f = tan u/(u (1 − N/S)), g = 2 (1/cos u − 1)/(u² (1 − N/S)), h = 1/cos u,
 * u = (L/2) √(N/(D (1 − N/S))); it buckles at N = 1/(L²/(π² D) + 1/S)
 *
 * Range: bearers that let the strip turn; small deflection, so that a pull does not straighten it
 * (safe side); a straight strip pushed along its middle. All that a pad bends grows as f: more
 * than it does. The worst moment and the worst shear force need not lie at one place.
 *
 * Source: `levyPanel`; Timoshenko and Gere, Theory of Elastic Stability (1961), chapters 1 and 2
 * (push, with shear), from memory.
 *
 * @param loading The strip and what acts on it [SI].
 * @param stack Its plies and core, mould side first.
 * @returns Forces and moments for each metre of width [N/m], [N], with notes.
 * @throws {InputError} If span or width is not above 0, a side not known, a load not a number, the
 * stack cannot be meant, or the strip buckles under the push.
 *
 * @example A heel: 300 N on average over the width, more under the pad
 * ```ts
 * import { layupStack, stripDemand } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { layups } = await readPart("data/sole-panels");
 * const stack = layupStack(layups.get("sole")!);
 * const heel = { span: 0.4, width: 0.3, force: 900, pressedOn: "bag" } as const;
 * assertAlmostEquals(stripDemand(heel, stack).Mx, -300, 1e-9);
 * assertAlmostEquals(stripDemand({ ...heel, pad: 0.06 }, stack).Mx, -357, 1);
 * ```
 */
export function stripDemand(loading: StripLoading, stack: Stack): StripDemand {
  const { span, pressure, moment, pull, pressedOn, force, pad } = checkedLoading(loading);
  const stiffness = panelStiffness(stack);
  const rigidity = stripRigidity(stiffness, span);
  const { criticalPush } = rigidity;
  if (!(-pull < criticalPush)) {
    check.refuse("pull", pull, `in N/m, must be above ${-criticalPush}: there the strip buckles`);
  }
  const growth = growthUnderPush(-pull, rigidity, span);
  const heel = pad === undefined
    ? underLine(span, loading.width, force)
    : underPad(loading, pad, stiffness);
  const { moment: more, shear: moreShear } = growth.force;
  const sagging = heel.Mx * more + pressure * span * span / 8 * growth.pressure.moment +
    moment * growth.moment.moment;
  const shear = heel.Qx * moreShear + Math.abs(pressure) * span / 2 * growth.pressure.shear +
    Math.abs(moment) * growth.moment.shearPerMoment;
  const sign = pressedOn === "bag" ? -1 : 1;
  return Object.freeze({
    pressedOn,
    Nx: pull,
    Mx: check.result("moment", 0 + sign * sagging, "N"),
    My: check.result("moment across", 0 + sign * heel.My * more, "N"),
    Qx: check.result("shear force", shear, "N/m"),
    Qy: check.result("shear force across", heel.Qy * moreShear, "N/m"),
    criticalPush: check.result("critical push", criticalPush, "N/m"),
    ...(pad === undefined ? {} : { patch: { force, ...pad } }),
    notes: Object.freeze([
      ...(pad !== undefined && !isOrthotropic(stiffness) ? [ASKEW] : []),
      ...(pull < 0 ? [pushNote(-pull / criticalPush)] : []),
    ]),
  });
}

const ASKEW =
  "Some plies lie askew: under the pad such a strip twists as it bends, which is left " +
  "out: some 5 % of the moment along, and the twisting moment.";

function pushNote(share: number): string {
  return `The push is ${
    Math.round(100 * share)
  } % of that which buckles the strip, and makes the ` +
    "moments grow: twice the load uses more than twice. A strip that is bowed before it is " +
    "loaded, or pushed off its middle, bears less.";
}

interface Pad {
  readonly lengthX: number;
  readonly lengthY: number;
}

/** A loading checked, what was left out filled in. */
type CheckedLoading = Required<Omit<StripLoading, "pad">> & { readonly pad: Pad | undefined };

function checkedLoading(loading: StripLoading): CheckedLoading {
  check.object("loading", loading);
  const { force = 0, pressure = 0, moment = 0, pull = 0, pad: side, pressedOn } = loading;
  const span = check.positive("span", loading.span, "m");
  const width = check.positive("width", loading.width, "m");
  check.oneOf("side pressed on", pressedOn, ["bag", "mould"]);
  check.nonNegative("force", force, "N");
  check.finite("pressure", pressure, "Pa");
  check.finite("moment", moment, "N");
  check.finite("pull", pull, "N/m");
  if (side !== undefined) check.positive("pad", side, "m");
  const pad: Pad | undefined = side === undefined || force === 0
    ? undefined
    : { lengthX: Math.min(side, span), lengthY: Math.min(side, width) };
  return { span, width, pressure, moment, pull, pressedOn, force, pad };
}

function underLine(span: number, width: number, force: number): UnderForce {
  return { Mx: force * span / (4 * width), My: 0, Qx: force / (2 * width), Qy: 0 };
}

function isOrthotropic({ D16, D26, D11, D22, shear }: PanelStiffness): boolean {
  const small = 1e-9 * Math.sqrt(D11 * D22);
  return Math.abs(D16) <= small && Math.abs(D26) <= small &&
    (shear === "rigid" || Math.abs(shear.S45) <= 1e-9 * Math.sqrt(shear.S44 * shear.S55));
}

/** The plate under a pad in its middle: moments in the middle line, forces at pad and bearers. */
function underPad(
  { span, width, force = 0 }: StripLoading,
  { lengthX, lengthY }: Pad,
  { shear, ...stiffness }: PanelStiffness,
): UnderForce {
  const [x, y] = [span / 2, width / 2];
  const { at } = levyPanel({
    length: span,
    width,
    stiffness: {
      ...stiffness,
      D16: 0,
      D26: 0,
      shear: shear === "rigid" ? shear : { ...shear, S45: 0 },
    },
    edges: { x0: "simple", x1: "simple", y0: "free", y1: "free" },
    loads: [{ kind: "patch", force, x, y, lengthX, lengthY }],
  });
  const middle = at(x, y);
  const edge = at(x, 0);
  const across = [y, width / 4, 0];
  const along = [...across.map((place) => at(0, place)), at(x - lengthX / 2, y)];
  return {
    Mx: Math.max(middle.Mx, edge.Mx),
    My: middle.My,
    Qx: Math.max(...along.map(({ Qx }) => Math.abs(Qx)), force / (2 * width)),
    Qy: lengthY < width ? Math.abs(at(x, y - lengthY / 2).Qy) : 0,
  };
}
