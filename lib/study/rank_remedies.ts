import { checksFor } from "../check/mod.ts";

const check = checksFor("rank the remedies");

/** A way to make a part, with what it does and costs. */
export interface Remedy {
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

/** What a remedy buys and what it takes. */
export interface RankedRemedy extends Remedy {
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
 * Range: remedies compared on one part under one load; deflection of all by the same method.
 *
 * Source: definition.
 *
 * @param without The part as it is.
 * @param remedies The part with each remedy.
 * @returns The remedies, in the order of gain for mass.
 * @throws {InputError} If a deflection is not above 0 or a mass, cost or time is no number.
 *
 * @example
 * ```ts
 * import { rankRemedies } from "@laminate/notebooks/study";
 * import { assertEquals } from "@std/assert";
 *
 * const plain = { name: "as it is", deflection: 0.01, mass: 1, cost: 10, time: 3600 };
 * const ranked = rankRemedies(plain, [
 *   { name: "another ply", deflection: 0.007, mass: 1.4, cost: 14, time: 5400 },
 *   { name: "thicker core", deflection: 0.004, mass: 1.2, cost: 13, time: 3600 },
 * ]);
 * assertEquals(ranked.map(({ name }) => name), ["thicker core", "another ply"]);
 * ```
 */
export function rankRemedies(
  without: Remedy,
  remedies: readonly Remedy[],
): readonly RankedRemedy[] {
  checkRemedy(without, "the part as it is");
  check.list("remedies", remedies, 0);
  remedies.forEach((remedy, i) => checkRemedy(remedy, `remedy ${i + 1}`));
  const gained = remedies.map((remedy) => {
    const gain = check.result("gain", without.deflection / remedy.deflection - 1);
    const per = (added: number): number | undefined =>
      added > 0 ? check.result("gain", gain / added) : undefined;
    const addedMass = check.result("mass added", remedy.mass - without.mass, "kg");
    const addedCost = check.result("cost added", remedy.cost - without.cost);
    const addedTime = check.result("time added", remedy.time - without.time, "s");
    return {
      ...remedy,
      deflectionRatio: check.result("ratio", remedy.deflection / without.deflection),
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
    // A remedy that adds nothing and gains stands before all that add something.
    const worth = (remedy: Gained): number =>
      remedy[key] ?? (remedy.gain > 0 ? Infinity : remedy.gain < 0 ? -Infinity : 0);
    const order = gained.toSorted((a, b) =>
      worth(a) === worth(b) ? b.gain - a.gain : worth(b) > worth(a) ? 1 : -1
    );
    return new Map(order.map((remedy, i) => [remedy, i + 1]));
  };
  const [mass, cost, time] = [
    places("gainPerMass"),
    places("gainPerCost"),
    places("gainPerTime"),
  ];
  return Object.freeze(
    gained.map((remedy): RankedRemedy => {
      const { gain: _gain, ...rest } = remedy;
      const place = (from: Map<Gained, number>): number => from.get(remedy) ?? 0;
      return { ...rest, rank: { mass: place(mass), cost: place(cost), time: place(time) } };
    }).sort((a, b) => a.rank.mass - b.rank.mass),
  );
}

function checkRemedy(remedy: Remedy, where: string): void {
  check.object(where, remedy);
  check.positive(`deflection of ${where}`, remedy.deflection, "m");
  check.finite(`mass of ${where}`, remedy.mass, "kg");
  check.finite(`cost of ${where}`, remedy.cost);
  check.finite(`time of ${where}`, remedy.time, "s");
}
