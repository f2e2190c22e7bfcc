import { checksFor } from "../check/mod.ts";
import { checkSupports, dot, solveContact, type SpringVector } from "./_contact.ts";
import { checkPanel } from "./_panel_checks.ts";
import {
  profileForce,
  profileMagnitude,
  profileMoment,
  type SeparableLoad,
  separableLoads,
} from "./_panel_load.ts";
import type { Panel, PanelEdges, PanelPoint } from "./panel.ts";
import { ritzPoint } from "./_ritz_field.ts";
import { edgeReactions, type SolvedPanel } from "./_ritz_reactions.ts";
import { loadVector, type Pad, padProfiles, ritzSystem, stiffnessMatrix } from "./_ritz_system.ts";

const check = checksFor("solve the panel by polynomials");

/** What a point support carries. */
export interface SupportReaction {
  /** Name of the support. */
  readonly name: string;
  /** Whether it holds; false where it has let go. */
  readonly holds: boolean;
  /** Force between support and panel, pressing or pulling on its side; 0 if let go [N]. */
  readonly force: number;
  /** Deflection of the panel there, mean over the pad [m]. */
  readonly deflection: number;
}

/** What an edge carries, added up over its length. */
export interface EdgeForce {
  /** Force against positive deflection [N]. */
  readonly force: number;
  /** Its first moment about the middle of the edge, positive where x or y is larger [N·m]. */
  readonly moment: number;
  /** Moment against rotation about the edge; 0 on a simple support [N·m]. */
  readonly clamping: number;
}

/** What holds the panel against its loads. */
export interface PanelReactions {
  /** Load in all [N]. */
  readonly load: number;
  /** Forces of the edges, free ones left out. */
  readonly edges: Readonly<Partial<Record<keyof PanelEdges, EdgeForce>>>;
  /** What each point support carries. */
  readonly supports: readonly SupportReaction[];
  /** Load less all reactions, over the sum of their magnitudes: 0 but for rounding [1]. */
  readonly imbalance: number;
  /** Likewise the moment about the line x = 0, over that sum times the length [1]. */
  readonly imbalanceX: number;
  /** Likewise the moment about the line y = 0, over that sum times the width [1]. */
  readonly imbalanceY: number;
}

/** A panel's solution in polynomials. */
export interface RitzSolution {
  /** The state at a place x, y [m]. */
  at(x: number, y: number): PanelPoint;
  /** What holds the panel; computed when first asked for. */
  readonly reactions: PanelReactions;
  /** Degree of the polynomials. */
  readonly degree: number;
  /** Change of the work of the loads against two degrees less, relative [1]. */
  readonly change: number;
  /** Remarks, empty where there is nothing to say. */
  readonly notes: readonly string[];
  /** Where the equations come from. */
  readonly source: string;
}

/** Degree of the polynomials if not given. */
const USUAL_DEGREE = 12;

/** A change against two degrees less that is worth a note. */
const COARSE = 3e-4;

/**
 * Solves a panel with edges held in any way, any symmetric stack, supports at points that may let
 * go, and beams along lines, by minimum energy in orthogonal polynomials.
 *
 * Formula: ½ ∫ (κᵀ D κ + γᵀ S γ) dA + ½ Σ k w² + ½ Σ ∫ (EI φs,s² + GA (w,s + φs)²) ds − ∫ q w dA =
 * minimum, κ = (φx,x, φy,y, φx,y + φy,x), γ = (w,x + φx, w,y + φy), s along a beam
 *
 * Range: first-order shear; a thin plate ("rigid") to six digits. Deflection converges fast;
 * moments under a patch to about 1 % and forces at edges and pads poorly: use `levyPanel` where it
 * applies. Supports at a point of no size sink in without end as the degree rises: give the pad.
 * So does, slowly, a beam without shear stiffness. Where a panel bends sharply over a beam the
 * result is too stiff by some three to seven times `change`: at degree 16 by 0.4 % for fins and
 * edges of a foam sandwich (G 27 MPa), 4 % on a core of 5 MPa, 7 % beside a rigid beam.
 *
 * Source: Ritz's method; J. N. Reddy, Mechanics of Laminated Composite Plates and Shells (2004)
 * for the energy; R. B. Bhat, J. Sound Vib. 102 (1985) 493, for orthogonal polynomials; from
 * memory.
 *
 * @param panel The panel.
 * @param degree Degree of the polynomials along each side, 4 to 30; 12 if not given.
 * @returns The solution, to be asked at any place, with reactions.
 * @throws {InputError} If the panel cannot be meant, a support is off the panel, or nothing holds
 * the panel.
 *
 * @example A thin square panel with all edges built in: 0.00126532 q a⁴/D
 * ```ts
 * import { allEdges, isotropicPanel, ritzPanel } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const stiffness = isotropicPanel({ E: 1, nu: 0.3, thickness: 1, density: 1 }, "rigid");
 * const { at } = ritzPanel({
 *   length: 1,
 *   width: 1,
 *   stiffness,
 *   edges: allEdges("clamped"),
 *   loads: [{ kind: "uniform", pressure: 1 }],
 * });
 * assertAlmostEquals(at(0.5, 0.5).deflection * stiffness.D11, 0.00126532, 2e-8);
 * ```
 */
export function ritzPanel(panel: Panel, degree = USUAL_DEGREE): RitzSolution {
  checkPanel(check, panel);
  check.count("degree", degree, 4);
  check.within("degree", degree, { min: 4, max: 30 });
  const supports = panel.supports ?? [];
  checkSupports(check, supports, panel);
  const loads = separableLoads(check, panel);
  const fine = solveDegree(panel, loads, degree);
  const coarse = solveDegree(panel, loads, degree - 2);
  let reactions: PanelReactions | undefined;
  const change = fine.work === 0 ? 0 : Math.abs((fine.work - coarse.work) / fine.work);
  return Object.freeze({
    at(x: number, y: number): PanelPoint {
      check.within("x", x, { min: 0, max: panel.length, unit: "m" });
      check.within("y", y, { min: 0, max: panel.width, unit: "m" });
      const point = ritzPoint(fine.system, fine.unknowns, { x, y });
      check.result("deflection", point.deflection, "m");
      return Object.freeze(point);
    },
    get reactions(): PanelReactions {
      return reactions ??= reactionsOf(fine);
    },
    degree,
    change,
    notes: notesOf(panel, change),
    source: "Ritz's method with first-order shear in orthogonal polynomials; Reddy (2004), Bhat " +
      "(1985)",
  });
}

interface Solved extends SolvedPanel {
  readonly supports: readonly SupportReaction[];
  readonly work: number;
}

function solveDegree(panel: Panel, loads: readonly SeparableLoad[], degree: number): Solved {
  const system = ritzSystem(panel, degree);
  const load = loadVector(system, loads);
  const pads = (panel.supports ?? []).map((support) => ({
    x: support.x,
    y: support.y,
    padX: support.padX ?? 0,
    padY: support.padY ?? 0,
  }));
  const springs: SpringVector[] = (panel.supports ?? []).map((support, i) => ({
    support,
    vector: loadVector(system, [padProfiles(pads[i] as Pad, panel)]),
  }));
  const state = solveContact(check, { matrix: stiffnessMatrix(system), load }, springs);
  return {
    system,
    unknowns: state.unknowns,
    loads,
    springs: pads.map((pad, i) => ({
      ...pad,
      force: (state.forces[i] ?? 0) * (panel.supports?.[i]?.side === "near" ? -1 : 1),
    })),
    supports: springs.map(({ support, vector }, i) =>
      Object.freeze({
        name: support.name,
        holds: state.holds[i] ?? false,
        force: state.forces[i] ?? 0,
        deflection: dot(vector, state.unknowns),
      })
    ),
    work: check.result("work of the loads", dot(load, state.unknowns), "J"),
  };
}

function notesOf(panel: Panel, change: number): readonly string[] {
  const notes = [...panel.stiffness.notes];
  if (change > COARSE) {
    notes.push(
      `the deflection still changes by ${
        (100 * change).toPrecision(2)
      } % with the degree: raise it`,
    );
  }
  if ((panel.beams ?? []).length > 0) {
    notes.push(
      "moments are the panel's own, rough beside a beam; what the beam bears is not in them",
    );
  }
  if (panel.loads.some(({ kind }) => kind === "patch" || kind === "line")) {
    notes.push("polynomials smooth a patch or a line: moments under it are about 1 % uncertain");
  }
  return notes;
}

/** Adds up what acts on the panel, and what is left over of force and moments. */
function reactionsOf(solved: Solved): PanelReactions {
  const { panel } = solved.system;
  const { length, width } = panel;
  let [force, aboutX, aboutY, size, total] = [0, 0, 0, 0, 0];
  for (const { x, y } of solved.loads) {
    const [fx, fy] = [profileForce(x), profileForce(y)];
    total += fx * fy;
    size += profileMagnitude(x) * profileMagnitude(y);
    aboutX += profileMoment(x) * fy;
    aboutY += fx * profileMoment(y);
  }
  force += total;
  for (const spring of solved.springs) {
    size += Math.abs(spring.force);
    force -= spring.force;
    aboutX -= spring.force * spring.x;
    aboutY -= spring.force * spring.y;
  }
  const w = edgeReactions(solved, "w");
  const X = edgeReactions(solved, "X");
  const Y = edgeReactions(solved, "Y");
  const edges: Partial<Record<keyof PanelEdges, EdgeForce>> = {};
  for (const name of ["x0", "x1", "y0", "y1"] as const) {
    const { total: edgeForce, moment } = w[name] ?? { total: 0, moment: 0 };
    const acrossX = name[0] === "x";
    const far = name[1] === "1";
    size += Math.abs(edgeForce);
    force -= edgeForce;
    aboutX -= acrossX ? edgeForce * (far ? length : 0) : edgeForce * length / 2 + moment;
    aboutY -= acrossX ? edgeForce * width / 2 + moment : edgeForce * (far ? width : 0);
    aboutX += X[name]?.total ?? 0;
    aboutY += Y[name]?.total ?? 0;
    if (panel.edges[name] === "free") continue;
    const clamping = (acrossX ? X[name] : Y[name])?.total ?? 0;
    edges[name] = Object.freeze({ force: edgeForce, moment, clamping });
  }
  const share = (left: number, arm: number): number => size === 0 ? 0 : left / (size * arm);
  return Object.freeze({
    load: total,
    edges,
    supports: solved.supports,
    imbalance: share(force, 1),
    imbalanceX: share(aboutX, length),
    imbalanceY: share(aboutY, width),
  });
}
