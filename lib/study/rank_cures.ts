import { checksFor } from "../check/mod.ts";

const check = checksFor("rank the cures");

/** A way to make a part, with what it does and costs. */
export interface Cure {
  /** What it is. */
  readonly name: string;
  /** Deflection of the part with it [m]. */
  readonly deflection: number;
  /** Mass of the part with it [kg]. */
  readonly mass: number;
  /** Cost of the part with it, in the crew's own money [1]. */
  readonly cost: number;
  /** Working time of the part with it [s]. */
  readonly time: number;
}

/** What a cure buys and what it takes. */
export interface RankedCure extends Cure {
  /** Deflection with it over deflection without [1]. */
  readonly deflectionRatio: number;
  /** Mass that it adds [kg]. */
  readonly addedMass: number;
  /** Cost that it adds [1]. */
  readonly addedCost: number;
  /** Working time that it adds [s]. */
  readonly addedTime: number;
  /** Stiffness gained, as share, for each kilogram added; none if it adds no mass [1/kg]. */
  readonly gainPerMass: number | undefined;
  /** Stiffness gained, as share, for each unit of money; none if it adds no cost [1]. */
  readonly gainPerCost: number | undefined;
  /** Stiffness gained, as share, for each second of work; none if it adds no work [1/s]. */
  readonly gainPerTime: number | undefined;
  /** Place by gain for mass, cost and time, 1 the best; free gains come first. */
  readonly rank: {
    /** By gain for mass. */
    readonly mass: number;
    /** By gain for cost. */
    readonly cost: number;
    /** By gain for working time. */
    readonly time: number;
  };
}

/**
 * Ranks ways to stiffen a part by what they buy for their grams, money and hours.
 *
 * Formula: gain = (deflection without/deflection with) − 1, over mass, cost or time added
 *
 * Range: cures compared on one part under one load; deflection of all by the same method.
 *
 * Source: definition.
 *
 * @param without The part as it is.
 * @param cures The part with each cure.
 * @returns The cures, in the order of gain for mass.
 * @throws {InputError} If a deflection is not above 0 or a mass, cost or time is no number.
 *
 * @example
 * ```ts
 * import { rankCures } from "@laminate/notebooks/study";
 * import { assertEquals } from "@std/assert";
 *
 * const plain = { name: "as it is", deflection: 0.01, mass: 1, cost: 10, time: 3600 };
 * const ranked = rankCures(plain, [
 *   { name: "another ply", deflection: 0.007, mass: 1.4, cost: 14, time: 5400 },
 *   { name: "thicker core", deflection: 0.004, mass: 1.2, cost: 13, time: 3600 },
 * ]);
 * assertEquals(ranked.map(({ name }) => name), ["thicker core", "another ply"]);
 * ```
 */
export function rankCures(without: Cure, cures: readonly Cure[]): readonly RankedCure[] {
  checkCure(without, "the part as it is");
  check.list("cures", cures, 0);
  cures.forEach((cure, i) => checkCure(cure, `cure ${i + 1}`));
  const gained = cures.map((cure) => {
    const gain = check.result("gain", without.deflection / cure.deflection - 1);
    const per = (added: number): number | undefined =>
      added > 0 ? check.result("gain", gain / added) : undefined;
    const addedMass = check.result("mass added", cure.mass - without.mass, "kg");
    const addedCost = check.result("cost added", cure.cost - without.cost);
    const addedTime = check.result("time added", cure.time - without.time, "s");
    return {
      ...cure,
      deflectionRatio: check.result("ratio", cure.deflection / without.deflection),
      gain,
      addedMass,
      addedCost,
      addedTime,
      gainPerMass: per(addedMass),
      gainPerCost: per(addedCost),
      gainPerTime: per(addedTime),
    };
  });
  type Gained = typeof gained[number];
  const places = (key: "gainPerMass" | "gainPerCost" | "gainPerTime"): Map<Gained, number> => {
    // A cure that adds nothing and gains stands before all that add something.
    const worth = (cure: Gained): number =>
      cure[key] ?? (cure.gain > 0 ? Infinity : cure.gain < 0 ? -Infinity : 0);
    const order = gained.toSorted((a, b) =>
      worth(a) === worth(b) ? b.gain - a.gain : worth(b) > worth(a) ? 1 : -1
    );
    return new Map(order.map((cure, i) => [cure, i + 1]));
  };
  const [mass, cost, time] = [
    places("gainPerMass"),
    places("gainPerCost"),
    places("gainPerTime"),
  ];
  return Object.freeze(
    gained.map((cure): RankedCure => {
      const { gain: _gain, ...rest } = cure;
      const place = (from: Map<Gained, number>): number => from.get(cure) ?? 0;
      return { ...rest, rank: { mass: place(mass), cost: place(cost), time: place(time) } };
    }).sort((a, b) => a.rank.mass - b.rank.mass),
  );
}

function checkCure(cure: Cure, where: string): void {
  check.object(where, cure);
  check.positive(`deflection of ${where}`, cure.deflection, "m");
  check.finite(`mass of ${where}`, cure.mass, "kg");
  check.finite(`cost of ${where}`, cure.cost);
  check.finite(`time of ${where}`, cure.time, "s");
}
