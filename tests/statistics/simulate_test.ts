import { assertEquals } from "@std/assert";
import { holdRate, predictiveCheck } from "../../lib/statistics/mod.ts";
import { assertClose } from "../close.ts";

Deno.test("a rate has the uncertainty of a binomial share", () => {
  // Three of each four campaigns hold: √(¾ × ¼/400).
  let campaign = 0;
  const { rate, u, trials } = holdRate(() => campaign++ % 4 !== 0, { trials: 400 });
  assertEquals([rate, trials], [0.75, 400]);
  assertClose(u, Math.sqrt(3) / 80, { relative: 1e-14 });
});

/** Replicas that can be counted: [1, 3], [2, 4] … [100, 102], in any case. */
function against(observed: readonly number[]): ReturnType<typeof predictiveCheck> {
  let made = 0;
  return predictiveCheck(() => [++made, made + 2], observed, { trials: 100 });
}

Deno.test("a predictive check counts the replicas as far out, on the nearer side, twice", () => {
  const { figures, notes } = against([10, 12]);
  assertEquals(figures.map(({ name }) => name), ["mean", "sd", "smallest", "largest", "lag 1"]);
  const [mean, sd, smallest, largest] = figures;
  // Means are 2 to 101; ten of them are 11 or below, 91 of them 11 or above.
  assertClose([mean!.observed, mean!.chance], [11, 0.2], { relative: 1e-14 });
  // Order statistics at 1 + 99 p, between them in a straight line: 2 + 2.475, 2 + 49.5, 2 + 96.525.
  assertClose([mean!.low, mean!.median, mean!.high], [4.475, 51.5, 98.525], { relative: 1e-14 });
  assertClose([smallest!.observed, smallest!.median], [10, 50.5], { relative: 1e-14 });
  assertClose([largest!.observed, largest!.median], [12, 52.5], { relative: 1e-14 });
  // Alike in all replicas and in the data: nothing is odd, and no chance is above 1.
  assertClose([sd!.observed, sd!.low, sd!.chance], [Math.SQRT2, Math.SQRT2, 1], {
    relative: 1e-14,
  });
  assertEquals(notes, []);
  const above = against([90, 92]).figures[0]!;
  assertClose([above.observed, above.chance], [91, 0.22], { relative: 1e-14 });
});

Deno.test("a figure is noted from a chance below 2 % on, with its range", () => {
  assertEquals(against([1, 3]).notes, []);
  assertEquals(against([100, 102]).notes, []);
  const below = against([0, 2]).notes;
  assertEquals(below.length, 3);
  assertEquals(
    below[0],
    "The mean of the data, 1, lies outside what the model makes: 4.47 to 98.5.",
  );
});
