/**
 * Certified figures of NIST's Statistical Reference Datasets (Information Technology Laboratory,
 * public domain), printed to 15 digits. Tolerances are what double precision can reach on each set
 * (known by solving at 50 digits), and standard deviations come out one digit lower at most.
 */
import {
  fitLine,
  fitPolynomial,
  regress,
  type Regression,
  summarise,
} from "@laminate/notebooks/statistics";
import { assertClose } from "../close.ts";
import * as data from "./nist_strd_data.ts";

interface Certified {
  readonly estimates: readonly number[];
  readonly errors: readonly number[];
  readonly residualSd: number;
  readonly rSquared: number;
}

/** Digits that a set allows for its coefficients and for their standard deviations. */
interface Digits {
  readonly estimates: number;
  readonly errors: number;
}

function assertCertified(fit: Regression, certified: Certified, digits: Digits): void {
  const values = fit.coefficients.map(({ value }) => value);
  const errors = fit.coefficients.map(({ u }) => u);
  const relative = 10 ** -digits.errors;
  assertClose(values, certified.estimates, { relative: 10 ** -digits.estimates }, "estimates");
  assertClose(errors, certified.errors, { relative }, "standard deviations");
  assertClose(fit.residualSd, certified.residualSd, { relative }, "residual sd");
  assertClose(fit.rSquared, certified.rSquared, { relative: 1e-9 }, "r²");
}

const NORRIS: Certified = {
  estimates: [-0.262323073774029, 1.00211681802045],
  errors: [0.232818234301152, 0.429796848199937E-03],
  residualSd: 0.884796396144373,
  rSquared: 0.999993745883712,
};

const LONGLEY: Certified = {
  estimates: [
    -3482258.63459582,
    15.0618722713733,
    -0.358191792925910E-01,
    -2.02022980381683,
    -1.03322686717359,
    -0.511041056535807E-01,
    1829.15146461355,
  ],
  errors: [
    890420.383607373,
    84.9149257747669,
    0.334910077722432E-01,
    0.488399681651699,
    0.214274163161675,
    0.226073200069370,
    455.478499142212,
  ],
  residualSd: 304.854073561965,
  rSquared: 0.995479004577296,
};

const FILIP: Certified = {
  estimates: [
    -1467.48961422980,
    -2772.17959193342,
    -2316.37108160893,
    -1127.97394098372,
    -354.478233703349,
    -75.1242017393757,
    -10.8753180355343,
    -1.06221498588947,
    -0.670191154593408E-01,
    -0.246781078275479E-02,
    -0.402962525080404E-04,
  ],
  errors: [
    298.084530995537,
    559.779865474950,
    466.477572127796,
    227.204274477751,
    71.6478660875927,
    15.2897178747400,
    2.23691159816033,
    0.221624321934227,
    0.142363763154724E-01,
    0.535617408889821E-03,
    0.896632837373868E-05,
  ],
  residualSd: 0.334801051324544E-02,
  rSquared: 0.996727416185620,
};

const WAMPLER3_ERRORS = [
  2152.32624678170,
  2363.55173469681,
  779.343524331583,
  101.475507550350,
  5.64566512170752,
  0.112324854679312,
];

Deno.test("NIST Norris, as a line and as a polynomial", () => {
  const readings = { x: data.NORRIS_X, y: data.NORRIS_Y };
  assertCertified(fitPolynomial(readings, 1), NORRIS, { estimates: 12, errors: 12 });
  const line = fitLine(readings);
  const [intercept, slope] = NORRIS.estimates;
  // The certified figures carry 15 digits; the intercept is small beside the data, so 12 of its own.
  assertClose(line.slope.value, slope!, { relative: 1e-13 });
  assertClose(line.intercept.value, intercept!, { relative: 1e-12 });
  assertClose([line.intercept.u, line.slope.u], NORRIS.errors, { relative: 1e-12 });
  assertClose(line.residualSd, NORRIS.residualSd, { relative: 1e-12 });
  assertClose(line.rSquared, NORRIS.rSquared, { relative: 1e-14 });
});

Deno.test("NIST Pontius, the deflection of a load cell", () => {
  assertCertified(
    fitPolynomial({ x: data.PONTIUS_X, y: data.PONTIUS_Y }, 2),
    {
      estimates: [0.673565789473684E-03, 0.732059160401003E-06, -0.316081871345029E-14],
      errors: [0.107938612033077E-03, 0.157817399981659E-09, 0.486652849992036E-16],
      residualSd: 0.205177424076185E-03,
      rSquared: 0.999999900178537,
    },
    { estimates: 11, errors: 11 },
  );
});

Deno.test("NIST NoInt1 and NoInt2: through the origin, r² about zero", () => {
  const sets = [
    [data.NOINT1_X, data.NOINT1_Y, {
      estimates: [2.07438016528926],
      errors: [0.165289256198347E-01],
      residualSd: 3.56753034006338,
      rSquared: 0.999365492298663,
    }],
    [data.NOINT2_X, data.NOINT2_Y, {
      estimates: [0.727272727272727],
      errors: [0.420827318078432E-01],
      residualSd: 0.369274472937998,
      rSquared: 0.993348115299335,
    }],
  ] as const;
  for (const [x, y, certified] of sets) {
    const digits = { estimates: 14, errors: 14 };
    assertCertified(fitPolynomial({ x, y }, 1, { intercept: false }), certified, digits);
    const line = fitLine({ x, y }, { throughOrigin: true });
    assertClose(line.slope.value, certified.estimates[0], { relative: 1e-14 });
    assertClose(line.slope.u, certified.errors[0], { relative: 1e-14 });
    assertClose(line.residualSd, certified.residualSd, { relative: 1e-14 });
    assertClose(line.rSquared, certified.rSquared, { relative: 1e-14 });
    assertClose(line.intercept.value, 0, {});
  }
});

Deno.test("NIST Longley: six columns that nearly repeat each other", () => {
  const columns = [
    data.LONGLEY_X1,
    data.LONGLEY_X2,
    data.LONGLEY_X3,
    data.LONGLEY_X4,
    data.LONGLEY_X5,
    data.LONGLEY_X6,
  ];
  assertCertified(regress(columns, data.LONGLEY_Y), LONGLEY, { estimates: 11, errors: 11 });
});

Deno.test("NIST Filip: a polynomial of degree 10, on which normal equations keep no digit", () => {
  const readings = { x: data.FILIP_X, y: data.FILIP_Y };
  assertCertified(fitPolynomial(readings, 10), FILIP, { estimates: 7, errors: 6 });
});

Deno.test("NIST Wampler1 and Wampler2: exact polynomials of degree 5", () => {
  const x = Array.from({ length: 21 }, (_, i) => i);
  const first = fitPolynomial({ x, y: data.WAMPLER1_Y }, 5);
  assertClose(first.coefficients.map(({ value }) => value), [1, 1, 1, 1, 1, 1], { relative: 1e-8 });
  const second = fitPolynomial({ x, y: data.WAMPLER2_Y }, 5);
  const tenths = [1, 0.1, 0.01, 0.001, 0.0001, 0.00001];
  assertClose(second.coefficients.map(({ value }) => value), tenths, { relative: 1e-10 });
  // The certified scatter is 0; what is left is rounding beside readings up to 3e6 and 63.
  assertClose(first.residualSd, 0, { absolute: 1e-7 });
  assertClose(second.residualSd, 0, { absolute: 1e-12 });
});

Deno.test("NIST Wampler3 to Wampler5: the same polynomial under ever larger scatter", () => {
  const x = Array.from({ length: 21 }, (_, i) => i);
  const sets = [
    [data.WAMPLER3_Y, 1, 0.999995559025820, 8],
    [data.WAMPLER4_Y, 100, 0.957478440825662, 7],
    [data.WAMPLER5_Y, 10_000, 0.224668921574940E-02, 5],
  ] as const;
  for (const [y, scatter, rSquared, digits] of sets) {
    assertCertified(
      fitPolynomial({ x, y }, 5),
      {
        estimates: [1, 1, 1, 1, 1, 1],
        errors: WAMPLER3_ERRORS.map((error) => error * scatter),
        residualSd: 2360.14502379268 * scatter,
        rSquared,
      },
      { estimates: digits, errors: 11 },
    );
  }
});

/** NIST's NumAcc2 to NumAcc4: a middle, then 500 pairs 0.1 below and above it. */
function alternating(below: number, middle: number, above: number): number[] {
  return [middle, ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? below : above))];
}

Deno.test("NIST univariate sets: mean, standard deviation, correlation with the reading before", () => {
  const sets: readonly [string, ArrayLike<number>, readonly [number, number, number], number][] = [
    [
      "PiDigits",
      Array.from(data.PI_DIGITS, Number),
      [4.53480000000000, 2.86733906028871, -0.00355099287237972],
      1e-12,
    ],
    ["Lottery", data.LOTTERY, [518.958715596330, 291.699727470969, -0.120948622967393], 1e-12],
    ["Lew", data.LEW, [-177.435000000000, 277.332168044316, -0.307304800605679], 1e-12],
    ["Mavro", data.MAVRO, [2.00185600000000, 0.000429123454003053, 0.937989183438248], 1e-12],
    ["Michelso", data.MICHELSO, [299.852400000000, 0.0790105478190518, 0.535199668621283], 1e-12],
    ["NumAcc1", [10000001, 10000003, 10000002], [10000002, 1, -0.5], 1e-15],
    ["NumAcc2", alternating(1.1, 1.2, 1.3), [1.2, 0.1, -0.999], 1e-13],
    // The decimals are rounded when read: 9.5 and 8.3 digits of the scatter are left in the data.
    ["NumAcc3", alternating(1000000.1, 1000000.2, 1000000.3), [1000000.2, 0.1, -0.999], 4e-10],
    ["NumAcc4", alternating(10000000.1, 10000000.2, 10000000.3), [10000000.2, 0.1, -0.999], 6e-9],
  ];
  for (const [name, values, [mean, sd, lag1], relative] of sets) {
    const summary = summarise(values);
    assertClose(summary.mean, mean, { relative: 1e-14 }, `${name} mean`);
    assertClose(summary.sd, sd, { relative }, `${name} sd`);
    assertClose(summary.lag1, lag1, { relative: Math.max(relative, 1e-11) }, `${name} lag 1`);
  }
});
