import { checksFor } from "../check/mod.ts";
import { solveWave } from "./_levy_wave.ts";
import type { Panel, PanelPoint } from "./panel.ts";
import { checkPanel, refusePointsAndLines } from "./_panel_checks.ts";
import { profileAt, type SeparableLoad, separableLoads, sineCoefficient } from "./_panel_load.ts";
import { plateConstants, swapAxes, swapPoint } from "./_panel_plate.ts";
import { acceleratedSum } from "./_series_sum.ts";
import { stripAt, type StripState } from "./_strip.ts";

const check = checksFor("solve the panel by sine waves");

/** A panel's solution that can be asked at any place. */
export interface LevySolution {
  /** The state at a place x, y [m]. */
  at(x: number, y: number): PanelPoint;
  /** Where the equations come from. */
  readonly source: string;
}

/** Most waves summed plainly before the rest is extrapolated. */
const MOST_WAVES = 600;

/** A wave below this share of the largest so far no longer counts. */
const NEGLIGIBLE = 1e-17;

/** So many waves in a row that do not count end the sum. */
const QUIET_WAVES = 6;

/**
 * Solves a panel with two opposite edges on hard simple supports, the other two held in any way,
 * by one exact solution across for each sine wave along.
 *
 * Every quantity converges, edge forces too: what the waves add up to away from the edges is
 * known in closed form (a strip), the rest dies away with the distance from edges and ends of a
 * load, and right there the tail of the series is extrapolated. Q is the plain shear force, not
 * Kirchhoff's edge reaction.
 *
 * Formula: w = Σ W(y) sin αx, φx = Σ X(y) cos αx, φy = Σ Y(y) sin αx, α = mπ/a, with W, X, Y from
 * the sixth-order equation across
 *
 * Range: orthotropic (no plies askew), first-order shear or a thin plate; no point supports, no
 * beams.
 * Under the rim of a patch forces jump, and exactly there the value is half-way.
 *
 * Source: M. Lévy's method, Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959),
 * chapter 5; with shear as in J. N. Reddy, Mechanics of Laminated Composite Plates and Shells
 * (2004), from memory, derived anew.
 *
 * @param panel The panel; its edges at x0 and x1, or at y0 and y1, are "simple".
 * @returns The solution, to be asked at any place.
 * @throws {InputError} If the panel cannot be meant, no two opposite edges are "simple", plies lie
 * askew, or it has point supports or beams.
 *
 * @example The middle of a thin square panel: 0.00406 q a⁴/D
 * ```ts
 * import { allEdges, isotropicPanel, levyPanel } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const stiffness = isotropicPanel({ E: 1, nu: 0.3, thickness: 1, density: 1 }, "rigid");
 * const { at } = levyPanel({
 *   length: 1,
 *   width: 1,
 *   stiffness,
 *   edges: allEdges("simple"),
 *   loads: [{ kind: "uniform", pressure: 1 }],
 * });
 * assertAlmostEquals(at(0.5, 0.5).deflection * stiffness.D11, 0.00406, 5e-6);
 * ```
 */
export function levyPanel(panel: Panel): LevySolution {
  checkPanel(check, panel);
  refusePointsAndLines(check, panel);
  const { edges } = panel;
  const alongX = edges.x0 === "simple" && edges.x1 === "simple";
  if (!alongX && !(edges.y0 === "simple" && edges.y1 === "simple")) {
    check.refuse("edges", edges, 'must have two opposite ones "simple": use ritzPanel for others');
  }
  // Checked before they are swapped, so that a refusal names them as they were given.
  const loads = separableLoads(check, panel);
  const own = alongX ? panel : swapAxes(panel);
  const parts = (alongX ? loads : separableLoads(check, own)).map((load) => loadedPart(own, load));
  const solved = (x: number, y: number): PanelPoint =>
    atEdges(own, parts.reduce((sum, part) => addPoints(sum, part(x, y)), nothingAt(x, y)));
  return Object.freeze({
    at(x: number, y: number): PanelPoint {
      check.within("x", x, { min: 0, max: panel.length, unit: "m" });
      check.within("y", y, { min: 0, max: panel.width, unit: "m" });
      const point = alongX ? solved(x, y) : swapPoint(solved(y, x));
      check.result("deflection", point.deflection, "m");
      return Object.freeze(point);
    },
    source: "M. Lévy's series with first-order shear; Timoshenko and Woinowsky-Krieger (1959), " +
      "chapter 5; Reddy (2004)",
  });
}

function nothingAt(x: number, y: number): PanelPoint {
  return {
    x,
    y,
    deflection: 0,
    rotationX: 0,
    rotationY: 0,
    Mx: 0,
    My: 0,
    Mxy: 0,
    Qx: 0,
    Qy: 0,
  };
}

/** Sets what an edge holds at zero, where the sum of waves leaves a rest. */
function atEdges({ length, width, edges }: Panel, point: PanelPoint): PanelPoint {
  const { x, y } = point;
  const simple = { deflection: 0, Mx: 0, My: 0 };
  const edge = y === 0 ? edges.y0 : y === width ? edges.y1 : "free";
  return {
    ...point,
    ...(x === 0 || x === length ? { ...simple, rotationY: 0, Qy: 0 } : {}),
    ...(edge === "simple" ? { ...simple, rotationX: 0, Qx: 0 } : {}),
    ...(edge === "clamped" ? { deflection: 0, rotationX: 0, rotationY: 0, Qx: 0 } : {}),
  };
}

function addPoints(a: PanelPoint, b: PanelPoint): PanelPoint {
  return {
    x: a.x,
    y: a.y,
    deflection: a.deflection + b.deflection,
    rotationX: a.rotationX + b.rotationX,
    rotationY: a.rotationY + b.rotationY,
    Mx: a.Mx + b.Mx,
    My: a.My + b.My,
    Mxy: a.Mxy + b.Mxy,
    Qx: a.Qx + b.Qx,
    Qy: a.Qy + b.Qy,
  };
}

/** The eight sums of a place. */
const NAMES = ["w", "X", "Y", "Mx", "My", "Mxy", "Qx", "Qy"] as const;

/** Those that go with the sine of x; the others go with the cosine. */
const WITH_SINE: readonly boolean[] = [true, false, true, true, true, false, false, true];

/** Those of the loaded strip that have no closed form over all waves. */
const SUMMED = ["Y", "Mxy", "Qy"];

/** Amplitudes of the waves at one y, sum after sum. */
interface WaveRow {
  readonly y: number;
  readonly amplitudes: readonly Float64Array[];
  readonly count: number;
  /** Whether the last waves no longer count; otherwise the rest is extrapolated. */
  readonly settled: boolean;
}

/** Solution for one load. Waves are solved when first needed, and kept; so is the last y. */
function loadedPart(panel: Panel, load: SeparableLoad): (x: number, y: number) => PanelPoint {
  const plate = plateConstants(check, panel);
  const { length, width, edges } = panel;
  const problem = { plate, width, y0: edges.y0, y1: edges.y1, load: load.y };
  const strip = stripAt(load.x, length, plate);
  const waves: ReturnType<typeof solveWave>[] = [];
  const wave = (m: number): ReturnType<typeof solveWave> => {
    const alpha = m * Math.PI / length;
    return waves[m - 1] ??= solveWave(problem, alpha, sineCoefficient(load.x, length, m));
  };
  let row: WaveRow | undefined;
  return (x, y) => {
    if (row?.y !== y) row = waveRow(wave, y);
    const sums = sumAlong(row, Math.PI * x / length);
    return assemble({ x, y, sums, strip: strip(x), across: profileAt(load.y, y), plate });
  };
}

function waveRow(wave: (m: number) => ReturnType<typeof solveWave>, y: number): WaveRow {
  const amplitudes = NAMES.map(() => new Float64Array(MOST_WAVES));
  const largest = new Float64Array(NAMES.length);
  let count = 0;
  let quiet = 0;
  while (count < MOST_WAVES && quiet < QUIET_WAVES) {
    const { free, loaded } = wave(count + 1)(y);
    let counts = false;
    NAMES.forEach((name, i) => {
      const amplitude = free[name] + (SUMMED.includes(name) ? loaded[name] : 0);
      (amplitudes[i] as Float64Array)[count] = amplitude;
      const size = Math.abs(amplitude);
      if (size > NEGLIGIBLE * (largest[i] ?? 0)) counts = true;
      if (size > (largest[i] ?? 0)) largest[i] = size;
    });
    quiet = counts ? 0 : quiet + 1;
    count++;
  }
  return { y, amplitudes, count, settled: quiet >= QUIET_WAVES };
}

/** Sums of the waves at one x, given as angle of the first. */
function sumAlong({ amplitudes, count, settled }: WaveRow, angle: number): readonly number[] {
  const sines = new Float64Array(count);
  const cosines = new Float64Array(count);
  for (let m = 1; m <= count; m++) {
    sines[m - 1] = Math.sin(m * angle);
    cosines[m - 1] = Math.cos(m * angle);
  }
  const terms = new Float64Array(count);
  return amplitudes.map((list, i) => {
    const factors = WITH_SINE[i] ? sines : cosines;
    let sum = 0;
    for (let m = 0; m < count; m++) {
      const term = (list[m] ?? 0) * (factors[m] ?? 0);
      terms[m] = term;
      sum += term;
    }
    return settled ? sum : acceleratedSum(terms, count);
  });
}

/** Sums of the waves and the strip under the load, put together. */
function assemble({ x, y, sums, strip, across, plate }: {
  readonly x: number;
  readonly y: number;
  readonly sums: readonly number[];
  readonly strip: StripState;
  readonly across: number;
  readonly plate: { readonly D11: number; readonly D12: number };
}): PanelPoint {
  const [w = 0, X = 0, Y = 0, Mx = 0, My = 0, Mxy = 0, Qx = 0, Qy = 0] = sums;
  return {
    x,
    y,
    deflection: w + across * strip.deflection,
    rotationX: X + across * strip.rotation,
    rotationY: Y,
    Mx: Mx + across * strip.moment,
    My: My + across * strip.moment * plate.D12 / plate.D11,
    Mxy,
    Qx: Qx + across * strip.shear,
    Qy,
  };
}
