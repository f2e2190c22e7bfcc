import type { Checks } from "../check/mod.ts";
import { findRoot } from "../numeric/mod.ts";
import { type BeamSection, sandwichSection } from "../sandwich/mod.ts";
import type { Correlation } from "../statistics/mod.ts";
import { sectionModuli } from "./section_moduli.ts";

/** The shape of a sandwich beam, without uncertainties. */
export interface SectionShape {
  readonly width: number;
  readonly core: number;
  readonly top: number;
  readonly bottom: number;
  /** Modulus of the bottom face over that of the top [1]. */
  readonly moduliRatio: number;
  /** In-plane modulus of the core [Pa]. */
  readonly coreE: number;
}

/** Flexural rigidity for a modulus of the top face [N·m²]. */
export function rigidityOf(E: number, shape: SectionShape): number {
  const { width, core, top, bottom, moduliRatio, coreE } = shape;
  return sandwichSection({
    width,
    topFace: { thickness: top, E },
    bottomFace: { thickness: bottom, E: moduliRatio * E },
    core: { thickness: core, E: coreE, G: 1 },
  }).flexuralRigidity;
}

/** Modulus of the top face for a flexural rigidity; undefined where the core alone has more [Pa]. */
export function faceModulusOf(D: number, shape: SectionShape): number | undefined {
  // Without the core's help D goes as E; with it E is less.
  const most = D / rigidityOf(1, { ...shape, coreE: 0 });
  if (shape.coreE === 0) return most;
  if (!(D > coreRigidityOf(shape))) return undefined;
  // A little beyond, since rounding may put the crossing there where the core hardly helps.
  return findRoot((E) => rigidityOf(E, shape) / D - 1, { from: 1e-9 * most, to: 1.0001 * most });
}

/** What the core alone has of a flexural rigidity [N·m²]. */
export function coreRigidityOf({ coreE, width, core }: SectionShape): number {
  return coreE * width * core ** 3 / 12;
}

/** Shear stiffness for each pascal of the core's shear modulus, b d²/c [m²]. */
export function shearAreaOf({ width, core, top, bottom }: SectionShape): number {
  const d = core + (top + bottom) / 2;
  return width * d * d / core;
}

/** The shape of a predicted section, its faces each as one layer. */
export function shapeOfSection(section: BeamSection): SectionShape {
  const { beam } = sectionModuli(section);
  return {
    width: beam.width.value,
    core: beam.coreThickness.value,
    top: beam.topThickness.value,
    bottom: beam.bottomThickness!.value,
    moduliRatio: beam.moduliRatio!,
    coreE: beam.coreE!,
  };
}

/** Correlations between inputs that are there: a cloth of another schedule has none. */
export function amongInputs(
  check: Checks,
  correlations: readonly Correlation[],
  inputs: Readonly<Record<string, unknown>>,
): readonly Correlation[] {
  check.shape("correlations", correlations, [{ between: ["words"], coefficient: "number" }]);
  return correlations.filter(({ between }) => between.every((name) => inputs[name] !== undefined));
}
