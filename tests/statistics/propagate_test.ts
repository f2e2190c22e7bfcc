import { assert, assertEquals, assertThrows } from "@std/assert";
import { checksFor, InputError } from "@laminate/notebooks/check";
import {
  combineParts,
  coverage,
  fromHalfWidth,
  fromRange,
  propagate,
  propagateTogether,
} from "@laminate/notebooks/statistics";
import { assertClose } from "../close.ts";

Deno.test("sensitivities of a closed formula to 1e-12", () => {
  // Derivatives by hand of a³√b/c + exp(k/10).
  const { sensitivity, value, u, budget } = propagate(
    ({ a, b, c, k }) => (a ** 3 * Math.sqrt(b)) / c + Math.exp(k / 10),
    {
      a: { value: 2, u: 0.1 },
      b: { value: 3, u: 0.1 },
      c: { value: 5, u: 0.01 },
      k: { value: 0, u: 1 },
    },
  );
  const expected = {
    a: (12 * Math.sqrt(3)) / 5,
    b: 8 / (2 * Math.sqrt(3)) / 5,
    c: (-8 * Math.sqrt(3)) / 25,
    k: 0.1,
  };
  for (const name of ["a", "b", "c", "k"] as const) {
    assertClose(sensitivity[name], expected[name], { relative: 1e-12 }, name);
  }
  assertClose(value, (8 * Math.sqrt(3)) / 5 + 1, { relative: 1e-15 });
  const parts = [expected.a * 0.1, expected.b * 0.1, expected.c * 0.01, expected.k];
  assertClose(u, Math.hypot(...parts), { relative: 1e-12 });
  assertEquals(budget.map(({ name }) => name), ["a", "k", "b", "c"]);
  assertClose(budget.reduce((sum, { share }) => sum + share, 0), 1, { relative: 1e-14 });
});

Deno.test("a value far below its uncertainty takes its step from the uncertainty", () => {
  const { sensitivity } = propagate(({ x, y }) => 3 * x + y, {
    x: { value: 1e-12, u: 0.5 },
    y: { value: 1e3, u: 1 },
  });
  assertClose(sensitivity.x, 3, { relative: 1e-10 });
});

Deno.test("a steep formula is read with smaller steps until they agree", () => {
  const { sensitivity, notes } = propagate(({ x }) => Math.exp(800 * x), {
    x: { value: 0.5, u: 1e-5 },
  });
  assertClose(sensitivity.x / Math.exp(400), 800, { relative: 1e-9 });
  assertEquals(notes, []);
});

const check = checksFor("test");

Deno.test("a value near the edge of what the formula accepts is read with a smaller step", () => {
  const { sensitivity, notes } = propagate(({ x }) => check.fraction("x", x) ** 2, {
    x: { value: 0.999, u: 1e-4 },
  });
  assertClose(sensitivity.x, 1.998, { relative: 1e-11 });
  assertEquals(notes, []);
});

Deno.test("a value at the edge is read from one side, and a note says so", () => {
  const { sensitivity, notes } = propagate(({ x }) => Math.exp(check.nonNegative("x", x)), {
    x: { value: 0, u: 0.01 },
  });
  // One-sided weights are up to 17.5 over steps of 1e-4: rounding counts a thousand times more.
  assertClose(sensitivity.x, 1, { relative: 1e-9 });
  assertEquals(notes.length, 1);
  assert(notes[0]!.includes("edge"));
});

Deno.test("a formula that accepts the value only is refused", () => {
  const f = ({ x }: { x: number }): number => x === 1 ? 1 : check.refuse("x", x, "must be 1");
  assertThrows(() => propagate(f, { x: { value: 1, u: 0.1 } }), InputError, "room to vary");
});

Deno.test("first order is blind at a turning point, a bend and a kink, and notes say so", () => {
  const input = { x: { value: 0, u: 0.1 } };
  const blind = propagate(({ x }) => 1 + x * x, input);
  assertEquals(blind.u, 0);
  assertEquals(blind.notes.length, 1);
  assert(blind.notes[0]!.includes("does not see x"));
  const bent = propagate(({ x }) => Math.exp(x), { x: { value: 1, u: 0.5 } });
  assert(bent.notes[0]!.includes("curves in x"));
  const kinked = propagate(({ x }) => Math.abs(x - 0.001), { x: { value: 0, u: 0.1 } });
  assert(kinked.notes[0]!.includes("curves in x"));
  const jump = propagate(({ x }) => (x < 0 ? 1 : 2), { x: { value: 0, u: 0.1 } });
  assert(jump.notes.some((note) => note.includes("a kink or a jump near x")));
});

Deno.test("an uncertainty that reaches beyond what the formula accepts is noted", () => {
  const { notes } = propagate(({ x }) => check.fraction("x", x), { x: { value: 0.9, u: 0.2 } });
  assertEquals(notes.length, 1);
  assert(notes[0]!.includes("beyond what the formula accepts"));
});

Deno.test("an input known exactly raises no note", () => {
  assertEquals(propagate(({ x }) => x * x, { x: { value: 0, u: 0 } }).notes, []);
});

Deno.test("full correlation adds linearly, full anticorrelation cancels", () => {
  const inputs = { a: { value: 1, u: 0.3 }, b: { value: 2, u: 0.4 } };
  const sum = (coefficient: number): number =>
    propagate(({ a, b }) => a + b, inputs, {
      correlations: [{ between: ["a", "b"], coefficient }],
    }).u;
  assertClose(sum(1), 0.7, { relative: 1e-12 });
  assertClose(sum(-1), 0.1, { relative: 1e-11 });
  assertClose(sum(0.5), Math.sqrt(0.25 + 0.12), { relative: 1e-12 });
});

Deno.test("results of one formula carry their correlation to the next", () => {
  // D and S of a beam from two compliances, then a deflection again: what comes back is the first.
  const inputs = { c1: { value: 3, u: 0.02 }, c2: { value: 8, u: 0.05 } };
  const { results, correlations } = propagateTogether(
    ({ c1, c2 }) => ({ p: (2 * c1 - c2) / 3, q: (c2 - c1) / 2 }),
    inputs,
  );
  const back = propagate(({ p, q }) => 3 * p + 2 * q, results, { correlations });
  assertClose(back.u, inputs.c1.u, { relative: 1e-10 });
});

Deno.test("helpers of shapes, ranges, parts and coverage", () => {
  assertClose(fromHalfWidth(1, 0.6, "rectangular").u, 0.6 / Math.sqrt(3), { relative: 1e-15 });
  assertClose(fromHalfWidth(1, 0.6, "triangular").u, 0.6 / Math.sqrt(6), { relative: 1e-15 });
  assertClose(fromHalfWidth(1, 0.6, "arcsine").u, 0.6 / Math.SQRT2, { relative: 1e-15 });
  assertClose(fromRange({ low: 2, high: 8 }).value, 5, {});
  assertClose(fromRange({ low: 2, high: 8 }).u, Math.sqrt(3), { relative: 1e-15 });
  assertEquals(combineParts(3, [{ u: 3 }, { u: 4 }]), { value: 3, u: 5 });
  const { low, high } = coverage({ value: 10, u: 2 });
  assertClose([low, high], [10 - 3.919927969080108, 10 + 3.919927969080108], { relative: 1e-13 });
  // Degrees of freedom are cut to a whole number before t is looked up (GUM G.4.1).
  assertClose(coverage({ value: 0, u: 1, dof: 9.9 }).factor, 2.262157162798205, {
    relative: 1e-12,
  });
});

Deno.test("refusals of propagation and its helpers", () => {
  const f = ({ a, b }: { a: number; b: number }): number => a / b;
  const inputs = { a: { value: 1, u: 0.1 }, b: { value: 2, u: 0.1 } };
  const correlate = (a: string, b: string, coefficient: number): () => unknown => () =>
    propagate(f, inputs, { correlations: [{ between: [a, b] as never, coefficient }] });
  assertThrows(() => propagate(f, undefined as never), InputError, "inputs is missing");
  assertThrows(() => propagate(f, {} as never), InputError, "names of the inputs");
  assertThrows(() => propagate(f, { a: 3 } as never), InputError, "a is 3");
  assertThrows(() => propagate(f, { a: { value: "1", u: 0 } } as never), InputError, 'a is "1"');
  const negative = { ...inputs, b: { value: 2, u: -1 } };
  assertThrows(() => propagate(f, negative), InputError, "uncertainty of b is -1");
  const nought = { ...inputs, b: { value: 0, u: 0.1 } };
  assertThrows(() => propagate(f, nought), InputError, "result is Infinity");
  assertThrows(correlate("a", "c", 0.5), InputError, 'correlated input is "c"');
  assertThrows(correlate("a", "a", 0.5), InputError, "two different inputs");
  assertThrows(correlate("a", "b", 1.5), InputError, "between -1 and 1");
  const three = { a: { value: 1, u: 1 }, b: { value: 1, u: 1 }, c: { value: 1, u: 1 } };
  assertThrows(
    () =>
      propagate(({ a, b, c }) => a + b + c, three, {
        correlations: [
          { between: ["a", "b"], coefficient: 0.9 },
          { between: ["b", "c"], coefficient: 0.9 },
          { between: ["a", "c"], coefficient: -0.9 },
        ],
      }),
    InputError,
    "contradict each other",
  );
  assertThrows(() => fromHalfWidth(1, -1), InputError, "half-width is -1");
  assertThrows(() => fromHalfWidth(1, 1, "round" as never), InputError, "must be one of");
  assertThrows(() => fromRange({ low: 2, high: 1 }), InputError, "must not be below the low end 2");
  assertThrows(() => combineParts(1, []), InputError, "parts is a list of 0");
  assertThrows(() => coverage({ value: 1, u: 1 }, 1), InputError, "level is 1");
  assertThrows(() => coverage({ value: 1, u: 1, dof: 0.5 }), InputError, "degrees of freedom");
});

Deno.test("an error that is not about input is passed on", () => {
  const broken = (): number => {
    throw new RangeError("a bug");
  };
  assertThrows(() => propagate(broken, { x: { value: 1, u: 1 } }), RangeError, "a bug");
});
