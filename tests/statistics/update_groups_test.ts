import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { randomGenerator } from "../../lib/numeric/mod.ts";
import {
  type GroupedEvidence,
  holdRate,
  normalProbability,
  predictiveCheck,
  updateGroups,
  updateParameters,
} from "../../lib/statistics/mod.ts";
import { assertClose } from "../close.ts";

/** Groups that are observed directly: y = x ± u. */
const direct = (values: readonly number[], u: number): GroupedEvidence["groups"] =>
  values.map((value, i) => ({
    name: `group ${i}`,
    own: {},
    observed: { y: { value, u } },
    predict: ({ x }) => ({ y: x! }),
  }));

Deno.test("without a spread it is the conjugate normal model, by hand", () => {
  const { means, next, groups, spreads, chiSquared } = updateGroups({
    pooled: { x: { value: 10, u: 2, spread: 0 } },
    groups: direct([12, 13], 1),
  });
  // Precisions 1/4 + 1 + 1; χ² with V = [5 4; 4 5]: (5·4 − 2·4·2·3 + 5·9)/9.
  assertClose(means.x!.value, (10 / 4 + 12 + 13) / 2.25, { relative: 1e-9 });
  assertClose(means.x!.u, 1 / 1.5, { relative: 1e-6 });
  assertClose(next.x!.high - next.x!.low, 2 * 1.959963984540054 / 1.5, { relative: 1e-6 });
  assertClose(groups[0]!.parameters.x!.value, means.x!.value, { relative: 1e-9 });
  assertEquals(spreads.x, { median: 0, low: 0, high: 0 });
  assertClose(chiSquared, 17 / 9, { relative: 1e-9 });
});

Deno.test("with a spread it is what sums over a fine grid say", () => {
  const [values, u, prior, scale] = [[4, 6.5, 5], 0.8, { value: 5.5, u: 3 }, 1] as const;
  const found = updateGroups({
    pooled: { x: { ...prior, spread: scale } },
    groups: direct(values, u),
  });
  // p(τ) half-normal; given τ all is normal: groups' means and the mean by plain formulas.
  const step = 0.002;
  const taus = Array.from({ length: 4000 }, (_, i) => (i + 0.5) * step);
  const nodes = taus.map((tau) => {
    const v = u * u + tau * tau;
    const precision = 1 / prior.u ** 2 + values.length / v;
    const middle = (prior.value / prior.u ** 2 + values.reduce((a, b) => a + b, 0) / v) / precision;
    // log N(y; m, v1 + U² 11ᵀ), by its mean and the deviations from that.
    const average = values.reduce((a, b) => a + b, 0) / 3;
    const within = values.reduce((a, b) => a + (b - average) ** 2, 0);
    const between = prior.u ** 2 + v / 3;
    const log = -0.5 * (2 * Math.log(v) + within / v) -
      0.5 * (Math.log(between) + (average - prior.value) ** 2 / between) -
      tau * tau / (2 * scale * scale);
    const pull = u * u / v;
    return {
      ...{ tau, middle, weight: Math.exp(log) },
      first: {
        mean: pull * middle + (1 - pull) * values[0]!,
        sd: Math.sqrt((1 - pull) * u * u + pull ** 2 / precision),
      },
      variance: 1 / precision,
    };
  });
  const total = nodes.reduce((sum, { weight }) => sum + weight, 0);
  /** Each told quantile must have as much of the mixture below it. */
  const holds = (
    told: { readonly value: number; readonly low: number; readonly high: number },
    at: (node: (typeof nodes)[number]) => { readonly mean: number; readonly sd: number },
  ): void => {
    for (const [x, p] of [[told.value, 0.5], [told.low, 0.025], [told.high, 0.975]] as const) {
      const below = nodes.reduce((sum, node) => {
        const { mean, sd } = at(node);
        return sum + node.weight * normalProbability((x - mean) / sd);
      }, 0);
      assertClose(below / total, p, { absolute: 0.003 });
    }
  };
  holds(found.groups[0]!.parameters.x!, ({ first }) => first);
  holds(found.means.x!, ({ middle, variance }) => ({ mean: middle, sd: Math.sqrt(variance) }));
  holds(found.next.x!, ({ middle, variance, tau }) => ({
    mean: middle,
    sd: Math.sqrt(variance + tau * tau),
  }));
  let below = 0;
  const median = nodes.find(({ weight }) => (below += weight) >= total / 2)!.tau;
  assertClose(found.spreads.x!.median, median, { absolute: 0.01 });
});

Deno.test("a common parameter does not average out over groups", () => {
  const groups = direct([10, 10, 10, 10], 0.1).map((group) => ({
    ...group,
    predict: ({ x, gauge }: Readonly<Record<string, number>>) => ({ y: x! + gauge! }),
  }));
  const { means, common, nextCorrelations } = updateGroups({
    pooled: { x: { value: 0, u: 100, spread: 0 } },
    common: { gauge: { value: 0, u: 1 } },
    groups,
  });
  assertClose(means.x!.u, Math.hypot(1, 0.05), { relative: 1e-3 });
  assertClose(common.gauge!.u, 1, { relative: 1e-3 });
  assert(nextCorrelations[0]!.coefficient < -0.99);
});

Deno.test("a formula that is not linear: as updateParameters where nothing differs", () => {
  const predict = ({ x, z }: Readonly<Record<string, number>>) => ({
    y: 1 / x! + z!,
    w: x! * z!,
  });
  const observed = { y: { value: 2.6, u: 0.05 }, w: { value: 1.1, u: 0.04 } };
  const grouped = updateGroups({
    pooled: { x: { value: 1, u: 0.5, spread: 0 } },
    groups: [{ name: "one", own: { z: { value: 2, u: 0.3 } }, observed, predict }],
  });
  const { parameters } = updateParameters(
    { x: { value: 1, u: 0.5 }, z: { value: 2, u: 0.3 } },
    { predict, observed },
  );
  assertClose(grouped.means.x!.value, parameters.x.value, { relative: 1e-5 });
  assertClose(grouped.means.x!.u, parameters.x.u, { relative: 1e-3 });
  assertClose(grouped.groups[0]!.parameters.z!.value, parameters.z.value, { relative: 1e-5 });
});

Deno.test("a group that tells nothing of its own is where the others are", () => {
  const groups = direct([10, 10.2, 9.8, 10.1, 9.9], 0.05);
  const silent = { ...groups[0]!, name: "silent", observed: { y: { value: 20, u: 100 } } };
  const { groups: found, next } = updateGroups({
    pooled: { x: { value: 0, u: 100, spread: 0.3 } },
    groups: [...groups, silent],
  });
  const { value, u } = found[5]!.parameters.x!;
  assertClose(value, next.x!.value, { absolute: 0.01 });
  assertClose(u, next.x!.u, { relative: 0.01 });
});

/** A beam of two spans whose face and core differ from beam to beam. */
function campaign(draw: () => number): {
  readonly evidence: GroupedEvidence;
  readonly truth: { readonly e: number[]; readonly g: number[] };
  readonly means: Readonly<Record<string, number>>;
  readonly next: Readonly<Record<string, number>>;
} {
  const means = { e: 0.04 * draw(), g: 0.12 * draw() };
  const spreads = { e: 0.02 * Math.abs(draw()), g: 0.05 * Math.abs(draw()) };
  const scale = 0.003 * draw();
  const one = (name: "e" | "g"): number => means[name] + spreads[name] * draw();
  const truth = { e: [one("e"), one("e"), one("e")], g: [one("g"), one("g"), one("g")] };
  const predict = ({ e, g, h, c }: Readonly<Record<string, number>>): Record<string, number> => {
    const [D, S] = [30 * Math.exp(e! + 2 * h! + c!), 21600 * Math.exp(g! + h!)];
    return {
      long: 0.5 ** 3 / (48 * D) + 0.5 / (4 * S),
      short: 0.15 ** 3 / (48 * D) + 0.15 / (4 * S),
    };
  };
  const groups = truth.e.map((e, j) => {
    const exact = predict({ e, g: truth.g[j]!, h: 0.005 * draw(), c: scale });
    const observed = Object.fromEntries(
      Object.entries(exact).map(([name, value]) => [name, {
        value: value * (1 + 0.006 * draw()),
        u: 0.006 * value,
      }]),
    );
    return { name: `beam ${j}`, own: { h: { value: 0, u: 0.005 } }, observed, predict };
  });
  return {
    evidence: {
      pooled: { e: { value: 0, u: 0.04, spread: 0.02 }, g: { value: 0, u: 0.12, spread: 0.05 } },
      common: { c: { value: 0, u: 0.003 } },
      groups,
    },
    ...{ truth, means, next: { e: one("e"), g: one("g") } },
  };
}

Deno.test("95 % intervals hold the truth in 93 to 97 % of simulated campaigns", () => {
  const held = { means: 0, next: 0, groups: 0 };
  const trials = 150;
  const inside = (interval: { low: number; high: number }, value: number): number =>
    interval.low < value && value < interval.high ? 1 : 0;
  holdRate((random) => {
    const { evidence, truth, means, next } = campaign(() => random.normal());
    const found = updateGroups(evidence);
    for (const name of ["e", "g"] as const) {
      held.means += inside(found.means[name]!, means[name]!);
      held.next += inside(found.next[name]!, next[name]!);
      found.groups.forEach(({ parameters }, j) =>
        held.groups += inside(parameters[name]!, truth[name][j]!)
      );
    }
    return true;
  }, { trials, seed: 4 });
  for (const [what, count] of [["means", 2], ["next", 2], ["groups", 6]] as const) {
    const rate = held[what] / (count * trials);
    assert(rate >= 0.93 && rate <= 0.97, `${what}: ${rate}`);
  }
});

Deno.test("replicas of new groups show the one that does not belong", () => {
  const random = randomGenerator(9);
  const values = Array.from({ length: 8 }, () => 10 + 0.2 * random.normal());
  const look = (list: readonly number[]): readonly string[] => {
    const found = updateGroups({
      pooled: { x: { value: 10, u: 5, spread: 0.1 } },
      groups: direct(list, 0.1),
    });
    return predictiveCheck(found.replicate, found.departures).notes;
  };
  assertEquals(look(values), []);
  assert(look(values.with(3, 12)).some((note) => note.includes("largest")));
});

Deno.test("groups that differ far more than thought, and a prior that is wrong, are said", () => {
  const far = updateGroups({
    pooled: { x: { value: 10, u: 50, spread: 0.1 } },
    groups: direct([5, 10, 15, 12, 8], 0.1),
  });
  assert(far.notes.some((note) => note.includes("differ in x by far more")));
  const wrong = updateGroups({
    pooled: { x: { value: 0, u: 1, spread: 0 } },
    groups: direct([10, 10], 0.1),
  });
  assert(wrong.chance < 1e-6 && wrong.notes[0]!.includes("contradict"));
});

Deno.test("what cannot be meant is refused by name", () => {
  const evidence: GroupedEvidence = {
    pooled: { x: { value: 10, u: 2, spread: 0 } },
    groups: direct([12, 13], 1),
  };
  const [group] = evidence.groups;
  const refused = (change: object, message: string) =>
    assertThrows(() => updateGroups({ ...evidence, ...change }), InputError, message);
  refused({ pooled: {} }, "number of pooled parameters is 0");
  refused({ pooled: { x: { value: 10, u: 0, spread: 0 } } }, "uncertainty of x is 0");
  refused({ pooled: { x: { value: 10, u: 1, spread: -1 } } }, "spread of x is -1");
  refused({ common: { x: { value: 1, u: 1 } } }, "other names");
  refused({ groups: [] }, "groups");
  refused({ groups: [group, group] }, "must be given once");
  refused({ groups: [{ ...group, own: { x: { value: 1, u: 1 } } }] }, "must not be pooled");
  refused({ groups: [{ ...group, observed: {} }] }, "observations of group 0");
  refused({ groups: [{ ...group, predict: () => ({}) }] }, "prediction of y of group 0");
  refused({ groups: [{ ...group, predict: 5 }] }, "formula of group 0");
  assertThrows(() => updateGroups(undefined as never), InputError, "evidence");
});
