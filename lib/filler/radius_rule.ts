import { checksFor } from "../check/mod.ts";
import { halfTurn, tangentExcess } from "./_corner.ts";
import { type FilletSection, filletSection } from "./fillet.ts";

const check = checksFor("compute the largest radius");

/** What a rule or a wish limits; give at least one. */
export interface FilletLimits {
  /** Largest radius, stated as such [m]. */
  readonly radius?: number;
  /** How far the putty may reach along a panel from the corner [m]. */
  readonly tangentLength?: number;
  /** Largest thickness in the middle of the corner [m]. */
  readonly throat?: number;
  /** Largest area of filling across the corner [m²]. */
  readonly area?: number;
}

/** A corner and what limits the fillet in it. */
export interface RadiusRule {
  /** Angle between the panels on the filled side [deg]. */
  readonly cornerDeg: number;
  /** The limits. */
  readonly limits: FilletLimits;
  /** How far the made radius may turn out above the aim; 0 if left out [m]. */
  readonly makingTolerance?: number;
}

/** The largest radius that a rule allows, and how to check it. */
export interface LargestRadius {
  /** Largest radius allowed [m]. */
  readonly radius: number;
  /** The limit that decides. */
  readonly governedBy: keyof FilletLimits;
  /** Radius to aim at, so that making tolerance does not break the rule [m]. */
  readonly aimRadius: number;
  /** Diameter of the cylinder that checks the rule: laid in the corner it touches both panels [m]. */
  readonly gaugeDiameter: number;
  /** Section at the largest radius. */
  readonly section: FilletSection;
}

const LIMITS: readonly (keyof FilletLimits)[] = ["radius", "tangentLength", "throat", "area"];

/**
 * The largest fillet radius that a rule allows in a corner, and the cylinder that checks it.
 *
 * A cylinder of that radius laid in the corner touches both panels if the fillet is within the
 * rule; on a larger fillet it rides on the putty and leaves the panels.
 *
 * Formula: the smallest of r, L tan(θ/2), throat/(1/sin(θ/2) − 1) and
 * √(area/[cot(θ/2) − (π − θ)/2]); gauge diameter 2r
 *
 * Range: a corner below 180°.
 *
 * Source: plane geometry. A limit of 1 inch is checked with a cylinder of 2 inch: common practice,
 * no source. The event's or class's own rule and its inspector decide.
 *
 * @param rule The corner [deg], its limits [m, m²] and the making tolerance [m].
 * @returns Largest radius, radius to aim at and gauge diameter [m], and the deciding limit.
 * @throws {InputError} If no limit is given, one is not above 0, the angle is outside its range or
 * the tolerance leaves nothing.
 *
 * @example
 * ```ts
 * import { largestRadius } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const found = largestRadius({
 *   cornerDeg: 60,
 *   limits: { radius: 0.0254, tangentLength: 0.03 },
 *   makingTolerance: 0.001,
 * });
 * assertEquals(found.governedBy, "tangentLength");
 * assertAlmostEquals(found.gaugeDiameter, 2 * 0.03 * Math.tan(Math.PI / 6), 1e-12);
 * ```
 */
export function largestRadius(rule: RadiusRule): LargestRadius {
  const { cornerDeg, limits, makingTolerance = 0 } = check.object("rule", rule);
  const half = halfTurn(check, cornerDeg);
  if (!(half > 0)) check.refuse("angle of the corner", cornerDeg, "must be below 180°");
  check.object("limits", limits);
  check.nonNegative("making tolerance", makingTolerance, "m");
  let radius = Infinity;
  let governedBy: keyof FilletLimits | undefined;
  for (const name of LIMITS) {
    const limit = limits[name];
    if (limit === undefined) continue;
    check.positive(`limit of ${name}`, limit, name === "area" ? "m²" : "m");
    const allowed = radiusFor(name, limit, half);
    if (allowed < radius) [radius, governedBy] = [allowed, name];
  }
  if (governedBy === undefined) {
    return check.refuse("limits", limits, `must give at least one of ${LIMITS.join(", ")}`);
  }
  if (!(makingTolerance < radius)) {
    check.refuse("making tolerance", makingTolerance, `must be below the radius, ${radius} m`);
  }
  return {
    radius,
    governedBy,
    aimRadius: radius - makingTolerance,
    gaugeDiameter: 2 * radius,
    section: filletSection(radius, cornerDeg),
  };
}

function radiusFor(name: keyof FilletLimits, limit: number, half: number): number {
  switch (name) {
    case "radius":
      return limit;
    case "tangentLength":
      return limit / Math.tan(half);
    case "throat":
      return limit * Math.cos(half) / (2 * Math.sin(half / 2) ** 2);
    case "area":
      return Math.sqrt(limit / tangentExcess(half));
  }
}
