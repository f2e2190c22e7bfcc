/** The batch engine: its door, its stopping, its progress, its workers. Equality: tests/laws. */
import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  analyseBatch,
  analyseBatchAsync,
  batchOf,
  type BatchResult,
  type LaminateBatch,
  makeBatchArrays,
  openBatchWorkers,
  type Stack,
} from "../../lib/laminate/mod.ts";
import { assertClose } from "../close.ts";
import { GLASS, GRAPHITE_EPOXY, HONEYCOMB, SANDWICH, stackOf } from "./laminas.ts";

const STACKS: readonly Stack[] = [SANDWICH, stackOf(GLASS, 0.0005, [0, 90, 45])];

/** Many copies of one laminate, each turned a little: 1,000 a degree. */
function turned(count: number): LaminateBatch {
  const arrays = makeBatchArrays({ count, plyCount: 4 });
  for (let i = 0; i < 4 * count; i++) {
    arrays.thickness[i] = 0.00025;
    arrays.angleDeg[i] = ((i % 4) * 45 + i / 4000) % 180;
  }
  arrays.loads.set([1000, 500, 100, 1, 2, 3]);
  return { laminas: [GLASS], plyCount: 4, ...arrays };
}

async function rejection(promise: Promise<unknown>): Promise<unknown> {
  try {
    await promise;
  } catch (error) {
    return error;
  }
  throw new Error("was not rejected");
}

function assertSameDigits(one: BatchResult, other: BatchResult): void {
  for (const name of Object.keys(one) as (keyof BatchResult)[]) {
    assert(one[name].length === other[name].length);
    assert(one[name].every((value, i) => Object.is(value, other[name][i])), name);
  }
}

Deno.test("a pull along and across one ply: utilisation by hand", () => {
  // σ = N/t = 30 MPa; along Xt = 900 MPa, across Yt = 40 MPa. Tsai–Wu gives a strength back.
  const stacks = [0, 90].map((angle) => stackOf(GLASS, 0.001, [angle]));
  const { utilisation, criticalPly, criticalFace, membraneEx, strains, plyStress } = analyseBatch(
    batchOf(stacks, { Nx: 30e3 }),
  );
  assertClose(Array.from(utilisation), [30 / 900, 30 / 40], { relative: 1e-12 });
  assertEquals([...criticalPly], [0, 0]);
  assert(criticalFace.every((face) => face === 0 || face === 1));
  assertClose(Array.from(membraneEx), [38e9, 9e9], { relative: 1e-12 });
  assertClose([strains[0]!, strains[7]!], [30e6 / 38e9, -0.28 * 30e6 / 38e9], { relative: 1e-12 });
  assertEquals(plyStress.length, 0);
});

Deno.test("plies of no thickness are left out, and a core without strengths is not rated", () => {
  const batch = batchOf(STACKS, { Nx: 1e4, Mx: 5, temperatureChange: -40 });
  const alone = analyseBatch(batchOf([STACKS[1]!], { Nx: 1e4, Mx: 5, temperatureChange: -40 }));
  const { strains, utilisation, criticalPly } = analyseBatch(batch);
  assertSameDigits(
    { ...alone, strains: strains.slice(6), utilisation: utilisation.slice(1) },
    alone,
  );
  assert(criticalPly[0] !== 1);
  const { plyStress } = analyseBatch(batch, { keepPlyStress: true });
  assertEquals([...plyStress.slice(6 * 7)], [0, 0, 0, 0, 0, 0]);
  const core = analyseBatch(batchOf([stackOf(HONEYCOMB, 0.01, [0])], { Nx: 1 }));
  assertEquals([core.utilisation[0], core.criticalPly[0]], [0, -1]);
});

Deno.test("without a load nothing is used up; where cooling alone fails a ply all is", () => {
  const stack = stackOf(GRAPHITE_EPOXY, 0.00025, [0, 90, 90, 0]);
  const idle = analyseBatch(batchOf([stack], {}));
  assertEquals([idle.utilisation[0], idle.criticalPly[0]], [0, -1]);
  const cold = batchOf([stack], { Nx: 1, temperatureChange: -300 });
  assertEquals(analyseBatch(cold).utilisation[0], Number.MAX_VALUE);
  const scaled = analyseBatch(cold, { scaleResidual: true }).utilisation[0]!;
  assert(scaled > 1 && scaled < 10);
});

Deno.test("each laminate may have loads of its own", () => {
  const own = batchOf(STACKS, {});
  const loads = Float64Array.of(1000, 0, 0, 0, 0, 0, 0, 0, 0, 2, 0, 0);
  const both = analyseBatch({ ...own, loads });
  const first = analyseBatch({ ...own, loads: loads.slice(0, 6) });
  const second = analyseBatch({ ...own, loads: loads.slice(6) });
  assertEquals(both.strains.slice(0, 6), first.strains.slice(0, 6));
  assertEquals(both.strains.slice(6), second.strains.slice(6));
});

Deno.test("one thread or two, shared memory or not: the same digits", async () => {
  const batch = turned(40_000);
  const expected = analyseBatch(batch, { keepPlyStress: true });
  assertSameDigits(await analyseBatchAsync(batch, { keepPlyStress: true }), expected);
  const workers = await openBatchWorkers(2);
  try {
    // Two wherever the tests may read the project; one would make this test say less than it does.
    assertEquals(workers.threads, 2);
    const unshared: LaminateBatch = {
      ...batch,
      thickness: Float64Array.from(batch.thickness),
      angleDeg: Float64Array.from(batch.angleDeg),
    };
    const results = await Promise.all([
      workers.analyse(batch, { keepPlyStress: true }),
      workers.analyse(unshared, { keepPlyStress: true }),
    ]);
    for (const result of results) assertSameDigits(result, expected);
  } finally {
    workers.close();
  }
});

Deno.test("progress rises to the whole", async () => {
  const batch = turned(100_000);
  for (const threads of [1, 2]) {
    const seen: number[] = [];
    await analyseBatchAsync(batch, {
      threads,
      onProgress: (done, count) => {
        assertEquals(count, 100_000);
        seen.push(done);
      },
    });
    assert(seen.length > 1);
    assertEquals(seen, seen.toSorted((a, b) => a - b));
    assertEquals(seen.at(-1), 100_000);
  }
});

Deno.test("an abort stops the batch with its reason, and the workers take the next", async () => {
  const batch = turned(100_000);
  const before = AbortSignal.abort(new Error("not wanted"));
  assertEquals(await rejection(analyseBatchAsync(batch, { signal: before })), before.reason);
  for (const threads of [1, 2]) {
    const workers = await openBatchWorkers(threads);
    const stop = new AbortController();
    let last = 0;
    const stopped = workers.analyse(batch, {
      signal: stop.signal,
      onProgress: (done) => {
        last = done;
        stop.abort(new Error("enough"));
      },
    });
    assertEquals(await rejection(stopped), stop.signal.reason);
    assert(last < 100_000);
    const next = await workers.analyse(batchOf(STACKS, { Nx: 1 }));
    assertEquals(next.utilisation.length, 2);
    workers.close();
  }
});

Deno.test("what a progress callback throws reaches the caller", async () => {
  for (const threads of [1, 2]) {
    const error = new Error("from the callback");
    const run = analyseBatchAsync(turned(40_000), {
      threads,
      onProgress: () => {
        throw error;
      },
    });
    assertEquals(await rejection(run), error);
  }
});

Deno.test("arrays and numbers that cannot be meant are refused", async () => {
  const good = batchOf(STACKS, { Nx: 1000 });
  const refused = (change: object, message: string): void => {
    assertThrows(() => analyseBatch({ ...good, ...change }), InputError, message);
  };
  refused({ plyCount: 0 }, "Cannot analyse the batch: number of plies is 0");
  refused({ plyCount: 3 }, "number of laminates (plies over plies of each) is 2.66");
  refused({ thickness: [...good.thickness] }, "thickness is a list of 8, must be a Float64Array");
  refused({ lamina: new Uint8Array(8) }, "lamina is an object, must be a Uint16Array");
  refused(
    { angleDeg: new Float64Array(7) },
    "length of angleDeg is 7, must be that of thickness, 8",
  );
  refused({ loads: new Float64Array(7) }, "length of loads is 7, must be 6, or 12");
  refused({ loads: good.loads.map(() => NaN) }, "loads entry 0 is NaN");
  refused({ thickness: good.thickness.map((t) => -t) }, "laminate 1 ply 1 thickness is -0.0004 m");
  refused(
    { thickness: good.thickness.map(() => 0) },
    "laminate 1 thickness is 0 m, must be above 0",
  );
  refused({ angleDeg: good.angleDeg.map(() => NaN) }, "laminate 1 ply 1 angle is NaN °");
  refused({ laminas: [GLASS] }, "laminate 1 ply 2 lamina is 1, must be between 0 and 0");
  refused({ laminas: [GLASS, { ...GLASS, E1: 0 }] }, "lamina 2 E1 is 0 Pa, must be above 0");
  const weak = { ...GLASS, strengths: { ...GLASS.strengths!, Yt: 0 } };
  refused({ laminas: [GLASS, weak] }, "lamina 2 strength Yt is 0 Pa, must be above 0");
  refused({ temperatureChange: NaN }, "temperature change is NaN K");
  const { beta1: _, ...dry } = GLASS;
  refused({ laminas: [dry, GLASS], moistureChange: 0.01 }, "lamina 1 beta1 is missing");
  refused({ loads: Float64Array.of(1e300, 1e300, 1e300, 0, 0, 1e300) }, "laminate 1 is");
  assertThrows(() => analyseBatch(null as never), InputError, "batch is null");
  assertThrows(
    () => batchOf([], {}),
    InputError,
    "Cannot gather the stacks: stacks is a list of 0",
  );
  assertThrows(() => batchOf([[]], {}), InputError, "stack 1 is a list of 0");
  assertThrows(() => batchOf(STACKS, { kappaX: 1 } as never), InputError, 'load is "kappaX"');
  assertThrows(() => makeBatchArrays({ count: 0, plyCount: 1 }), InputError, "laminates is 0");
  assert(await rejection(openBatchWorkers(0)) instanceof InputError);
  assert(await rejection(analyseBatchAsync(undefined as never)) instanceof InputError);
  assert(await rejection(analyseBatchAsync({ ...good, plyCount: 0 })) instanceof InputError);
});
