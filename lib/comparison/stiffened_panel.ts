import { checksFor } from "../check/mod.ts";
import { type ClothedCorner, stiffenedCorner } from "../filler/mod.ts";
import type { Stack } from "../materials/mod.ts";
import {
  type PanelStiffness,
  panelStiffness,
  sectionFromStack,
  type SectionPart,
  transformedSection,
} from "../sandwich/mod.ts";

const check = checksFor("compute the stiffened panel");

/** A part of a member that runs along a panel, from bearer to bearer. */
export interface MemberPart extends SectionPart {
  /** Shear modulus along the member and upwards; 0 where it carries no shear [Pa]. */
  readonly G: number;
}

/** A panel that spans along x, for members to be fixed on. */
export interface PlainPanel {
  /** Its stack, with a core inside. */
  readonly stack: Stack;
  /** Width of the panel [m]. */
  readonly width: number;
  /** Width that bends along with the members, up to that of the panel [m]. */
  readonly widthAlong: number;
}

/** A panel with its members. */
export interface StiffenedPanel {
  /** Stiffness for each metre of width, the members spread out over it. */
  readonly stiffness: PanelStiffness;
  /** Flexural rigidity along x over that of the panel alone [1]. */
  readonly bendingRatio: number;
  /** Shear stiffness along x over that of the panel alone [1]. */
  readonly shearRatio: number;
  /** Mass of the members for each metre of panel [kg/m]. */
  readonly memberMassPerLength: number;
}

/**
 * A panel with bars, turned-up edges or fillets along it, as a panel that is stiffer along: so
 * that all cures of a floppy panel are compared by one method.
 *
 * Formula: D11 + (D with members − D without)/width, D the transformed section of the width that
 * bends along; S55 times S with/S without, 1/S = ∫ Q²/(D² Σ G b) dz, Q = ∫ E z dA above z, each
 * part as wide as its area over its height
 *
 * Range: panels at least as long as wide, held at their ends; a load between two members sinks
 * deeper than this. Some 1/5 of the span counts beside a member on each side (common practice, no
 * source). Across and in twist the panel stays as it is, which is on the safe side.
 *
 * Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), chapter 11 (ribs
 * spread out); shear by energy, any text on strength of materials; both from memory.
 *
 * @param panel Stack, width and width that bends along [m].
 * @param members Parts on the bag side, heights from the panel's mould side [m].
 * @returns Stiffness [N·m], [N/m], and what the members add.
 * @throws {InputError} If the stack has no core inside or a size or modulus cannot be meant.
 *
 * @example
 * ```ts
 * import { layupStack, stiffenedPanel } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { slabPart } from "@laminate/notebooks/sandwich";
 * import { assert } from "@std/assert";
 *
 * const { layups } = await readPart("data/sole-panels");
 * const panel = { stack: layupStack(layups.get("sole")!), width: 0.4, widthAlong: 0.3 };
 * const strip = slabPart("strip", { E: 18e9, density: 1800 }, {
 *   width: 0.002, bottom: 0.0108, top: 0.0408,
 * });
 * assert(stiffenedPanel(panel, [{ ...strip, G: 3e9 }]).bendingRatio > 1.5);
 * ```
 */
export function stiffenedPanel(
  panel: PlainPanel,
  members: readonly MemberPart[],
): StiffenedPanel {
  check.object("panel", panel);
  const width = check.positive("width", panel.width, "m");
  const along = check.positive("width that bends along", panel.widthAlong, "m");
  if (!(along <= width)) {
    check.refuse("width that bends along", along, `must be ${width} m or less`);
  }
  check.list("members", members, 0).forEach(checkMember);
  const plain = panelStiffness(panel.stack);
  const layers = layerParts(panel.stack, along);
  const before = transformedSection(layers);
  const after = transformedSection([...layers, ...members]);
  const added = after.flexuralRigidity - before.flexuralRigidity;
  const shearRatio = shearStiffnessOf([...layers, ...members]) / shearStiffnessOf(layers);
  const mass = members.reduce((sum, { area, density }) => sum + area * density, 0);
  const { shear } = plain;
  return Object.freeze({
    stiffness: Object.freeze({
      ...plain,
      D11: check.result("D11", plain.D11 + added / width, "N·m"),
      shear: shear === "rigid" ? shear : { ...shear, S55: shear.S55 * shearRatio },
      massPerArea: plain.massPerArea + mass / width,
    }),
    bendingRatio: check.result("bending ratio", after.flexuralRigidity / before.flexuralRigidity),
    shearRatio: check.result("shear ratio", shearRatio),
    memberMassPerLength: check.result("mass", mass, "kg/m"),
  });
}

function checkMember(part: MemberPart, i: number): void {
  check.object(`member ${i + 1}`, part);
  const name = check.text(`name of member ${i + 1}`, part.name);
  check.nonNegative(`shear modulus of ${name}`, part.G, "Pa");
  check.finite(`low of ${name}`, part.low, "m");
  check.positive(`depth of ${name}`, part.high - part.low, "m");
}

/** The panel's layers as parts; heights from its mould side. */
function layerParts(stack: Stack, width: number): readonly MemberPart[] {
  const { layers, shearStiffness, coreThickness, centroidDistance } = sectionFromStack(stack, {
    width,
  });
  const lowest = layers[0]!.bottom;
  const coreG = shearStiffness === "rigid"
    ? 0
    : shearStiffness * coreThickness / (width * centroidDistance ** 2);
  return layers.map(({ part, E, thickness, bottom, top }, i) => ({
    name: part,
    E,
    density: stack[i]!.lamina.density,
    G: part === "core" ? coreG : stack[i]!.lamina.G13,
    area: width * thickness,
    height: (bottom + top) / 2 - lowest,
    ownSecondMoment: width * thickness ** 3 / 12,
    low: bottom - lowest,
    high: top - lowest,
  }));
}

/** Points of each level's quadrature: Q² is of fourth degree there. */
const NODES = [-Math.sqrt(0.6), 0, Math.sqrt(0.6)] as const;
const WEIGHTS = [5 / 18, 8 / 18, 5 / 18] as const;

/** Shear stiffness by the energy of the shear flow, every part a rectangle [N]. */
function shearStiffnessOf(parts: readonly MemberPart[]): number {
  const { neutralAxis, flexuralRigidity } = transformedSection(parts);
  const levels = [...new Set(parts.flatMap(({ low, high }) => [low, high]))].sort((a, b) => a - b);
  const flow = (z: number): number =>
    parts.reduce((sum, { E, area, low, high }) => {
      const bottom = Math.max(z, low);
      if (!(bottom < high)) return sum;
      return sum + E * area * (high - bottom) / (high - low) *
          ((high + bottom) / 2 - neutralAxis);
    }, 0);
  let compliance = 0;
  for (let i = 1; i < levels.length; i++) {
    const [low, high] = [levels[i - 1]!, levels[i]!];
    const middle = (low + high) / 2;
    const rigidity = parts.reduce(
      (sum, part) =>
        part.low < middle && middle < part.high
          ? sum + part.G * part.area / (part.high - part.low)
          : sum,
      0,
    );
    if (!(rigidity > 0)) continue;
    NODES.forEach((node, k) => {
      const Q = flow(middle + node * (high - low) / 2);
      compliance += WEIGHTS[k]! * (high - low) * (Q / flexuralRigidity) ** 2 / rigidity;
    });
  }
  return check.positive("shear stiffness", 1 / compliance, "N");
}

/**
 * A filler fillet under cloth as a part of a member, from its rigidities as a corner.
 *
 * Formula: E A and E I of `stiffenedCorner`, in a right angle turned by 45°: height c/√2,
 * E I = (E I along + E I across the bisector)/2
 *
 * Range: as `stiffenedCorner`, 90° only; no shear counted.
 *
 * Source: turned axes of a symmetric section, any text on strength of materials.
 *
 * @param corner Fillet, putty and cloth; its angle must be 90°.
 * @param height Height of the corner [m].
 * @returns The part: putty, cloth and its resin as one.
 * @throws {InputError} If the angle is not 90° or the corner cannot be meant.
 *
 * @example
 * ```ts
 * import { filletMember } from "@laminate/notebooks/comparison";
 * import { stiffenedCorner } from "@laminate/notebooks/filler";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const corner = {
 *   radius: 0.02, cornerDeg: 90, puttyDensity: 600, puttyModulus: 1.5e9,
 *   clothThickness: 0.0005, clothModulus: 18e9, clothArealMass: 0.8, overlap: 0.04,
 * };
 * const { E, area } = filletMember(corner, 0.01);
 * assertAlmostEquals(E * area / stiffenedCorner(corner).axialStiffness, 1, 1e-12);
 * ```
 */
export function filletMember(corner: ClothedCorner, height: number): MemberPart {
  check.object("corner", corner);
  check.finite("height", height, "m");
  if (corner.cornerDeg !== 90) check.refuse("angle of the corner", corner.cornerDeg, "must be 90°");
  const made = stiffenedCorner(corner);
  const clothArea = made.clothWidth * corner.clothThickness;
  const area = check.positive("area", clothArea + corner.radius ** 2 * (1 - Math.PI / 4), "m²");
  const E = made.axialStiffness / area;
  return Object.freeze({
    name: "fillet under cloth",
    E: check.result("modulus", E, "Pa"),
    G: 0,
    density: check.result(
      "density",
      (made.puttyMassPerMetre + made.clothMassPerMetre) / area,
      "kg/m³",
    ),
    area,
    height: height + made.centroid * Math.SQRT1_2,
    ownSecondMoment: check.result(
      "second moment",
      (made.rigidityAlongBisector + made.rigidityAcrossBisector) / 2 / E,
      "m⁴",
    ),
    low: height,
    high: height + corner.radius + corner.overlap,
  });
}

/**
 * A panel that is curved across its width: its rise makes it stiff along, as a shallow shell that
 * keeps its shape.
 *
 * Formula: D11 + A11b f² 4/45, a parabola of rise f over the width; A11b the faces' and core's E A
 * for each metre of width
 *
 * Range: rise up to a tenth of the width; ends held to the curve; the load spread over the width,
 * for under a heel the curve flattens.
 *
 * Source: second moment of a parabolic arc, derived: mean of (f(1 − 4y²/b²) − 2f/3)².
 *
 * @param stack The panel's stack, with a core inside.
 * @param curve Rise and width [m].
 * @returns Stiffness for each metre of width.
 * @throws {InputError} If the rise is below 0 or above a tenth of the width.
 *
 * @example
 * ```ts
 * import { curvedPanel, layupStack } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { panelStiffness } from "@laminate/notebooks/sandwich";
 * import { assert, assertEquals } from "@std/assert";
 *
 * const { layups } = await readPart("data/sole-panels");
 * const stack = layupStack(layups.get("sole")!);
 * assertEquals(curvedPanel(stack, { rise: 0, width: 0.4 }).D11, panelStiffness(stack).D11);
 * assert(curvedPanel(stack, { rise: 0.02, width: 0.4 }).D11 > panelStiffness(stack).D11);
 * ```
 */
export function curvedPanel(
  stack: Stack,
  curve: {
    /** Rise of the middle over the edges [m]. */
    readonly rise: number;
    /** Width [m]. */
    readonly width: number;
  },
): PanelStiffness {
  check.object("curve", curve);
  const width = check.positive("width", curve.width, "m");
  const rise = check.within("rise", curve.rise, { min: 0, max: width / 10, unit: "m" });
  const plain = panelStiffness(stack);
  const { layers } = sectionFromStack(stack, { width: 1 });
  const EA = layers.reduce((sum, { E, thickness }) => sum + E * thickness, 0);
  return Object.freeze({
    ...plain,
    D11: check.result("D11", plain.D11 + EA * rise ** 2 * 4 / 45, "N·m"),
    // The arc is longer than its chord.
    massPerArea: plain.massPerArea * (1 + 8 / 3 * (rise / width) ** 2),
  });
}
