import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "@laminate/notebooks/check";
import { inverse, inverse3, multiply, solve } from "@laminate/notebooks/numeric";
import { assertClose } from "../close.ts";

/** A stiffness matrix of mixed units, N/m beside N beside N·m. */
// deno-fmt-ignore
const MIXED = [
  4.0e7, 1.2e7, 1.5e6, -2.5e3, 700, 40,
  1.2e7, 2.1e7, -9.0e5, 700, 1.1e3, -60,
  1.5e6, -9.0e5, 1.4e7, 40, -60, 700,
  -2.5e3, 700, 40, 21.5, 6.25, 0.75,
  700, 1.1e3, -60, 6.25, 11, -0.5,
  40, -60, 700, 0.75, -0.5, 7.5,
];

/** Rows 0, 3 and 5 of its inverse, by elimination in exact fractions (Python's fractions). */
const MIXED_INVERSE = {
  0: [
    3.0899082922055903e-08,
    -1.785541028524278e-08,
    -4.455902272774408e-09,
    5.116762835149537e-06,
    -3.140174208421058e-06,
    -6.127754098169865e-07,
  ],
  3: [
    5.116762835149537e-06,
    -3.158841807462936e-06,
    -6.607882484278441e-07,
    0.057009593097510955,
    -0.03276314909624472,
    -0.007876055815894645,
  ],
  5: [
    -6.127754098169865e-07,
    1.593865913571703e-07,
    -6.628691007875893e-06,
    -0.007876055815894645,
    0.010618844216766128,
    0.13545208291835883,
  ],
} as const;

function hilbert(order: number): number[] {
  return Array.from(
    { length: order * order },
    (_, i) => 1 / (Math.floor(i / order) + i % order + 1),
  );
}

Deno.test("inverse of a matrix of mixed units against exact fractions", () => {
  const result = inverse(MIXED);
  for (const [row, expected] of Object.entries(MIXED_INVERSE)) {
    const from = 6 * Number(row);
    assertClose(Array.from(result.slice(from, from + 6)), expected, { relative: 1e-12 });
  }
});

Deno.test("inverse of the Hilbert matrix of order 5 is the known matrix of whole numbers", () => {
  // Choi, "Tricks or treats with the Hilbert matrix", American Mathematical Monthly 90 (1983), from
  // memory. Condition number 4.8e5, hence 1e-11.
  // deno-fmt-ignore
  const expected = [
    25, -300, 1050, -1400, 630,
    -300, 4800, -18900, 26880, -12600,
    1050, -18900, 79380, -117600, 56700,
    -1400, 26880, -117600, 179200, -88200,
    630, -12600, 56700, -88200, 44100,
  ];
  assertClose(Array.from(inverse(hilbert(5))), expected, { relative: 1e-11 });
});

Deno.test("solve takes several right-hand sides at once", () => {
  // By hand: columns (1, 3) and (2, −1).
  assertClose(Array.from(solve([2, 1, 1, 3], [5, 3, 10, -1])), [1, 2, 3, -1], { relative: 1e-15 });
});

Deno.test("a zero in the first pivot's place is no obstacle", () => {
  assertEquals(Array.from(solve([0, 2, 3, 0], [4, 9])), [3, 2]);
});

Deno.test("a scale of 1e400 between rows is no singularity", () => {
  assertClose(Array.from(inverse([1e-200, 0, 0, 1e200])), [1e200, 0, 0, 1e-200], {
    relative: 1e-15,
  });
});

Deno.test("inverse3 against exact fractions", () => {
  // Of 163ths, by elimination in exact fractions.
  const expected = [47, -26, 20, -26, 56, -18, 20, -18, 64].map((n) => n / 163);
  const result = inverse3([5, 2, -1, 2, 4, 0.5, -1, 0.5, 3]);
  assertClose(Array.from(result), expected, { relative: 1e-14 });
});

Deno.test("inverse3 and inverse agree", () => {
  const A = [4.0e7, 1.2e7, 1.5e6, 1.2e7, 2.1e7, -9.0e5, 1.5e6, -9.0e5, 1.4e7];
  assertClose(Array.from(inverse3(A)), Array.from(inverse(A)), { relative: 1e-13 });
});

Deno.test("multiply takes matrices that are not square", () => {
  assertEquals(Array.from(multiply([1, 2, 3, 4, 5, 6], [1, 0, 0, 1, 1, 1], 3)), [4, 5, 10, 11]);
});

Deno.test("a singular matrix is refused, also where rounding hides it", () => {
  const wanted = "the matrix is singular";
  assertThrows(() => inverse([1, 2, 3, 4, 5, 6, 7, 8, 9]), InputError, wanted);
  // 0.1 + 0.2 is not 0.3 in doubles: the last row misses the sum of the others by rounding.
  assertThrows(
    () => solve([0.1, 0.4, 0.7, 0.2, 0.5, 0.9, 0.3, 0.9, 1.6], [1, 1, 1]),
    InputError,
    wanted,
  );
  assertThrows(() => inverse([0, 0, 0, 0]), InputError, wanted);
  assertThrows(() => inverse3([1, 2, 3, 2, 4, 6, 3, 6, 1]), InputError, "must not be singular");
});

Deno.test("what is no matrix is refused", () => {
  const cases: readonly [unknown, string][] = [
    [undefined, "matrix is missing"],
    ["1234", 'matrix is "1234"'],
    [{ length: 4 }, "matrix is an object"],
    [[], "matrix is a list of 0"],
    [[1, 2, 3], "number of entries of the matrix is 3, must be a square number"],
    [[1, "2", 3, 4], 'matrix entry 1 is "2", must be a finite number'],
    [[1, NaN, 3, 4], "matrix entry 1 is NaN"],
  ];
  for (const [matrix, message] of cases) {
    assertThrows(() => inverse(matrix as number[]), InputError, message);
  }
  assertThrows(() => solve([1, 0, 0, 1], [1, 2, 3]), InputError, "multiple of the 2 rows");
  assertThrows(() => inverse3([1, 0, 0, 1]), InputError, "must be 9");
  assertThrows(() => multiply([1, 2, 3], [1, 2], 2), InputError, "multiple of the inner dimension");
  assertThrows(() => multiply([1, 2], [1, 2], 0), InputError, "whole number, 1 or above");
});

Deno.test("a result beyond the range of doubles is refused", () => {
  assertThrows(() => inverse([1e-320]), InputError, "beyond the range");
  assertThrows(() => multiply([1e200], [1e200], 1), InputError, "beyond the range");
});
