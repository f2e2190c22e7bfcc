import { checksFor } from "../check/mod.ts";
import type { Core, Fibre, Resin } from "../materials/mod.ts";
import type { LayerRecord, LayupRecord } from "../records/mod.ts";
import { checkLayup } from "./_layup_checks.ts";

const check = checksFor("take the low end");

/** Figures that count as what a material stands, or as what keeps a face from buckling. */
const STANDS = /Strength|Modulus/;

/**
 * A material at the low end of its usual range: every strength, and of a core every modulus, as
 * low as the catalogue gives it. Beside a reserve at usual figures it says how little may be left.
 *
 * Formula: the low end of `typical`, where there is one
 *
 * Range: all at once is rarer than each alone, so that it is a cautious bound within the ranges;
 * hand-made parts may lie below. Moduli of fibres and resins stay.
 *
 * Source: definition.
 *
 * @param material A fibre, resin or core of the catalogue.
 * @returns The same with low figures.
 * @throws {InputError} If the material or its ranges are missing, or a low end is not above 0 or above
 * the usual figure.
 *
 * @example
 * ```ts
 * import { atLowEnd } from "@laminate/notebooks/comparison";
 * import { readCatalogue } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const foam = (await readCatalogue()).cores.get("PVC foam 80")!;
 * const { shearStrengthL, shearModulusL, density } = atLowEnd(foam);
 * assertEquals([shearStrengthL, shearModulusL, density], [0.88e6, 21.6e6, 80]);
 * ```
 */
export function atLowEnd<Material extends Fibre | Resin | Core>(material: Material): Material {
  check.object("material", material);
  const figures = material as unknown as Readonly<Record<string, unknown>>;
  for (const [name, value] of Object.entries(figures)) {
    if (typeof value === "number") check.finite(name, value);
  }
  const ranges = Object.entries(check.object("ranges of the material", material.typical));
  const low = ranges.filter(([name]) => STANDS.test(name) && name in material)
    .map(([name, range]) => {
      const end = check.object(`range of ${name}`, range as object) as { readonly low: number };
      check.positive(`low end of ${name}`, end.low);
      const usual = check.positive(name, figures[name] as number);
      return [name, check.within(`low end of ${name}`, end.low, { min: 0, max: usual })];
    });
  return Object.freeze({ ...material, ...Object.fromEntries(low) });
}

/**
 * A lay-up schedule with every fibre, resin and core at the low end, see `atLowEnd`.
 *
 * Formula: none
 *
 * Range: as `atLowEnd`.
 *
 * Source: definition.
 *
 * @param layup The schedule, materials filled in.
 * @returns The schedule with low figures.
 * @throws {InputError} If the schedule cannot be meant.
 *
 * @example
 * ```ts
 * import { layupAtLowEnd, layupDesign, layupStack } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const sole = layupAtLowEnd((await readPart("data/sole-panels")).layups.get("sole")!);
 * const { core } = layupDesign(sole, layupStack(sole))!;
 * assertAlmostEquals(core.compressive, 1.04e6, 1e-6);
 * ```
 */
export function layupAtLowEnd(layup: LayupRecord): LayupRecord {
  checkLayup(check, layup);
  return Object.freeze({
    ...layup,
    layers: layup.layers.map((layer): LayerRecord => {
      if (layer.kind === "core") {
        return {
          ...layer,
          core: atLowEnd(layer.core),
          ...(layer.resin === undefined ? {} : { resin: atLowEnd(layer.resin) }),
        };
      }
      return { ...layer, fibre: atLowEnd(layer.fibre), resin: atLowEnd(layer.resin) };
    }),
  });
}
