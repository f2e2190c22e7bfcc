/** A strip of a panel with a member on it, as one section. */
import { checksFor } from "../check/mod.ts";
import type { Stack } from "../materials/mod.ts";
import { sectionFromStack, transformedSection } from "../sandwich/mod.ts";
import type { MemberPart } from "./member_beams.ts";

const check = checksFor("compute the members");

/** The panel's layers as parts; heights from its mould side. */
export function layerParts(stack: Stack, width: number): readonly MemberPart[] {
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

/** A gap below this is a line of glue, or rounding [m]. */
const GLUE_LINE = 5e-4;

/** Shear stiffness by the energy of the shear flow, each part a rectangle; 0 if one slides [N]. */
export function shearStiffnessOf(parts: readonly MemberPart[]): number {
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
    if (!(rigidity > 0)) {
      if (high - low < GLUE_LINE) continue;
      // A gap, or a level that carries no shear: what is above it would slide.
      return 0;
    }
    NODES.forEach((node, k) => {
      const Q = flow(middle + node * (high - low) / 2);
      compliance += WEIGHTS[k]! * (high - low) * (Q / flexuralRigidity) ** 2 / rigidity;
    });
  }
  return check.result("shear stiffness", 1 / compliance, "N");
}
