import { checksFor } from "../check/mod.ts";
import { checkEdge } from "./_panel_checks.ts";
import type { PanelStiffness } from "./panel_stiffness.ts";

const check = checksFor("describe the panel's edges");

/** An edge on springs. */
export interface ElasticEdge {
  /** Force back for each metre of edge and metre of deflection [N/m²]. */
  readonly deflectionStiffness: number;
  /** Moment back for each metre of edge and radian of rotation about the edge [N]. */
  readonly rotationStiffness: number;
}

/**
 * How an edge is held. "simple": hard simple support, neither deflection nor rotation along the
 * edge; "clamped": no rotation at all; "free"; or springs.
 */
export type EdgeSupport = "simple" | "clamped" | "free" | ElasticEdge;

/** The four edges of a panel. */
export interface PanelEdges {
  /** Edge at x = 0. */
  readonly x0: EdgeSupport;
  /** Edge at x = length. */
  readonly x1: EdgeSupport;
  /** Edge at y = 0. */
  readonly y0: EdgeSupport;
  /** Edge at y = width. */
  readonly y1: EdgeSupport;
}

/** The same pressure everywhere. */
export interface UniformLoad {
  /** Which load it is. */
  readonly kind: "uniform";
  /** Pressure [Pa]. */
  readonly pressure: number;
}

/** A pressure that changes evenly from one edge to the opposite one, such as a head of water. */
export interface LinearLoad {
  /** Which load it is. */
  readonly kind: "linear";
  /** Along which side it changes. */
  readonly along: "x" | "y";
  /** Pressure at the edge where that side starts [Pa]. */
  readonly atStart: number;
  /** Pressure at the edge where that side ends [Pa]. */
  readonly atEnd: number;
}

/** A force spread evenly over a rectangle, such as a heel or a knee. */
export interface PatchLoad {
  /** Which load it is. */
  readonly kind: "patch";
  /** Force in all [N]. */
  readonly force: number;
  /** Middle of the patch along x [m]. */
  readonly x: number;
  /** Middle of the patch along y [m]. */
  readonly y: number;
  /** Side of the patch along x [m]. */
  readonly lengthX: number;
  /** Side of the patch along y [m]. */
  readonly lengthY: number;
}

/** A force spread evenly along a line that is parallel to a side. */
export interface LineLoad {
  /** Which load it is. */
  readonly kind: "line";
  /** Side to which the line is parallel. */
  readonly along: "x" | "y";
  /** Force in all [N]. */
  readonly force: number;
  /** Where the line lies across that side [m]. */
  readonly at: number;
  /** Where the line starts along that side [m]. */
  readonly from: number;
  /** Where the line ends along that side [m]. */
  readonly to: number;
}

/** A load on a panel, positive in the direction in which deflection counts positive. */
export type PanelLoad = UniformLoad | LinearLoad | PatchLoad | LineLoad;

/**
 * A support at a point: a mount, a pad, or a stay.
 *
 * Force on the panel against its deflection: preload + stiffness × deflection for `side` "far"
 * (a bearer behind the panel, a stay in front), and against negative deflection likewise for
 * "near". A one-way support lets go where that force would be below zero.
 */
export interface PointSupport {
  /** What it is, for tables. */
  readonly name: string;
  /** Place along x [m]. */
  readonly x: number;
  /** Place along y [m]. */
  readonly y: number;
  /** Force for each metre of movement normal to the panel [N/m]. */
  readonly stiffness: number;
  /** Whether it can only push or only pull (a stay, a bearer), or holds both ways. */
  readonly oneWay: boolean;
  /** "far" resists positive deflection, "near" negative. */
  readonly side: "far" | "near";
  /** Force at zero deflection [N]. */
  readonly preload: number;
  /** Side of the pad that spreads it, along x; 0 for a point [m]. */
  readonly padX?: number;
  /** Side of the pad that spreads it, along y; 0 for a point [m]. */
  readonly padY?: number;
}

/**
 * A beam along a line of a panel, from edge to edge and bonded to it: a bar, a fin, an edge turned
 * up. It bends with the panel's own rotation and resists no twist.
 */
export interface LineBeam {
  /** What it is, for tables. */
  readonly name: string;
  /** Side along which it runs. */
  readonly along: "x" | "y";
  /** Where the line lies across that side [m]. */
  readonly at: number;
  /** Flexural rigidity that it adds [N·m²]. */
  readonly bending: number;
  /** Shear stiffness that it adds; 0 to leave it to the panel, which is on the safe side [N]. */
  readonly shear: number;
  /** Mass for each metre [kg/m]. */
  readonly massPerLength: number;
}

/** A rectangular panel: 0 ≤ x ≤ length, 0 ≤ y ≤ width. */
export interface Panel {
  /** Side along x [m]. */
  readonly length: number;
  /** Side along y [m]. */
  readonly width: number;
  /** Its stiffness. */
  readonly stiffness: PanelStiffness;
  /** How its edges are held. */
  readonly edges: PanelEdges;
  /** Its loads, added up. */
  readonly loads: readonly PanelLoad[];
  /** Supports at points; none if not given. */
  readonly supports?: readonly PointSupport[];
  /** Beams along lines; none if not given. */
  readonly beams?: readonly LineBeam[];
}

/** What happens at one place of a panel. */
export interface PanelPoint {
  /** Place along x [m]. */
  readonly x: number;
  /** Place along y [m]. */
  readonly y: number;
  /** Deflection, positive with the load [m]. */
  readonly deflection: number;
  /** Rotation of the normal in the plane of x [rad]. */
  readonly rotationX: number;
  /** Rotation of the normal in the plane of y [rad]. */
  readonly rotationY: number;
  /** Moment for each metre of width, bending along x, sagging positive; without beams [N]. */
  readonly Mx: number;
  /** Moment for each metre of width, bending along y, sagging positive; without beams [N]. */
  readonly My: number;
  /** Twisting moment for each metre of width [N]. */
  readonly Mxy: number;
  /** Shear force for each metre of width, on the face across x [N/m]. */
  readonly Qx: number;
  /** Shear force for each metre of width, on the face across y [N/m]. */
  readonly Qy: number;
}

/**
 * Four edges held alike.
 *
 * Source: definition.
 *
 * @param support How each edge is held.
 * @returns The four edges.
 * @throws {InputError} If the support is not known or its springs cannot be meant.
 *
 * @example
 * ```ts
 * import { allEdges } from "@laminate/notebooks/sandwich";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(allEdges("clamped").y1, "clamped");
 * ```
 */
export function allEdges(support: EdgeSupport): PanelEdges {
  checkEdge(check, "all round", support);
  return Object.freeze({ x0: support, x1: support, y0: support, y1: support });
}
