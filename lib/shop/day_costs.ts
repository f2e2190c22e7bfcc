import { checkTask } from "./_day_costs_checks.ts";
import { type Skim } from "../filler/mod.ts";
import { addUpCosts, type CostLine, type CostPlan, type ThreePoint } from "./cost_plan.ts";
import { type BagPlan, USUAL_BAGGING } from "./bagging.ts";
import type { DayPlan } from "./day_plan.ts";
import type { Paint } from "./paint.ts";

/** What things cost, in the crew's own money. */
export interface DayPrices {
  /** Cloth off the roll [1/m²]. */
  readonly clothPerArea: number;
  /** Core by the sheet [1/m²]. */
  readonly corePerArea: number;
  /** Resin with its hardener [1/kg]. */
  readonly resinPerMass: number;
  /** Peel ply, film, breather and bag film, on the average [1/m²]. */
  readonly bagPerArea: number;
  /** Sealant tape [1/m]. */
  readonly tapePerLength: number;
  /** Gloves, cups, brushes, blades for the day [1]. */
  readonly smallThings: number;
  /** Paint [1/m³]. */
  readonly paintPerVolume: number;
}

/** How long one pair of hands takes. */
export interface DayPaces {
  /** Cutting cloth and core, for one square metre of it [s/m²]. */
  readonly cutting: ThreePoint;
  /** Bagging the part, the leak-down test included [s]. */
  readonly bagging: ThreePoint;
  /** Demoulding and trimming, for one part [s]. */
  readonly trimming: ThreePoint;
  /** Spreading a skim of filler, for one square metre [s/m²]. */
  readonly fairing: ThreePoint;
  /** Sanding, for one square metre [s/m²]. */
  readonly sanding: ThreePoint;
  /** Painting one coat, for one square metre [s/m²]. */
  readonly painting: ThreePoint;
}

/** Minutes for one square metre, part or bag, as a guess to start from [s]. */
function minutes(low: number, likely: number, high: number): ThreePoint {
  return { low: 60 * low, likely: 60 * likely, high: 60 * high };
}

/** Paces to start from: common practice, no source. Time a day and put in your own. */
export const USUAL_PACES: DayPaces = {
  cutting: minutes(5, 10, 20),
  bagging: USUAL_BAGGING,
  trimming: minutes(20, 40, 90),
  fairing: minutes(10, 20, 40),
  sanding: minutes(30, 60, 150),
  painting: minutes(8, 15, 30),
};

/** A day's plan with all that is needed to say what it weighs, costs and takes. */
export interface DayCostTask {
  /** The plan. */
  readonly plan: DayPlan;
  /** Parts that are made at once [1]. */
  readonly parts: number;
  /** Hands at the lay-up [1]. */
  readonly hands: number;
  /** Share of the laminate that is trimmed off [1]. */
  readonly trimmedShare: number;
  /** Area that is faired, sanded and painted [m²]. */
  readonly finishedArea: number;
  /** Fairing skim over that area. */
  readonly skim: Skim;
  /** Paint over that area. */
  readonly paint: Paint;
  /** Coats of it [1]. */
  readonly coats: number;
  /** Prices. */
  readonly prices: DayPrices;
  /** Paces. */
  readonly paces: DayPaces;
  /** How far the resin of a hand lay-up strays: its least and most over the plan [1]. */
  readonly resinStray: { readonly low: number; readonly high: number };
}

/**
 * Mass, cost and working time of a day's part by item, with ranges: cut, laid, bagged, trimmed,
 * filled, faired, sanded and painted.
 *
 * The likely masses of laying up add up to what the plan expects on the scale before trimming.
 *
 * Formula: sums of the plan's items; trimming −share × (cloth + resin in it); hours of laying up =
 * hands × time to the last pot
 *
 * Range: prices and paces are the crew's own; a range is a guess until a day was timed.
 *
 * Source: mass balance; `addUpCosts` for the sums.
 *
 * @param task Plan, parts, hands, finishing, prices and paces.
 * @returns Items and sums with ranges: mass [kg], cost, time [s].
 * @throws {InputError} If an input is outside its range.
 *
 * @example
 * ```ts
 * import { dayCosts } from "@laminate/notebooks/shop";
 * import { InputError } from "@laminate/notebooks/check";
 * import { assertThrows } from "@std/assert";
 *
 * assertThrows(() => dayCosts(undefined as never), InputError, "task is missing");
 * ```
 */
export function dayCosts(task: DayCostTask): CostPlan {
  checkTask(task);
  const { plan } = task;
  const time = (pace: ThreePoint, amount: number): ThreePoint => scaled(pace, amount);
  const cut = plan.cloths.reduce((sum, { pieceArea }) => sum + pieceArea, 0) +
    plan.cores.reduce((sum, { footArea }) => sum + footArea, 0);
  const { paces, finishedArea, parts } = task;
  return addUpCosts([
    { item: "cutting cloth and core", operation: "cutting", time: time(paces.cutting, cut) },
    ...plan.cloths.map((cloth) => clothLine(cloth, task)),
    ...plan.cores.map((core) => coreLine(core, task)),
    resinLine(task),
    layingLine(task),
    ...(plan.bag === undefined ? [] : [bagLine(plan.bag, task)]),
    {
      item: "gloves, cups, blades",
      operation: "laying up",
      cost: about(task.prices.smallThings, { low: 0.8, high: 1.5 }),
    },
    {
      item: "trimmed off again",
      operation: "trimming",
      mass: scaled(exactly(trimmedMass(task)), -1),
      time: time(paces.trimming, parts),
    },
    ...filletLines(plan),
    ...finishLines(task, finishedArea),
  ]);
}

function clothLine(cloth: DayPlan["cloths"][number], { prices }: DayCostTask): CostLine {
  const roll = cloth.rollWidth * cloth.rollLength;
  return {
    item: cloth.name,
    operation: "laying up",
    // Cloth is sold to a tolerance of 5 % (common practice, no source).
    mass: about(cloth.pieceMass, { low: 0.95, high: 1.05 }),
    cost: { ...about(roll * prices.clothPerArea, { low: 1, high: 1.15 }) },
  };
}

function coreLine(core: DayPlan["cores"][number], { prices }: DayCostTask): CostLine {
  const bought = core.footArea / (1 - core.waste);
  return {
    item: core.name,
    operation: "laying up",
    mass: about(core.mass, { low: 0.92, high: 1.08 }),
    cost: {
      low: core.footArea * prices.corePerArea,
      likely: bought * prices.corePerArea,
      high: bought * prices.corePerArea,
    },
  };
}

function resinLine({ plan, prices, resinStray }: DayCostTask): CostLine {
  const { inPart, total } = plan.resin;
  return {
    item: "resin and hardener",
    operation: "laying up",
    mass: about(inPart, resinStray),
    cost: {
      low: total * prices.resinPerMass,
      likely: total * prices.resinPerMass,
      high: (total + plan.batches.spareMass) * prices.resinPerMass,
    },
  };
}

function layingLine({ plan, hands }: DayCostTask): CostLine {
  const { finishAt, task: { rateSpread } } = plan.batches;
  return {
    item: "laying and wetting",
    operation: "laying up",
    time: about(hands * finishAt, { low: 1 / (1 + rateSpread), high: 1 / (1 - rateSpread) }),
  };
}

function bagLine(bag: BagPlan, { prices, paces }: DayCostTask): CostLine {
  const area = bag.layers.reduce((sum, layer) => sum + layer.area, 0);
  const cost = area * prices.bagPerArea + bag.tapeLength * prices.tapePerLength;
  return {
    item: "bag materials and tape",
    operation: "bagging",
    cost: about(cost, { low: 0.9, high: 1.4 }),
    time: paces.bagging,
  };
}

function filletLines({ fillets }: DayPlan): readonly CostLine[] {
  return fillets === undefined ? [] : [{
    item: "putty in fillets",
    operation: "filleting",
    mass: about(fillets.mass, { low: 0.9, high: 1.3 }),
  }];
}

function finishLines(task: DayCostTask, area: number): readonly CostLine[] {
  const { skim, paint, coats, paces, prices } = task;
  if (area === 0) return [];
  return [
    {
      item: "filler skim as spread",
      operation: "fairing skim",
      mass: about(skim.massApplied, { low: 0.7, high: 1.6 }),
      time: scaled(paces.fairing, area),
    },
    {
      item: "sanded off again",
      operation: "sanding",
      mass: scaled(about(skim.massSanded, { low: 0.7, high: 1.3 }), -1),
      time: scaled(paces.sanding, area),
    },
    {
      item: "paint, dry",
      operation: "painting",
      mass: about(paint.mass, { low: 0.8, high: 1.4 }),
      cost: about(paint.volume * prices.paintPerVolume, { low: 1, high: 1.5 }),
      time: scaled(paces.painting, area * coats),
    },
  ];
}

/** Cloth cut, core and resin of the day; the trim takes its share of cloth and resin alone. */
function trimmedMass({ plan, trimmedShare }: DayCostTask): number {
  const cloth = plan.cloths.reduce((sum, { pieceMass }) => sum + pieceMass, 0);
  const resin = plan.resin.lines
    .filter(({ where }) => where === "cloth" || where === "coat")
    .reduce((sum, { mass }) => sum + mass, 0);
  return trimmedShare * (cloth + resin);
}

function exactly(value: number): ThreePoint {
  return { low: value, likely: value, high: value };
}

function about(
  likely: number,
  share: { readonly low: number; readonly high: number },
): ThreePoint {
  return { low: likely * share.low, likely, high: likely * share.high };
}

function scaled({ low, likely, high }: ThreePoint, by: number): ThreePoint {
  return by < 0
    ? { low: high * by, likely: likely * by, high: low * by }
    : { low: low * by, likely: likely * by, high: high * by };
}
