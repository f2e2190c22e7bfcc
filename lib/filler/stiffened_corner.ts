import { checksFor } from "../check/mod.ts";
import { gaussLegendre } from "../numeric/mod.ts";
import { halfTurn } from "./_corner.ts";
import { filletSection } from "./fillet.ts";

const check = checksFor("compute the stiffened corner");

/** A corner filled with putty, with cloth laid over the fillet and out along both panels. */
export interface ClothedCorner {
  /** Radius of the fillet [m]. */
  readonly radius: number;
  /** Angle between the panels on the filled side [deg]. */
  readonly cornerDeg: number;
  /** Density of the putty [kg/m³]. */
  readonly puttyDensity: number;
  /** Young's modulus of the putty along the corner; 0 to leave it out [Pa]. */
  readonly puttyModulus: number;
  /** Cured thickness of all plies over the fillet [m]. */
  readonly clothThickness: number;
  /** Modulus of the plies along the corner [Pa]. */
  readonly clothModulus: number;
  /** Mass of the plies, cured, per area [kg/m²]. */
  readonly clothArealMass: number;
  /** How far the cloth runs along each panel beyond the fillet [m]. */
  readonly overlap: number;
}

/** What a fillet under cloth adds along a corner; the panels themselves are not counted. */
export interface StiffenedCorner {
  /** Width of the cloth, over the fillet and both overlaps [m]. */
  readonly clothWidth: number;
  /** Mass of putty for one metre [kg/m]. */
  readonly puttyMassPerMetre: number;
  /** Mass of cloth and its resin for one metre [kg/m]. */
  readonly clothMassPerMetre: number;
  /** Stiffness in pull along the corner, EA [N]. */
  readonly axialStiffness: number;
  /** From the corner to the centroid, along the bisector [m]. */
  readonly centroid: number;
  /** Flexural rigidity where the corner line moves along the bisector, EI [N m²]. */
  readonly rigidityAlongBisector: number;
  /** Flexural rigidity where the corner line moves across the bisector, EI [N m²]. */
  readonly rigidityAcrossBisector: number;
}

/** E-weighted moments about the corner; x along the bisector, y across. */
interface Moments {
  readonly A: number;
  readonly Ax: number;
  readonly Axx: number;
  readonly Ayy: number;
}

/** Points of the quadrature: its integrands are sines, exact to rounding with these. */
const RULE = gaussLegendre(24);

/**
 * What a fillet under cloth adds to a corner: mass for one metre, and stiffness as a beam along
 * the corner about its own centroid.
 *
 * Formula: EA = Σ E A; EI = Σ E ∫x² dA − (Σ E ∫x dA)²/EA; the putty between panels and arc, the
 * cloth as a thin line half its thickness above fillet and panels
 *
 * Range: cloth thin against the radius; corner below 180°; perfect bond. The panels carry too and
 * are not counted.
 *
 * Source: composite beam theory (any text on strength of materials); plane geometry.
 *
 * @param corner The fillet, its putty and the cloth over it.
 * @returns Cloth width [m], masses [kg/m], EA [N], centroid [m] and both EI [N m²].
 * @throws {InputError} If an input is outside its range, or the cloth is not thinner than the
 * radius.
 *
 * @example
 * ```ts
 * import { stiffenedCorner } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const corner = stiffenedCorner({
 *   radius: 0.02, cornerDeg: 90, puttyDensity: 600, puttyModulus: 1.5e9,
 *   clothThickness: 0.0005, clothModulus: 18e9, clothArealMass: 0.8, overlap: 0.04,
 * });
 * assertAlmostEquals(corner.clothWidth, 0.01975 * Math.PI / 2 + 0.08, 1e-12);
 * ```
 */
export function stiffenedCorner(corner: ClothedCorner): StiffenedCorner {
  const { radius, cornerDeg, clothThickness, overlap } = checkCorner(corner);
  const half = halfTurn(check, cornerDeg);
  if (!(half > 0)) check.refuse("angle of the corner", cornerDeg, "must be below 180°");
  const putty = puttyMoments(radius, half);
  const cloth = clothMoments({ radius, half, thickness: clothThickness, overlap });
  const E = (pick: (moments: Moments) => number): number =>
    corner.puttyModulus * pick(putty) + corner.clothModulus * pick(cloth);
  const axialStiffness = E(({ A }) => A);
  if (!(axialStiffness > 0)) {
    check.refuse("stiffness", axialStiffness, "must be above 0: give a modulus and a thickness");
  }
  const centroid = E(({ Ax }) => Ax) / axialStiffness;
  const clothWidth = 2 * (radius - clothThickness / 2) * half + 2 * overlap;
  return check.results({
    clothWidth,
    puttyMassPerMetre: filletSection(radius, cornerDeg).area * corner.puttyDensity,
    clothMassPerMetre: clothWidth * corner.clothArealMass,
    axialStiffness: check.result("axial stiffness", axialStiffness, "N"),
    centroid,
    rigidityAlongBisector: check.result(
      "rigidity",
      E(({ A, Ax, Axx }) => Axx - centroid * (2 * Ax - centroid * A)),
      "N m²",
    ),
    rigidityAcrossBisector: check.result("rigidity", E(({ Ayy }) => Ayy), "N m²"),
  });
}

/** Moments of the filling: slices across, at y = ±r sin α, from the panel to the arc. */
function puttyMoments(radius: number, half: number): Moments {
  let [A, Ax, Axx, Ayy] = [0, 0, 0, 0];
  RULE.nodes.forEach((node, i) => {
    const alpha = half * (node + 1) / 2;
    const y = radius * Math.sin(alpha);
    const onPanel = y * Math.tan(half);
    // Written as a sine, so that a nearly flat corner keeps its digits.
    const depth = radius * 2 * Math.sin((half - alpha) / 2) ** 2 / Math.cos(half);
    const onArc = onPanel + depth;
    const weight = RULE.weights[i]! * half * radius * Math.cos(alpha);
    A += weight * depth;
    Ax += weight * depth * (onPanel + onArc) / 2;
    Axx += weight * depth * (onPanel ** 2 + onPanel * onArc + onArc ** 2) / 3;
    Ayy += weight * depth * y ** 2;
  });
  return { A, Ax, Axx, Ayy };
}

/** Moments of the cloth: an arc about the fillet's centre, and a straight leg along each panel. */
function clothMoments(
  { radius, half, thickness, overlap }: {
    readonly radius: number;
    readonly half: number;
    readonly thickness: number;
    readonly overlap: number;
  },
): Moments {
  const r = radius - thickness / 2;
  const centre = radius / Math.cos(half);
  const [sin, cos] = [Math.sin(half), Math.cos(half)];
  // ∫ over the arc of x = centre − r cos α and y = r sin α, α from −half to half.
  const arc = {
    A: 2 * r * half,
    Ax: 2 * r * (centre * half - r * sin),
    Axx: r * (2 * centre ** 2 * half - 4 * centre * r * sin + r ** 2 * (half + sin * cos)),
    Ayy: r ** 3 * (half - sin * cos),
  };
  // A leg starts where the arc ends and runs outward along the panel, direction (sin, ±cos).
  const startX = centre - r * cos;
  const startY = r * sin;
  const leg = {
    A: overlap,
    Ax: overlap * (startX + overlap * sin / 2),
    Axx: squareAlongLine(startX, startX + overlap * sin) * overlap,
    Ayy: squareAlongLine(startY, startY + overlap * cos) * overlap,
  };
  return {
    A: thickness * (arc.A + 2 * leg.A),
    Ax: thickness * (arc.Ax + 2 * leg.Ax),
    Axx: thickness * (arc.Axx + 2 * leg.Axx),
    Ayy: thickness * (arc.Ayy + 2 * leg.Ayy),
  };
}

/** Mean of x² over a straight line from a to b. */
function squareAlongLine(a: number, b: number): number {
  return (a * a + a * b + b * b) / 3;
}

function checkCorner(corner: ClothedCorner): ClothedCorner {
  check.object("corner", corner);
  check.positive("radius", corner.radius, "m");
  check.positive("putty density", corner.puttyDensity, "kg/m³");
  check.nonNegative("modulus of the putty", corner.puttyModulus, "Pa");
  check.nonNegative("thickness of the cloth", corner.clothThickness, "m");
  check.nonNegative("modulus of the cloth", corner.clothModulus, "Pa");
  check.nonNegative("mass of the cloth", corner.clothArealMass, "kg/m²");
  check.nonNegative("overlap", corner.overlap, "m");
  if (!(corner.clothThickness < corner.radius)) {
    check.refuse("thickness of the cloth", corner.clothThickness, "must be below the radius");
  }
  return corner;
}
