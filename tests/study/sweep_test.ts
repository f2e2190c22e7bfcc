import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  combinations,
  computeInWorkers,
  lightest,
  rankRemedies,
  sweep,
  tradeOffFront,
} from "../../lib/study/mod.ts";
import { assertClose } from "../close.ts";

Deno.test("a sweep tries all, the last list fastest, and names what failed", async () => {
  const choices = { plies: [1, 2, 0], core: ["foam", "balsa"] } as const;
  const { points, faults, stopped } = await sweep(choices, ({ plies, core }) => {
    if (plies === 0) throw new RangeError(`no face over ${core}`);
    return `${plies} ${core}`;
  });
  assertEquals(points.map(({ result }) => result), ["1 foam", "1 balsa", "2 foam", "2 balsa"]);
  assertEquals(faults.map(({ error }) => error.message), [
    "no face over foam",
    "no face over balsa",
  ]);
  assertEquals(faults[0]!.choice, { plies: 0, core: "foam" });
  assertEquals(stopped, false);
});

Deno.test("a sweep tells its progress and stops when asked, also from outside", async () => {
  const told: number[] = [];
  const controller = new AbortController();
  const many = { a: Array.from({ length: 1000 }, (_, i) => i) };
  const running = sweep(many, ({ a }) => a, {
    progress: (done) => {
      told.push(done);
      if (done === 128) controller.abort();
    },
    signal: controller.signal,
  });
  const { points, stopped } = await running;
  assertEquals([points.length, stopped], [128, true]);
  assertEquals(told, [0, 64, 128]);
  const outside = new AbortController();
  const late = sweep(many, ({ a }) => a, { signal: outside.signal });
  outside.abort();
  assert((await late).stopped);
});

Deno.test("combinations by their number", () => {
  const { total, at } = combinations({ a: [1, 2], b: [3, 4, 5], c: [6] });
  assertEquals(total, 6);
  assertEquals(at(4), { a: 2, b: 4, c: 6 });
  assertThrows(() => combinations({ a: [] }), InputError, "a is a list of 0");
  const long = Array.from({ length: 3000 }, () => 0);
  assertThrows(
    () => combinations({ a: long, b: long }),
    InputError,
    "number of combinations is 9000000",
  );
});

/** By the definition: out if another is no worse in all and better in one, or equal and earlier. */
function frontByDefinition(objectives: readonly (readonly number[])[]): readonly number[] {
  const count = objectives[0]!.length;
  return Array.from({ length: count }, (_, i) => i).filter((i) =>
    !Array.from({ length: count }, (_, j) => j).some((j) => {
      if (j === i) return false;
      const noWorse = objectives.every((list) => list[j]! <= list[i]!);
      const equal = objectives.every((list) => list[j]! === list[i]!);
      return noWorse && (!equal || j < i);
    })
  );
}

Deno.test("the front is that of the definition, for one, two and three objectives", () => {
  let state = 12345;
  const draw = (): number => (state = (state * 1103515245 + 12345) % 2147483648) % 40;
  for (const k of [1, 2, 3]) {
    for (let round = 0; round < 30; round++) {
      const objectives = Array.from({ length: k }, () => Array.from({ length: 60 }, draw));
      const front = tradeOffFront(objectives);
      assertEquals(front.toSorted((a, b) => a - b), frontByDefinition(objectives));
      const firsts = front.map((i) => objectives[0]![i]!);
      assertEquals(firsts, firsts.toSorted((a, b) => a - b));
    }
  }
  assertEquals(tradeOffFront([[]]), []);
  assertThrows(() => tradeOffFront([[1], [1, 2]]), InputError, "length of objective 2 is 2");
  assertThrows(() => tradeOffFront([[1, NaN]]), InputError, "objective 1, candidate 2 is NaN");
});

Deno.test("the lightest that will do, with margins and what stood in the way", () => {
  const stacks = [
    { mass: 1, bend: 9, reserve: 1 },
    { mass: 2, bend: 4, reserve: 1.2 },
    { mass: 2.5, bend: 3.9, reserve: 2.5 },
    { mass: 3, bend: 2, reserve: 3 },
  ];
  const limits = [{ figure: "bend", max: 4 }, { figure: "reserve", min: 2 }];
  const choice = lightest(stacks, (stack) => stack, { least: "mass", limits });
  assertEquals(choice.index, 2);
  assertEquals(choice.feasible, 2);
  assertEquals(choice.limits.map(({ figure }) => figure), ["bend", "reserve"]);
  assertClose(choice.limits.map(({ margin }) => margin), [0.025, 0.25], { absolute: 1e-12 });
  assertEquals(choice.ruledOut.map(({ breaking, alone }) => [breaking, alone]), [[1, 0], [2, 1]]);
  const none = lightest(stacks, (stack) => stack, {
    least: "mass",
    limits: [{ figure: "bend", max: 1 }],
  });
  assertEquals([none.chosen, none.index, none.feasible], [undefined, -1, 0]);
  assertThrows(
    () => lightest(stacks, (stack) => stack, { least: "mass", limits: [{ figure: "bend" }] }),
    InputError,
    "must have a min or a max",
  );
  assertThrows(
    () => lightest(stacks, (stack) => stack, { least: "price", limits: [] }),
    InputError,
    "price of candidate 1 is missing",
  );
});

Deno.test("remedies ranked by grams, money and hours", () => {
  const plain = { name: "as it is", deflection: 10, mass: 4, cost: 40, time: 4 };
  const ranked = rankRemedies(plain, [
    { name: "ply", deflection: 8, mass: 4.5, cost: 46, time: 5 },
    { name: "core", deflection: 4, mass: 4.3, cost: 48, time: 4 },
    { name: "support", deflection: 5, mass: 4, cost: 41, time: 6 },
    { name: "hole", deflection: 20, mass: 3.9, cost: 40, time: 5 },
  ]);
  assertEquals(ranked.map(({ name }) => name), ["support", "core", "ply", "hole"]);
  const core = ranked[1]!;
  assertClose(core.gainPerMass!, 1.5 / 0.3, { relative: 1e-12 });
  assertEquals(core.gainPerTime, undefined);
  assertEquals(core.rank, { mass: 2, cost: 2, time: 1 });
  assertEquals(ranked[0]!.rank, { mass: 1, cost: 1, time: 2 });
  assertThrows(
    () => rankRemedies({ ...plain, deflection: 0 }, []),
    InputError,
    "deflection of the part as it is is 0 m",
  );
});

const text = `export function slow(x: number): number {
  if (x === 3) throw new Error("not three");
  return x * x;
}`;
const module = new URL(`data:text/typescript,${encodeURIComponent(text)}`);

Deno.test("workers answer in order, and say what failed", async () => {
  const told: number[] = [];
  const answers = await computeInWorkers<number, number>(
    { module, name: "slow" },
    [1, 2, 3, 4, 5],
    {
      batch: 2,
      progress: (done) => told.push(done),
    },
  );
  assertEquals(
    answers.map((answer) => answer?.ok ? answer.result : answer?.message),
    [1, 4, "not three", 16, 25],
  );
  assertEquals(told.at(-1), 5);
  const missing = await computeInWorkers<number, number>({ module, name: "fast" }, [1]);
  assert(missing[0]?.ok === false && missing[0].message.startsWith("fast is not a function"));
});

Deno.test("workers stop when asked, and leave nothing running", async () => {
  const controller = new AbortController();
  const inputs = Array.from({ length: 40 }, (_, i) => i + 10);
  const answers = await computeInWorkers<number, number>({ module, name: "slow" }, inputs, {
    workers: 1,
    batch: 4,
    progress: () => controller.abort(),
    signal: controller.signal,
  });
  assertEquals(answers.filter((answer) => answer !== undefined).length, 4);
  const already = new AbortController();
  already.abort();
  const none = await computeInWorkers({ module, name: "slow" }, inputs, { signal: already.signal });
  assert(none.every((answer) => answer === undefined));
});
