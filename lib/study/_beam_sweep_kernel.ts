/**
 * Sweep of simply supported strips on typed arrays, and the trade-off front of each span. This is
 * the hot kernel of the room.
 */

/** A sweep's lists as plain numbers. */
export interface SweepTable {
  /** Thickness of one ply, mass of one ply, modulus of each cloth. */
  readonly plyThickness: Float64Array;
  readonly plyMass: Float64Array;
  readonly faceE: Float64Array;
  /** Plies in each face. */
  readonly plies: Float64Array;
  /** Thickness of each core. */
  readonly coreThickness: Float64Array;
  readonly spans: Float64Array;
  readonly coreDensity: number;
  readonly coreE: number;
  readonly coreG: number;
  /** Modulus through the thickness, for wrinkling. */
  readonly coreEz: number;
  readonly bondMass: number;
  readonly pressure: number;
  readonly wrinklingFactor: number;
  readonly faceStrength: number;
  readonly coreStrength: number;
}

/** Figures of all designs, the last list changing fastest, and which are on their span's front. */
export interface SweepFigures {
  readonly mass: Float64Array;
  readonly deflection: Float64Array;
  readonly faceStress: Float64Array;
  readonly coreShear: Float64Array;
  readonly wrinkling: Float64Array;
  readonly onFront: Uint8Array;
}

/** Computes all designs; arrays of the right length may be handed in again. */
export function sweepStrips(table: SweepTable, out: SweepFigures): void {
  const { plyThickness, plyMass, faceE, plies, coreThickness, spans } = table;
  const { mass, deflection, faceStress, coreShear, wrinkling } = out;
  const NS = spans.length;
  const q = table.pressure;
  const a4 = new Float64Array(NS);
  const a2 = new Float64Array(NS);
  const a1 = new Float64Array(NS);
  for (let s = 0; s < NS; s++) {
    const L = spans[s]!;
    a4[s] = 5 * q * L ** 4 / 384;
    a2[s] = q * L * L / 8;
    a1[s] = q * L / 2;
  }
  let at = 0;
  for (let c = 0; c < plyThickness.length; c++) {
    const E = faceE[c]!;
    const wr = table.wrinklingFactor * Math.cbrt(E * table.coreEz * table.coreG);
    for (let p = 0; p < plies.length; p++) {
      const n = plies[p]!;
      const t = n * plyThickness[c]!;
      for (let k = 0; k < coreThickness.length; k++) {
        const h = coreThickness[k]!;
        const d = h + t;
        const w = 2 * n * plyMass[c]! + table.coreDensity * h + table.bondMass;
        const bend = 1 / (E * t * d * d / 2 + E * t * t * t / 6 + table.coreE * h * h * h / 12);
        const shear = h / (table.coreG * d * d);
        const perFace = E * (h / 2 + t) * bend;
        const perCore = 1 / d;
        for (let s = 0; s < NS; s++) {
          mass[at] = w;
          deflection[at] = a4[s]! * bend + a2[s]! * shear;
          faceStress[at] = a2[s]! * perFace;
          coreShear[at] = a1[s]! * perCore;
          wrinkling[at] = wr;
          at++;
        }
      }
    }
  }
  markFronts(table, out);
}

/**
 * Marks the front of mass against deflection of each span. Mass is the same at all spans, so that
 * one order serves them all; among equals in mass the least deflection counts.
 */
function markFronts(
  { spans, faceStrength, coreStrength }: SweepTable,
  { mass, deflection, faceStress, coreShear, wrinkling, onFront }: SweepFigures,
): void {
  const NS = spans.length;
  const count = mass.length / NS;
  const masses = new Float64Array(count);
  for (let i = 0; i < count; i++) masses[i] = mass[i * NS]!;
  const order = orderOf(masses);
  const best = new Float64Array(NS).fill(Infinity);
  const group = new Float64Array(NS);
  const groupAt = new Int32Array(NS);
  onFront.fill(0);
  for (let from = 0; from < count;) {
    const m = masses[order[from]!]!;
    let to = from;
    group.set(best);
    groupAt.fill(-1);
    do {
      const first = order[to]! * NS;
      const limit = Math.min(wrinkling[first]!, faceStrength);
      for (let s = 0; s < NS; s++) {
        const i = first + s;
        const w = deflection[i]!;
        if (w < group[s]! && faceStress[i]! <= limit && coreShear[i]! <= coreStrength) {
          group[s] = w;
          groupAt[s] = i;
        }
      }
      to++;
    } while (to < count && masses[order[to]!]! === m);
    for (let s = 0; s < NS; s++) {
      if (groupAt[s]! < 0) continue;
      best[s] = group[s]!;
      onFront[groupAt[s]!] = 1;
    }
    from = to;
  }
}

/** Indices in rising order of their values; equal ones keep their order (merge sort). */
function orderOf(values: Float64Array): Uint32Array {
  const n = values.length;
  let from = new Uint32Array(n);
  let to = new Uint32Array(n);
  for (let i = 0; i < n; i++) from[i] = i;
  for (let start = 0; start < n; start += 8) {
    const end = Math.min(start + 8, n);
    for (let i = start + 1; i < end; i++) {
      const v = from[i]!;
      const x = values[v]!;
      let j = i - 1;
      while (j >= start && values[from[j]!]! > x) {
        from[j + 1] = from[j]!;
        j--;
      }
      from[j + 1] = v;
    }
  }
  for (let width = 8; width < n; width *= 2) {
    for (let start = 0; start < n; start += 2 * width) {
      const middle = Math.min(start + width, n);
      const end = Math.min(start + 2 * width, n);
      let [i, j, k] = [start, middle, start];
      while (i < middle && j < end) {
        to[k++] = values[from[j]!]! < values[from[i]!]! ? from[j++]! : from[i++]!;
      }
      while (i < middle) to[k++] = from[i++]!;
      while (j < end) to[k++] = from[j++]!;
    }
    [from, to] = [to, from];
  }
  return from;
}
