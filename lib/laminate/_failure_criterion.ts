/** The surface of each lamina for the criterion that was chosen, and what a reader must know. */
import type { Checks } from "../check/mod.ts";
import type { Lamina, Stack } from "../materials/mod.ts";
import {
  checkFactor,
  checkInteraction,
  checkSlopes,
  checkStrainAllowables,
  checkStrengths,
  strainLimits,
  stressLimits,
} from "./_failure_checks.ts";
import { failureCriteria, type FailureOptions } from "./failure_criterion.ts";
import { glassPuckSlopes } from "./failure_puck.ts";
import { knockDownStrengths } from "./failure_strengths.ts";
import type { Surface } from "./_failure_surface.ts";
import {
  hashinSurface,
  hillSurface,
  hillTensileSurface,
  limitSurface,
  puckSurface,
  wuSurface,
} from "./_failure_surfaces.ts";

/** The surface of one lamina, and in which quantity it is drawn. */
export interface LaminaSurface {
  readonly surface: Surface;
  /** The same for fibres alone: all that a ply with a cracked matrix still has. */
  readonly fibres: Surface;
  readonly drawnIn: "stress" | "strain";
}

/** A surface for each ply; none for one that the criterion does not judge (a core). */
export function surfacesFor(
  check: Checks,
  stack: Stack,
  options: FailureOptions,
): readonly (LaminaSurface | undefined)[] {
  check.object("set of options", options);
  check.oneOf("criterion", options.criterion, failureCriteria);
  checkFactor(check, options.knockDown ?? 1, "knock-down");
  const made = new Map<Lamina, LaminaSurface | undefined>();
  return stack.map(({ lamina }) => {
    if (!made.has(lamina)) made.set(lamina, laminaSurface(check, lamina, options));
    return made.get(lamina);
  });
}

function laminaSurface(
  check: Checks,
  lamina: Lamina,
  options: FailureOptions,
): LaminaSurface | undefined {
  const where = `${lamina.name} `;
  const { knockDown = 1 } = options;
  if (options.criterion === "maximum strain") {
    const allowables = owned(options.allowables, lamina.name);
    if (allowables === undefined && lamina.strengths === undefined) return undefined;
    checkStrainAllowables(check, allowables!, where);
    const limits = strainLimits(allowables!);
    const surface = limitSurface({
      tension1: limits.tension1 * knockDown,
      compression1: limits.compression1 * knockDown,
      tension2: limits.tension2 * knockDown,
      compression2: limits.compression2 * knockDown,
      shear: limits.shear * knockDown,
    });
    return { surface, fibres: fibresOf(surface), drawnIn: "strain" };
  }
  if (lamina.strengths === undefined) return undefined;
  checkStrengths(check, lamina.strengths, where);
  const strengths = knockDownStrengths(lamina.strengths, knockDown);
  const surface = stressSurface(check, { ...lamina, strengths }, options);
  return { surface, fibres: fibresOf(limitSurface(stressLimits(strengths))), drawnIn: "stress" };
}

function stressSurface(
  check: Checks,
  { name, strengths }: Required<Pick<Lamina, "name" | "strengths">>,
  options: FailureOptions,
): Surface {
  switch (options.criterion) {
    case "Tsai-Hill":
      return hillSurface(strengths);
    case "Tsai-Hill, tensile strengths":
      return hillTensileSurface(strengths);
    case "Tsai-Wu": {
      const { interaction = -0.5 } = options;
      checkInteraction(check, interaction);
      return wuSurface(strengths, interaction);
    }
    case "Hashin": {
      const given = owned(options.transverseShearStrengths, name);
      if (given !== undefined) check.positive(`${name} transverse shear strength`, given, "Pa");
      const S23 = given === undefined ? strengths.Yc / 2 : given * (options.knockDown ?? 1);
      const { shearInFibreTension = 1 } = options;
      check.fraction("share of shear in fibre tension", shearInFibreTension);
      return hashinSurface({ ...strengths, S23 }, shearInFibreTension);
    }
    case "Puck": {
      const { slopes = glassPuckSlopes } = options;
      checkSlopes(check, strengths, slopes);
      return puckSurface(strengths, slopes);
    }
    default:
      return limitSurface(stressLimits(strengths));
  }
}

/** The two sides of a box that belong to the fibres. */
function fibresOf({ pieces, limits }: Surface): Surface {
  return { pieces: pieces.filter(({ mode }) => mode === "1t" || mode === "1c"), limits };
}

function owned<T>(table: Readonly<Record<string, T>> | undefined, name: string): T | undefined {
  return table !== undefined && Object.hasOwn(table, name) ? table[name] : undefined;
}

/** Modulus across over modulus along from which a ply is taken for a cloth [1]. */
export const CLOTH_RATIO = 0.4;

/** What a reader of the verdict must know, whatever came out. */
export function failureNotes(stack: Stack, options: FailureOptions): readonly string[] {
  const notes: string[] = [];
  if ((options.knockDown ?? 1) === 1) {
    notes.push(
      "Strengths were taken in full. Coupons scatter and hand-laid parts scatter more: " +
        "give a knock-down before anyone relies on the figure.",
    );
  }
  const judged = (lamina: Lamina): boolean =>
    lamina.strengths !== undefined ||
    options.criterion === "maximum strain" && owned(options.allowables, lamina.name) !== undefined;
  const laminae = [...new Set(stack.map(({ lamina }) => lamina))];
  const skipped = laminae.filter((lamina) => !judged(lamina));
  if (skipped.length > 0) {
    const names = skipped.map(({ name }) => name).join(", ");
    notes.push(`Not judged, since without strengths here: ${names}.`);
  }
  if (options.criterion === "Hashin" || options.criterion === "Puck") {
    const cloths = laminae.filter((lamina) =>
      judged(lamina) && lamina.E2 / lamina.E1 > CLOTH_RATIO
    );
    if (cloths.length > 0) {
      notes.push(
        `${options.criterion}'s conditions for the matrix are made for unidirectional plies; ` +
          `as stiff across as a cloth: ${cloths.map(({ name }) => name).join(", ")}.`,
      );
    }
  }
  if (options.criterion === "Hashin") {
    const guessed = laminae.filter((lamina) =>
      judged(lamina) && owned(options.transverseShearStrengths, lamina.name) === undefined
    );
    if (guessed.length > 0) {
      notes.push(
        `Transverse shear strength taken as half the compressive strength across: ${
          guessed.map(({ name }) => name).join(", ")
        }.`,
      );
    }
  }
  return notes;
}
