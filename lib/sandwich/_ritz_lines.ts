/** What acts along lines of a panel: springs of its edges, and beams. */
import type { LineBeam } from "./panel.ts";
import type { Field, GramTable, RitzSystem } from "./_ritz_system.ts";

/** A field, differentiated along the line or not. */
type LineTerm = readonly [field: Field, derivative: 0 | 1];

/** Adds springs along edges: deflection, and rotation about the edge. */
export function addEdgeSprings(matrix: Float64Array, system: RitzSystem, grams: GramTable): void {
  const { edges } = system.panel;
  for (const name of ["x0", "x1", "y0", "y1"] as const) {
    const edge = edges[name];
    if (typeof edge === "string") continue;
    const along = name[0] === "x" ? "y" : "x";
    const xi = name[1] === "0" ? -1 : 1;
    const deflection: LineTerm = ["w", 0];
    const rotation: LineTerm = [along === "y" ? "X" : "Y", 0];
    const line = { along, xi, grams } as const;
    addLine(matrix, system, { ...line, c: edge.deflectionStiffness, s: deflection, t: deflection });
    addLine(matrix, system, { ...line, c: edge.rotationStiffness, s: rotation, t: rotation });
  }
}

/** Where a beam lies across its direction, from −1 to 1. */
function placeAcross({ along, at }: LineBeam, { panel }: RitzSystem): number {
  return 2 * at / (along === "x" ? panel.width : panel.length) - 1;
}

/** Adds the beams: EI φ,s² and GA (w,s + φ)² along each, φ the panel's rotation there. */
export function addBeams(matrix: Float64Array, system: RitzSystem, grams: GramTable): void {
  for (const beam of system.panel.beams ?? []) {
    const { along, bending, shear } = beam;
    const field = along === "x" ? "X" : "Y";
    const line = { along, xi: placeAcross(beam, system), grams };
    const turn: LineTerm = [field, 1];
    addLine(matrix, system, { ...line, c: bending, s: turn, t: turn });
    const slide: readonly LineTerm[] = [["w", 1], [field, 0]];
    for (const s of slide) {
      for (const t of slide) addLine(matrix, system, { ...line, c: shear, s, t });
    }
  }
}

/** Adds the beams' mass to a matrix of the deflection's unknowns. */
export function addBeamMass(matrix: Float64Array, system: RitzSystem, grams: GramTable): void {
  for (const beam of system.panel.beams ?? []) {
    const { along, massPerLength: c } = beam;
    const xi = placeAcross(beam, system);
    addLine(matrix, system, { c, s: ["w", 0], t: ["w", 0], along, xi, grams });
  }
}

/** Adds c ∫ s t ds along a line for two fields. */
function addLine(
  matrix: Float64Array,
  { fields, panel, size }: RitzSystem,
  { c, s: [f, fs], t: [g, gs], along, xi, grams }: {
    readonly c: number;
    readonly s: LineTerm;
    readonly t: LineTerm;
    readonly along: "x" | "y";
    readonly xi: number;
    readonly grams: GramTable;
  },
): void {
  if (c === 0) return;
  const across = along === "x" ? "y" : "x";
  const [rows, columns] = [fields[f], fields[g]];
  const run = grams(along, f, g)(fs, gs);
  const [ends, others] = [rows[across].at(xi).value, columns[across].at(xi).value];
  const scale = c * ((along === "x" ? panel.length : panel.width) / 2) ** (1 - fs - gs);
  const [count, width] = [rows[along].count, columns[along].count];
  const index = ({ offset, y }: typeof rows, r: number, e: number): number =>
    offset + (along === "x" ? r * y.count + e : e * y.count + r);
  for (let i = 0; i < ends.length; i++) {
    for (let k = 0; k < others.length; k++) {
      const share = scale * ends[i]! * others[k]!;
      for (let j = 0; j < count; j++) {
        const row = index(rows, j, i) * size;
        for (let l = 0; l < width; l++) {
          matrix[row + index(columns, l, k)]! += share * run[j * width + l]!;
        }
      }
    }
  }
}
