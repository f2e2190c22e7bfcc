import { checksFor } from "../check/mod.ts";
import { layerContents } from "../constituents/mod.ts";
import type { PanelRecipe } from "./panel_design.ts";

const check = checksFor("estimate what the panel takes");

/** Prices in the crew's own money, and working times. */
export interface PanelRates {
  /** Price of the cloth for each area [1/m²]. */
  readonly clothPrice: number;
  /** Price of mixed resin for each mass [1/kg]. */
  readonly resinPrice: number;
  /** Price of the core for each volume [1/m³]. */
  readonly corePrice: number;
  /** Working time for each ply and area [s/m²]. */
  readonly timePerPly: number;
  /** Working time for the core for each area [s/m²]. */
  readonly timePerCore: number;
  /** Share of cloth, resin and core that goes to waste: 0.15 for 15 % [1]. */
  readonly waste: number;
}

/** What a panel takes in money and time. */
export interface PanelCosts {
  /** Cost of materials, waste included [1]. */
  readonly cost: number;
  /** Working time [s]. */
  readonly time: number;
  /** Mass of resin to mix, waste and the core's uptake included [kg]. */
  readonly resinMass: number;
}

/**
 * Materials and working time of a panel made from a recipe: rough, to compare choices with.
 *
 * Formula: areas and masses of the recipe times prices, times (1 + waste); plies and core times
 * their working time
 *
 * Range: to rank choices; for a quotation see the shop room's plans.
 *
 * Source: definition.
 *
 * @param recipe What it is made of.
 * @param area Area of the panel [m²].
 * @param rates Prices and times.
 * @returns Cost [1], working time [s], resin to mix [kg].
 * @throws {InputError} If an area is not above 0 or a rate below 0.
 *
 * @example
 * ```ts
 * import { panelCosts } from "@laminate/notebooks/study";
 * import { readCatalogue } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const { fibres, resins, reinforcements, cores } = await readCatalogue();
 * const recipe = {
 *   reinforcement: reinforcements.get("glass twill 200")!,
 *   fibre: fibres.get("E-glass")!,
 *   resin: resins.get("epoxy laminating slow")!,
 *   fibreFraction: 0.4,
 *   pliesMould: 2,
 *   pliesBag: 2,
 *   core: cores.get("PVC foam 80")!,
 *   coreThickness: 0.01,
 * };
 * const rates = {
 *   clothPrice: 8, resinPrice: 15, corePrice: 2000, timePerPly: 1200, timePerCore: 1800, waste: 0.2,
 * };
 * assertEquals(panelCosts(recipe, 0.5, rates).time, 0.5 * (4 * 1200 + 1800));
 * ```
 */
export function panelCosts(recipe: PanelRecipe, area: number, rates: PanelRates): PanelCosts {
  check.object("recipe", recipe);
  check.positive("area", area, "m²");
  const { reinforcement, fibre, resin: mixed, core } = recipe;
  for (const [name, value] of Object.entries({ reinforcement, fibre, resin: mixed, core })) {
    check.object(name, value);
  }
  check.nonNegative("resin uptake of the core", core.resinUptake, "kg/m²");
  check.object("rates", rates);
  const names = ["clothPrice", "resinPrice", "corePrice", "timePerPly", "timePerCore"] as const;
  for (const name of names) check.nonNegative(name, rates[name]);
  check.within("waste", rates.waste, { min: 0, max: 2 });
  const plies = check.count("plies on the mould side", recipe.pliesMould, 1) +
    check.count("plies on the bag side", recipe.pliesBag, 1);
  check.positive("core thickness", recipe.coreThickness, "m");
  const { resinPerArea } = layerContents({
    arealWeight: reinforcement.arealWeight,
    fibreDensity: fibre.density,
    resinDensity: mixed.density,
    fibreVolumeFraction: recipe.fibreFraction,
    plies: 1,
  });
  const resin = area * (plies * resinPerArea + 2 * core.resinUptake);
  const materials = area * plies * rates.clothPrice + resin * rates.resinPrice +
    area * recipe.coreThickness * rates.corePrice;
  return Object.freeze({
    cost: check.result("cost", materials * (1 + rates.waste)),
    time: check.result("time", area * (plies * rates.timePerPly + rates.timePerCore), "s"),
    resinMass: check.result("resin", resin * (1 + rates.waste), "kg"),
  });
}
