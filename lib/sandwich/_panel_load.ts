/** Loads of a panel as products of a profile along x and one along y. */
import type { Checks } from "../check/mod.ts";
import type { Panel, PanelLoad } from "./panel.ts";

/** A load along one side: spread between two places, or gathered at one. */
export type Profile =
  | {
    readonly kind: "span";
    readonly from: number;
    readonly to: number;
    /** Value at `from`. */
    readonly start: number;
    /** Value at `to`. */
    readonly end: number;
  }
  | { readonly kind: "at"; readonly place: number; readonly value: number };

/** A load: pressure = x profile times y profile. */
export interface SeparableLoad {
  readonly x: Profile;
  readonly y: Profile;
}

/** Every load of a panel as separable ones, checked. */
export function separableLoads(check: Checks, panel: Panel): readonly SeparableLoad[] {
  check.list("loads", panel.loads, 0);
  return Array.from(panel.loads, (load, i) => separable(check, load, { panel, where: i + 1 }));
}

function separable(
  check: Checks,
  load: PanelLoad,
  { panel: { length, width }, where }: { readonly panel: Panel; readonly where: number },
): SeparableLoad {
  check.object(`load ${where}`, load);
  const whole = (to: number, value: number): Profile => ({
    kind: "span",
    from: 0,
    to,
    start: value,
    end: value,
  });
  switch (load.kind) {
    case "uniform":
      check.finite(`pressure of load ${where}`, load.pressure, "Pa");
      return { x: whole(length, load.pressure), y: whole(width, 1) };
    case "linear": {
      const along = check.oneOf(`direction of load ${where}`, load.along, ["x", "y"]);
      const start = check.finite(`pressure at the start of load ${where}`, load.atStart, "Pa");
      const end = check.finite(`pressure at the end of load ${where}`, load.atEnd, "Pa");
      return along === "x"
        ? { x: { ...whole(length, 1), start, end } as Profile, y: whole(width, 1) }
        : { x: whole(length, 1), y: { ...whole(width, 1), start, end } as Profile };
    }
    case "patch": {
      const u = check.positive(`length along x of load ${where}`, load.lengthX, "m");
      const v = check.positive(`length along y of load ${where}`, load.lengthY, "m");
      const pressure = check.finite(`force of load ${where}`, load.force, "N") / (u * v);
      return {
        x: box(check, `load ${where} along x`, [load.x - u / 2, load.x + u / 2, pressure, length]),
        y: box(check, `load ${where} along y`, [load.y - v / 2, load.y + v / 2, 1, width]),
      };
    }
    case "line": {
      const along = check.oneOf(`direction of load ${where}`, load.along, ["x", "y"]);
      const [own, other] = along === "x" ? [length, width] : [width, length];
      const force = check.finite(`force of load ${where}`, load.force, "N");
      const run = check.positive(`run of load ${where}`, load.to - load.from, "m");
      const spread = box(check, `load ${where} along ${along}`, [
        load.from,
        load.to,
        force / run,
        own,
      ]);
      check.within(`place of load ${where}`, load.at, { min: 0, max: other, unit: "m" });
      const gathered: Profile = { kind: "at", place: load.at, value: 1 };
      return along === "x" ? { x: spread, y: gathered } : { x: gathered, y: spread };
    }
    default:
      return check.refuse(
        `kind of load ${where}`,
        (load as { kind?: unknown }).kind,
        "must be one of: uniform, linear, patch, line",
      );
  }
}

/** How far beyond an edge a load may reach by rounding, as a share of the side. */
const ROUNDING = 1e-12;

function box(
  check: Checks,
  name: string,
  [from, to, value, side]: readonly [number, number, number, number],
): Profile {
  const slack = ROUNDING * side;
  check.within(`start of ${name}`, from, { min: -slack, max: side, unit: "m" });
  check.within(`end of ${name}`, to, { min: 0, max: side + slack, unit: "m" });
  return {
    kind: "span",
    from: Math.max(from, 0),
    to: Math.min(to, side),
    start: value,
    end: value,
  };
}

/** Integral of a profile. */
export function profileForce(profile: Profile): number {
  return profile.kind === "at"
    ? profile.value
    : (profile.start + profile.end) / 2 * (profile.to - profile.from);
}

/** How much a profile carries where its signs do not cancel: for scales only. */
export function profileMagnitude(profile: Profile): number {
  return profile.kind === "at"
    ? Math.abs(profile.value)
    : (Math.abs(profile.start) + Math.abs(profile.end)) / 2 * (profile.to - profile.from);
}

/** First moment of a profile about its origin. */
export function profileMoment(profile: Profile): number {
  if (profile.kind === "at") return profile.value * profile.place;
  const { from, to, start, end } = profile;
  const run = to - from;
  return run * (from * (start + end) / 2 + run * (start / 6 + end / 3));
}

/** Coefficient (2/L) ∫ f sin(kπs/L) ds of a profile on a side of length L. */
export function sineCoefficient(profile: Profile, side: number, k: number): number {
  const alpha = k * Math.PI / side;
  if (profile.kind === "at") return 2 / side * profile.value * Math.sin(alpha * profile.place);
  const { from, to, start, end } = profile;
  const half = (to - from) / 2;
  const middle = (from + to) / 2;
  const mean = (start + end) / 2;
  const slope = (end - start) / (to - from);
  // About the middle: products instead of differences of cosines keep small patches exact.
  const s = Math.sin(alpha * half);
  const c = Math.cos(alpha * half);
  const even = 2 * s / alpha;
  const odd = 2 * (s / alpha - half * c) / alpha;
  return 2 / side *
    (mean * Math.sin(alpha * middle) * even + slope * Math.cos(alpha * middle) * odd);
}

/** Value of a spread profile at a place; 0 outside and for one gathered at a place. */
export function profileAt(profile: Profile, place: number): number {
  if (profile.kind === "at" || place < profile.from || place > profile.to) return 0;
  const share = (place - profile.from) / (profile.to - profile.from);
  return profile.start + share * (profile.end - profile.start);
}
