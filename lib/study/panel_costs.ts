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
 * import { panelCosts, type PanelRates, type PanelRecipe } from "@laminate/notebooks/study";
 * import { InputError } from "@laminate/notebooks/check";
 * import { assertThrows } from "@std/assert";
 *
 * const run = () => panelCosts({} as PanelRecipe, 0, {} as PanelRates);
 * assertThrows(run, InputError, "area is 0 m²");
 * ```
 */
export function panelCosts(recipe: PanelRecipe, area: number, rates: PanelRates): PanelCosts {
  check.object("recipe", recipe);
  check.positive("area", area, "m²");
  check.object("rates", rates);
  const names = ["clothPrice", "resinPrice", "corePrice", "timePerPly", "timePerCore"] as const;
  for (const name of names) check.nonNegative(name, rates[name]);
  check.within("waste", rates.waste, { min: 0, max: 2 });
  const plies = check.count("plies on the mould side", recipe.pliesMould, 1) +
    check.count("plies on the bag side", recipe.pliesBag, 1);
  check.positive("core thickness", recipe.coreThickness, "m");
  const { resinPerArea } = layerContents({
    arealWeight: recipe.reinforcement.arealWeight,
    fibreDensity: recipe.fibre.density,
    resinDensity: recipe.resin.density,
    fibreVolumeFraction: recipe.fibreFraction,
    plies: 1,
  });
  const resin = area * (plies * resinPerArea + 2 * recipe.core.resinUptake);
  const materials = area * plies * rates.clothPrice + resin * rates.resinPrice +
    area * recipe.coreThickness * rates.corePrice;
  return Object.freeze({
    cost: check.result("cost", materials * (1 + rates.waste)),
    time: area * (plies * rates.timePerPly + rates.timePerCore),
    resinMass: resin * (1 + rates.waste),
  });
}
