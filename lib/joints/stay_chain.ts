import { checksFor } from "../check/mod.ts";
import { designLoad, type LoadFactors, type Verdict } from "./design_load.ts";

const check = checksFor("compute the chain of the stay");

/** One link between panel and anchorage: wire, terminal, adjuster, shackle, eye, bolt. */
export interface StayLink {
  /** What it is. */
  readonly name: string;
  /** Load at which it breaks, from its maker or a test [N]. */
  readonly breakingLoad: number;
  /** What is left of that as fitted: a wire in clamped loops, a side-loaded shackle [1]. */
  readonly efficiency: number;
}

/** One link with what it has in hand. */
export interface StayLinkReserve extends StayLink {
  /** Breaking load as fitted over the design load [1]. */
  readonly reserve: number;
}

/** The chain of a stay, weakest link first. */
export interface StayChain {
  /** Tension with its factors [N]. */
  readonly designTension: number;
  /** The links, weakest first. */
  readonly links: readonly StayLinkReserve[];
  /** Holds where the weakest link has a reserve of 1 or above. */
  readonly verdict: Verdict;
  /** What to look at before each outing. */
  readonly inspection: readonly string[];
}

/** What to look at on a stay; common practice, no source. */
const INSPECTION: readonly string[] = [
  "Run a rag along the wire: a strand that snags is broken, and the wire is done.",
  "Look where wire enters a terminal: rust, a crack or a bend there ends its life.",
  "See that adjusters show enough thread in the body, and are locked so that none can turn.",
  "See that terminals swing freely in line with the wire: a thread that is bent breaks by fatigue.",
  "Measure the preload again after the first loading: new wire and new bonds settle.",
  "Press the panel around the foot: a click or a soft spot is a crushed core or an open bond.",
];

/**
 * Reserve of each link of a stay under the largest tension, and what to inspect.
 *
 * Formula: R = breaking load × efficiency/(tension × factors)
 *
 * Range: tension with preload and impact in it.
 *
 * Source: statics; efficiencies from the maker or a test. Inspection: common practice, no source.
 * Where a person depends on the stay, a qualified person decides.
 *
 * @param links Wire, terminals, adjuster and anchorages.
 * @param tension Largest tension that is expected [N].
 * @param factors Load factor and fitting factor [1].
 * @returns Links weakest first [1], verdict and inspection remarks.
 * @throws {InputError} If a link or load is outside its range.
 *
 * @example
 * ```ts
 * import { stayChain } from "@laminate/notebooks/joints";
 * import { assertEquals } from "@std/assert";
 *
 * const chain = stayChain([
 *   { name: "wire", breakingLoad: 5000, efficiency: 0.8 },
 *   { name: "shackle", breakingLoad: 9000, efficiency: 1 },
 * ], 1000, { loadFactor: 3 });
 * assertEquals(chain.links[0]?.name, "wire");
 * assertEquals(chain.verdict, "holds");
 * ```
 */
export function stayChain(
  links: readonly StayLink[],
  tension: number,
  factors: LoadFactors,
): StayChain {
  check.list("links", links);
  check.positive("tension", tension, "N");
  const designTension = designLoad(tension, factors);
  const judged = links.map((link): StayLinkReserve => {
    const { name, breakingLoad, efficiency } = check.object("link", link);
    check.text("name of a link", name);
    check.positive(`breaking load of ${name}`, breakingLoad, "N");
    check.positive(`efficiency of ${name}`, check.fraction("efficiency", efficiency));
    const reserve = check.result("reserve", breakingLoad * efficiency / designTension);
    return { name, breakingLoad, efficiency, reserve };
  }).toSorted((a, b) => a.reserve - b.reserve);
  return {
    designTension,
    links: judged,
    verdict: judged[0]!.reserve >= 1 ? "holds" : "fails",
    inspection: INSPECTION,
  };
}
