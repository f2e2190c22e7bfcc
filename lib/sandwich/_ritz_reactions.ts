/**
 * Reactions of edges, by what the panel's energy lacks for a movement that held edges forbid: with
 * all polynomials t of the full degree, work of loads − work of stresses − springs =
 * Σ edges ∫ r t ds. The densities r are polynomials along the edges, found by least squares. The
 * fit is exact, so that its imbalance shows how well the system was solved.
 */
import { gaussLegendre, solve } from "../numeric/mod.ts";
import type { LineBeam, PanelEdges } from "./panel.ts";
import type { SeparableLoad } from "./_panel_load.ts";
import { type SideBasis, sideBasis } from "./_ritz_basis.ts";
import { fieldAt, ritzPoint } from "./_ritz_field.ts";
import { type Field, isHeld, padProfiles, profileWork, type RitzSystem } from "./_ritz_system.ts";

/** A support's force against positive deflection, and where it acts. */
export interface ActingForce {
  readonly x: number;
  readonly y: number;
  readonly padX: number;
  readonly padY: number;
  readonly force: number;
}

/** Sum of an edge's reaction, and its first moment about the middle of the edge. */
export interface EdgeSums {
  readonly total: number;
  readonly moment: number;
}

/** A name of an edge. */
type EdgeName = keyof PanelEdges;

const NAMES: readonly EdgeName[] = ["x0", "x1", "y0", "y1"];

/** What is solved, and what acts on it. */
export interface SolvedPanel {
  readonly system: RitzSystem;
  readonly unknowns: Float64Array;
  readonly loads: readonly SeparableLoad[];
  readonly springs: readonly ActingForce[];
}

/** Reactions to one field of all edges that hold it, by constraint or by springs. */
export function edgeReactions(
  solved: SolvedPanel,
  field: Field,
): Readonly<Partial<Record<EdgeName, EdgeSums>>> {
  const { edges } = solved.system.panel;
  const g = residual(solved, field);
  const sprung: Partial<Record<EdgeName, EdgeSums>> = {};
  for (const name of NAMES) {
    if (typeof edges[name] === "string") continue;
    sprung[name] = subtractSprungEdge(g, solved, { field, name });
  }
  const held = NAMES.filter((name) => isHeld(edges[name], name[0] as "x" | "y", field));
  return { ...sprung, ...fitDensities(g, solved.system, held) };
}

/** Work of loads less work of stresses and supports, for all polynomials ij. */
function residual(solved: SolvedPanel, field: Field): Float64Array {
  const { system, loads, springs } = solved;
  const { degree, panel } = system;
  const full = sideBasis({ start: false, end: false }, degree);
  const n = degree + 1;
  const g = new Float64Array(n * n);
  if (field === "w") {
    const add = (load: SeparableLoad, sign: number): void => {
      const fx = profileWork(load.x, full, { extent: panel.length, degree });
      const fy = profileWork(load.y, full, { extent: panel.width, degree });
      for (let i = 0; i < n; i++) {
        for (let j = 0; j < n; j++) g[i * n + j]! += sign * fx[i]! * fy[j]!;
      }
    };
    for (const load of loads) add(load, 1);
    for (const spring of springs) add(padProfiles(spring, panel), -spring.force);
  }
  subtractStressWork(g, solved, { field, full });
  for (const beam of panel.beams ?? []) subtractBeamWork(g, solved, { field, full, beam });
  return g;
}

function subtractStressWork(
  g: Float64Array,
  { system, unknowns }: SolvedPanel,
  { field, full }: { readonly field: Field; readonly full: SideBasis },
): void {
  const { degree, panel } = system;
  const n = degree + 1;
  const { nodes, weights } = gaussLegendre(degree + 1);
  const tables = Array.from(nodes, (xi) => full.at(xi));
  const [hx, hy] = [panel.length / 2, panel.width / 2];
  tables.forEach((fx, a) => {
    tables.forEach((fy, b) => {
      const { Mx, My, Mxy, Qx, Qy } = ritzPoint(system, unknowns, {
        x: (1 + nodes[a]!) * hx,
        y: (1 + nodes[b]!) * hy,
      });
      const [byX, byY, plain] = field === "w"
        ? [Qx, Qy, 0]
        : field === "X"
        ? [Mx, Mxy, Qx]
        : [Mxy, My, Qy];
      const weight = weights[a]! * weights[b]!;
      for (let i = 0; i < n; i++) {
        const value = weight * (byX * hy * fx.slope[i]! + plain * hx * hy * fx.value[i]!);
        const slope = weight * byY * hx * fx.value[i]!;
        for (let j = 0; j < n; j++) g[i * n + j]! -= value * fy.value[j]! + slope * fy.slope[j]!;
      }
    });
  });
}

/** Takes the work of a beam's moment and shear force out of the residual. */
function subtractBeamWork(
  g: Float64Array,
  { system, unknowns }: SolvedPanel,
  { field, full, beam }: {
    readonly field: Field;
    readonly full: SideBasis;
    readonly beam: LineBeam;
  },
): void {
  const alongX = beam.along === "x";
  const own: Field = alongX ? "X" : "Y";
  if (field !== "w" && field !== own) return;
  const { degree, panel } = system;
  const n = degree + 1;
  const half = (alongX ? panel.length : panel.width) / 2;
  const across = full.at(2 * beam.at / (alongX ? panel.width : panel.length) - 1).value;
  const { nodes, weights } = gaussLegendre(degree + 1);
  nodes.forEach((node, a) => {
    const run = (1 + node) * half;
    const place = alongX ? { x: run, y: beam.at } : { x: beam.at, y: run };
    const w = fieldAt(system, unknowns, { field: "w", ...place });
    const turn = fieldAt(system, unknowns, { field: own, ...place });
    const moment = beam.bending * (alongX ? turn.byX : turn.byY);
    const force = beam.shear * ((alongX ? w.byX : w.byY) + turn.value);
    const [slope, plain] = field === "w" ? [force, 0] : [moment, force];
    const { value, slope: steepness } = full.at(node);
    for (let k = 0; k < n; k++) {
      const work = weights[a]! * (slope * steepness[k]! + plain * half * value[k]!);
      for (let i = 0; i < n; i++) g[alongX ? k * n + i : i * n + k]! -= work * across[i]!;
    }
  });
}

/** Takes an edge on springs out of the residual; returns what it carries. */
function subtractSprungEdge(
  g: Float64Array,
  { system, unknowns }: SolvedPanel,
  { field, name }: { readonly field: Field; readonly name: EdgeName },
): EdgeSums {
  const { degree, panel } = system;
  const edge = panel.edges[name];
  const side = name[0] as "x" | "y";
  const across = (side === "x" && field === "X") || (side === "y" && field === "Y");
  const stiffness = typeof edge === "string"
    ? 0
    : field === "w"
    ? edge.deflectionStiffness
    : across
    ? edge.rotationStiffness
    : 0;
  const n = degree + 1;
  const full = sideBasis({ start: false, end: false }, degree);
  const end = full.at(name[1] === "0" ? -1 : 1).value;
  const half = (side === "x" ? panel.width : panel.length) / 2;
  const fixed = name[1] === "0" ? 0 : side === "x" ? panel.length : panel.width;
  const { nodes, weights } = gaussLegendre(degree + 1);
  let [total, moment] = [0, 0];
  nodes.forEach((node, a) => {
    const run = (1 + node) * half;
    const place = side === "x" ? { x: fixed, y: run } : { x: run, y: fixed };
    const point = ritzPoint(system, unknowns, place);
    const amount = field === "w"
      ? point.deflection
      : field === "X"
      ? point.rotationX
      : point.rotationY;
    const share = weights[a]! * half * stiffness * amount;
    total += share;
    moment += share * node * half;
    full.at(node).value.forEach((value, k) => {
      for (let i = 0; i < n; i++) {
        g[side === "x" ? i * n + k : k * n + i]! -= share * value * end[i]!;
      }
    });
  });
  return { total, moment };
}

/** Weight that keeps what two edges may share at a corner among the highest polynomials. */
const RIDGE = 1e-13;

/** Least-squares densities along held edges, as sums. */
function fitDensities(
  g: Float64Array,
  { degree, panel }: RitzSystem,
  held: readonly EdgeName[],
): Readonly<Partial<Record<EdgeName, EdgeSums>>> {
  if (held.length === 0) return {};
  const n = degree + 1;
  const ends = sideBasis({ start: false, end: false }, degree);
  const atEnd = { "0": ends.at(-1).value, "1": ends.at(1).value };
  const count = held.length * n;
  const normal = new Float64Array(count * count);
  const right = new Float64Array(count);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      // Unknown k of an edge across x stands in the equations with j = k, across y with i = k.
      const entries = held.map((name, e) => {
        const end = atEnd[name[1] as "0" | "1"];
        return name[0] === "x" ? [e * n + j, end[i]!] as const : [e * n + i, end[j]!] as const;
      });
      for (const [at, f] of entries) {
        right[at]! += f * g[i * n + j]!;
        for (const [other, h] of entries) normal[at * count + other]! += f * h;
      }
    }
  }
  for (let u = 0; u < count; u++) normal[u * count + u]! += RIDGE * (1 + u % n) ** 6;
  const densities = solve(normal, right);
  return Object.fromEntries(held.map((name, e) => {
    const half = (name[0] === "x" ? panel.width : panel.length) / 2;
    // Densities come along polynomials of length 1: 1/√2 and ξ √(3/2).
    const total = densities[e * n]! * Math.SQRT2;
    return [name, { total, moment: densities[e * n + 1]! * Math.sqrt(2 / 3) * half }];
  }));
}
