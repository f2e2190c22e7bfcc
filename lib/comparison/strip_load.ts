import { checksFor } from "../check/mod.ts";
import { type BeamLoadCase, beamLoadCases } from "../sandwich/mod.ts";

const check = checksFor("load the strip");

/** What presses on a strip between two bearers, and what pulls along it. */
export interface StripLoading {
  /** Span between the bearers, along x [m]. */
  readonly span: number;
  /** Width of the strip that carries the force; all of it bends alike [m]. */
  readonly width: number;
  /** Which side is pressed on. */
  readonly pressedOn: "bag" | "mould";
  /** Force in the middle of the span, such as a heel; 0 if left out [N]. */
  readonly force?: number;
  /** Side of the square on which the force presses; the force counts as a line if left out [m]. */
  readonly pad?: number;
  /** Pressure all over; 0 if left out [Pa]. */
  readonly pressure?: number;
  /** Moment for each metre of width beside that of the loads, bending the same way [N]. */
  readonly moment?: number;
  /** Pull along x for each metre of width; below 0 it pushes [N/m]. */
  readonly pull?: number;
}

/** What acts on the plies and the core in the middle of the strip, for each metre of width. */
export interface StripDemand {
  /** Which side is pressed on. */
  readonly pressedOn: "bag" | "mould";
  /** Force along x [N/m]. */
  readonly Nx: number;
  /** Moment, by the sign of laminates: positive pulls on the bag side [N]. */
  readonly Mx: number;
  /** Largest shear force through the thickness [N/m]. */
  readonly Qx: number;
  /** The force on its pad, if there is one [N], [m]. */
  readonly patch?: {
    /** Force [N]. */
    readonly force: number;
    /** Side along x [m]. */
    readonly lengthX: number;
    /** Side along y [m]. */
    readonly lengthY: number;
  };
}

/**
 * Forces and moments in the middle of a strip under a heel, a pressure and a pull.
 *
 * Formula: M = ∓(F L/(4 b) + p L²/8 + m), minus where the bag side is pressed on;
 * Q = F/(2 b) + p L/2
 *
 * Range: bearers that let the strip turn; small deflection, so that a pull does not straighten it
 *
 * Source: beam theory, any handbook; load cases of `beamLoadCases`.
 *
 * @param loading The strip and what acts on it [SI].
 * @returns Forces and moments for each metre of width [N/m], [N].
 * @throws {InputError} If span or width is not above 0, a side not known, or a load not a number.
 *
 * @example
 * ```ts
 * import { stripDemand } from "@laminate/notebooks/comparison";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const heel = { span: 0.4, width: 0.3, force: 900, pressedOn: "bag" } as const;
 * assertAlmostEquals(stripDemand(heel).Mx, -300, 1e-9);
 * assertAlmostEquals(stripDemand(heel).Qx, 1500, 1e-9);
 * ```
 */
export function stripDemand(loading: StripLoading): StripDemand {
  check.object("loading", loading);
  const { force = 0, pressure = 0, moment = 0, pull = 0, pad, pressedOn } = loading;
  const span = check.positive("span", loading.span, "m");
  const width = check.positive("width", loading.width, "m");
  check.oneOf("side pressed on", pressedOn, ["bag", "mould"]);
  check.nonNegative("force", force, "N");
  check.finite("pressure", pressure, "Pa");
  check.finite("moment", moment, "N");
  check.finite("pull", pull, "N/m");
  if (pad !== undefined) check.positive("pad", pad, "m");
  const { threePoint, simplySupportedUniform } = beamLoadCases;
  const parts: readonly (readonly [BeamLoadCase, number])[] = [
    [threePoint, force / width],
    [simplySupportedUniform, pressure * span],
  ];
  const sum = (of: (load: BeamLoadCase) => number): number =>
    parts.reduce((total, [load, amount]) => total + of(load) * amount, 0);
  const sagging = sum((load) => load.moment) * span + moment;
  return Object.freeze({
    pressedOn,
    Nx: pull,
    Mx: check.result("moment", pressedOn === "bag" ? 0 - sagging : sagging, "N"),
    Qx: check.result("shear force", sum((load) => load.shearForce), "N/m"),
    ...(pad === undefined || force === 0 ? {} : { patch: { force, lengthX: pad, lengthY: pad } }),
  });
}
