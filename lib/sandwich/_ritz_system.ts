/** The panel's energy in orthogonal polynomials: bases, stiffness matrix, load vector. */
import { gaussLegendre } from "../numeric/mod.ts";
import type { EdgeSupport, Panel, PanelEdges } from "./panel.ts";
import type { Profile, SeparableLoad } from "./_panel_load.ts";
import type { PanelShear } from "./panel_stiffness.ts";
import { type Gram, gramOf, type HeldEnds, type SideBasis, sideBasis } from "./_ritz_basis.ts";
import { addBeamMass, addBeams, addEdgeSprings } from "./_ritz_lines.ts";

/** The fields: deflection and the two rotations. */
export type Field = "w" | "X" | "Y";

/** The fields in the order of the unknowns. */
export const FIELDS: readonly Field[] = ["w", "X", "Y"];

/** One field's functions along both sides and its place among the unknowns. */
export interface FieldBasis {
  readonly x: SideBasis;
  readonly y: SideBasis;
  /** First of its unknowns; the function ij is at offset + i × y.count + j. */
  readonly offset: number;
}

/** A panel in polynomials. */
export interface RitzSystem {
  readonly degree: number;
  readonly size: number;
  readonly fields: Readonly<Record<Field, FieldBasis>>;
  readonly shear: PanelShear;
  readonly panel: Panel;
}

/** Stiff shear that stands for "rigid": large enough for six digits, small enough to solve. */
const RIGID = 1e7;

/** Bases of a panel. A held edge takes the functions that are not zero there away. */
export function ritzSystem(panel: Panel, degree: number): RitzSystem {
  const { edges, stiffness, length, width } = panel;
  const fields = {} as Record<Field, FieldBasis>;
  let size = 0;
  for (const field of FIELDS) {
    const x = sideBasis(heldEnds(edges, field, "x"), degree);
    const y = sideBasis(heldEnds(edges, field, "y"), degree);
    fields[field] = { x, y, offset: size };
    size += x.count * y.count;
  }
  const stiff = RIGID * Math.max(stiffness.D11, stiffness.D22) / Math.min(length, width) ** 2;
  const shear = stiffness.shear === "rigid" ? { S44: stiff, S45: 0, S55: stiff } : stiffness.shear;
  return { degree, size, fields, shear, panel };
}

/** Whether an edge across a side holds a field at zero. */
export function isHeld(edge: EdgeSupport, side: "x" | "y", field: Field): boolean {
  // A simple support lets only the rotation across itself go.
  const across = (side === "x" && field === "X") || (side === "y" && field === "Y");
  return edge === "clamped" || (edge === "simple" && !across);
}

function heldEnds(edges: PanelEdges, field: Field, side: "x" | "y"): HeldEnds {
  const [start, end] = side === "x" ? [edges.x0, edges.x1] : [edges.y0, edges.y1];
  return { start: isHeld(start, side, field), end: isHeld(end, side, field) };
}

/** A field, differentiated along x and y. */
type Term = readonly [field: Field, dx: 0 | 1, dy: 0 | 1];

/** What the strains are made of. */
const KX: readonly Term[] = [["X", 1, 0]];
const KY: readonly Term[] = [["Y", 0, 1]];
const KXY: readonly Term[] = [["X", 0, 1], ["Y", 1, 0]];
const GX: readonly Term[] = [["w", 1, 0], ["X", 0, 0]];
const GY: readonly Term[] = [["w", 0, 1], ["Y", 0, 0]];

/** Stiffness matrix of the panel, its edge springs and its beams, row after row. */
export function stiffnessMatrix(system: RitzSystem): Float64Array {
  const { D11, D12, D16, D22, D26, D66 } = system.panel.stiffness;
  const { S44, S45, S55 } = system.shear;
  const matrix = new Float64Array(system.size * system.size);
  const grams = gramTable(system);
  const add = (c: number, a: readonly Term[], b: readonly Term[]): void => {
    if (c === 0) return;
    for (const s of a) for (const t of b) addBlock(matrix, system, { c, s, t, grams });
  };
  const both = (c: number, a: readonly Term[], b: readonly Term[]): void => {
    add(c, a, b);
    add(c, b, a);
  };
  add(D11, KX, KX);
  both(D12, KX, KY);
  both(D16, KX, KXY);
  add(D22, KY, KY);
  both(D26, KY, KXY);
  add(D66, KXY, KXY);
  add(S55, GX, GX);
  both(S45, GX, GY);
  add(S44, GY, GY);
  addEdgeSprings(matrix, system, grams);
  addBeams(matrix, system, grams);
  return matrix;
}

/** Matrix of ∫ w,x² and so on, of the deflection's unknowns alone: for buckling and mass. */
export function deflectionMatrix(
  system: RitzSystem,
  terms: readonly (readonly [factor: number, first: Term, second: Term])[],
): Float64Array {
  const { x, y } = system.fields.w;
  const own: RitzSystem = { ...system, size: x.count * y.count };
  const matrix = new Float64Array(own.size * own.size);
  const grams = gramTable(system);
  for (const [c, s, t] of terms) if (c !== 0) addBlock(matrix, own, { c, s, t, grams });
  return matrix;
}

/** Mass matrix of the deflection's unknowns, with the beams' mass. */
export function massMatrix(system: RitzSystem, massPerArea: number): Float64Array {
  const matrix = deflectionMatrix(system, [[massPerArea, ["w", 0, 0], ["w", 0, 0]]]);
  const { x, y } = system.fields.w;
  addBeamMass(matrix, { ...system, size: x.count * y.count }, gramTable(system));
  return matrix;
}

/** Product integrals along a side of two fields' functions. */
export type GramTable = (side: "x" | "y", first: Field, second: Field) => Gram;

function gramTable({ fields, degree }: RitzSystem): GramTable {
  const made = new Map<string, Gram>();
  return (side, first, second) => {
    const key = side + first + second;
    const known = made.get(key);
    if (known !== undefined) return known;
    const gram = gramOf(fields[first][side], fields[second][side], degree);
    made.set(key, gram);
    return gram;
  };
}

/** Adds c ∫ s t dA for two differentiated fields. */
function addBlock(
  matrix: Float64Array,
  { fields, panel, size }: RitzSystem,
  { c, s: [f, fx, fy], t: [g, gx, gy], grams }: {
    readonly c: number;
    readonly s: Term;
    readonly t: Term;
    readonly grams: GramTable;
  },
): void {
  const A = grams("x", f, g)(fx, gx);
  const B = grams("y", f, g)(fy, gy);
  const scale = c * (panel.length / 2) ** (1 - fx - gx) * (panel.width / 2) ** (1 - fy - gy);
  const [rows, columns] = [fields[f], fields[g]];
  const [ni, nj, nk, nl] = [rows.x.count, rows.y.count, columns.x.count, columns.y.count];
  for (let i = 0; i < ni; i++) {
    for (let j = 0; j < nj; j++) {
      const row = (rows.offset + i * nj + j) * size + columns.offset;
      for (let k = 0; k < nk; k++) {
        const a = scale * A[i * nk + k]!;
        if (a === 0) continue;
        const at = row + k * nl;
        const from = j * nl;
        for (let l = 0; l < nl; l++) matrix[at + l]! += a * B[from + l]!;
      }
    }
  }
}

/** Work of the loads in each deflection function. */
export function loadVector(system: RitzSystem, loads: readonly SeparableLoad[]): Float64Array {
  const { x, y } = system.fields.w;
  const vector = new Float64Array(system.size);
  for (const load of loads) {
    const fx = profileWork(load.x, x, { extent: system.panel.length, degree: system.degree });
    const fy = profileWork(load.y, y, { extent: system.panel.width, degree: system.degree });
    for (let i = 0; i < x.count; i++) {
      for (let j = 0; j < y.count; j++) vector[i * y.count + j]! += fx[i]! * fy[j]!;
    }
  }
  return vector;
}

/** ∫ profile × function ds for each function of a side. */
export function profileWork(
  profile: Profile,
  basis: SideBasis,
  { extent, degree }: { readonly extent: number; readonly degree: number },
): Float64Array {
  const xi = (s: number): number => 2 * s / extent - 1;
  if (profile.kind === "at") {
    return basis.at(xi(profile.place)).value.map((value) => value * profile.value);
  }
  const { nodes, weights } = gaussLegendre(degree + 1);
  const { from, to, start, end } = profile;
  const work = new Float64Array(basis.count);
  nodes.forEach((node, n) => {
    const share = (1 + node) / 2;
    const factor = weights[n]! / 2 * (to - from) * (start + share * (end - start));
    basis.at(xi(from + share * (to - from))).value.forEach((value, i) => {
      work[i]! += factor * value;
    });
  });
  return work;
}

/** A pad, or a point. */
export interface Pad {
  readonly x: number;
  readonly y: number;
  readonly padX: number;
  readonly padY: number;
}

/** A force of 1 spread over the part of a pad that lies on the panel. */
export function padProfiles(pad: Pad, { length, width }: Panel): SeparableLoad {
  const profile = (middle: number, side: number, extent: number): Profile => {
    const [from, to] = [Math.max(middle - side / 2, 0), Math.min(middle + side / 2, extent)];
    return to > from
      ? { kind: "span", from, to, start: 1 / (to - from), end: 1 / (to - from) }
      : { kind: "at", place: middle, value: 1 };
  };
  return { x: profile(pad.x, pad.padX, length), y: profile(pad.y, pad.padY, width) };
}
