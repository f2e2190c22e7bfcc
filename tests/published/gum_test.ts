/**
 * Worked examples of uncertainty: JCGM 100:2008 (the GUM), annex H; ISO/TS 28037:2010; the
 * EURACHEM/CITAC guide QUAM (3rd edition, 2012); NIST TN 1900 (2015). Printed figures are matched
 * to their last digit; where the book rounds on the way, the tolerance says so.
 */
import { assert, assertEquals } from "@std/assert";
import {
  chiSquaredQuantile,
  combineParts,
  correlationOf,
  coverage,
  fitLine,
  fromHalfWidth,
  fromReadings,
  inverseReading,
  lineAt,
  newReadingAt,
  propagate,
  propagateTogether,
} from "@laminate/notebooks/statistics";
import { assertClose } from "../close.ts";

Deno.test("GUM H.1: calibration of an end gauge, in nm", () => {
  const theta = combineParts(-0.1, [{ u: 0.2 }, { u: fromHalfWidth(0, 0.5, "arcsine").u }]);
  const difference = combineParts(215, [
    { u: 5.8, dof: 24 },
    { u: 3.9, dof: 5 },
    { u: 6.7, dof: 8 },
  ]);
  assertClose(difference.u, 9.7, { absolute: 0.05 });
  // Printed 25.6 from rounded parts (9.7⁴); unrounded 25.447.
  assertClose(difference.dof!, 25.4472508, { relative: 1e-8 });
  const length = propagate(
    ({ standard, difference, theta, alpha, alphaGap, thetaGap }) =>
      standard + difference - standard * (alphaGap * theta + alpha * thetaGap),
    {
      standard: { value: 50_000_623, u: 25, dof: 18 },
      difference,
      theta,
      alpha: fromHalfWidth(11.5e-6, 2e-6),
      alphaGap: { ...fromHalfWidth(0, 1e-6), dof: 50 },
      thetaGap: { ...fromHalfWidth(0, 0.05), dof: 2 },
    },
  );
  assertClose(length.value, 50_000_838, { absolute: 0.5 });
  assertClose(length.u, 32, { absolute: 0.5 });
  assertEquals(Math.floor(length.dof!), 16);
  const parts = Object.fromEntries(length.budget.map((line) => [line.name, line.contribution]));
  assertClose(parts.standard!, 25, { absolute: 0.05 });
  assertClose(parts.difference!, 9.7, { absolute: 0.05 });
  assertClose(parts.alphaGap!, 2.9, { absolute: 0.05 });
  assertClose(parts.thetaGap!, -16.6, { absolute: 0.05 });
  const { factor, U } = coverage(length, 0.99);
  // 2.92 and 93 from memory of the text; unrounded 92.48, since u is 31.66 and not 32.
  assertClose(factor, 2.92, { absolute: 0.005 });
  assertClose(U, 92.4832762, { relative: 1e-7 });
  // First order is blind to both the temperature and the expansion: the text says so in H.1.7.
  assertEquals(length.sensitivity.theta, 0);
  assertEquals(length.sensitivity.alpha, 0);
  assertEquals(length.notes.length, 2);
});

/** Five simultaneous readings: volts, milliamperes, radians (GUM table H.2). */
const H2 = {
  V: [5.007, 4.994, 5.005, 4.99, 4.999],
  I: [19.663, 19.639, 19.64, 19.685, 19.678].map((mA) => mA / 1000),
  phi: [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
};

Deno.test("GUM H.2: resistance, reactance and impedance from correlated means", () => {
  const [V, I, phi] = [fromReadings(H2.V), fromReadings(H2.I), fromReadings(H2.phi)];
  assertClose([V.u, I.u, phi.u], [0.0032, 0.0000095, 0.00075], { relative: 0.01 });
  const coefficients = {
    VI: correlationOf(H2.V, H2.I),
    Vphi: correlationOf(H2.V, H2.phi),
    Iphi: correlationOf(H2.I, H2.phi),
  };
  assertClose(Object.values(coefficients), [-0.36, 0.86, -0.65], { absolute: 0.005 });
  const { results, correlations } = propagateTogether(
    ({ V, I, phi }) => ({
      R: (V / I) * Math.cos(phi),
      X: (V / I) * Math.sin(phi),
      Z: V / I,
    }),
    { V, I, phi },
    {
      correlations: [
        { between: ["V", "I"], coefficient: coefficients.VI },
        { between: ["V", "phi"], coefficient: coefficients.Vphi },
        { between: ["I", "phi"], coefficient: coefficients.Iphi },
      ],
    },
  );
  const { R, X, Z } = results;
  assertClose([R.value, X.value, Z.value], [127.732, 219.847, 254.260], { absolute: 0.0006 });
  // The printed u come from rounded intermediates (0.295 printed, 0.2956 unrounded): ± 0.001.
  assertClose([R.u, X.u, Z.u], [0.071, 0.295, 0.236], { absolute: 0.001 });
  assertClose([R.u, X.u, Z.u], [0.0710714074, 0.295581677, 0.23633613], { relative: 1e-8 });
  assertEquals(correlations.map(({ between }) => between), [["R", "X"], ["R", "Z"], ["X", "Z"]]);
  const printed = [-0.588, -0.485, 0.993];
  assertClose(correlations.map(({ coefficient }) => coefficient), printed, { absolute: 0.001 });
  // No effective degrees of freedom where inputs are correlated, and the note says so.
  assertEquals(R.dof, undefined);
  assertEquals(R.notes.length, 1);
});

Deno.test("GUM H.2: leaving the correlation out gives another u", () => {
  const inputs = { V: fromReadings(H2.V), I: fromReadings(H2.I), phi: fromReadings(H2.phi) };
  const R = propagate(({ V, I, phi }) => (V / I) * Math.cos(phi), inputs);
  // By the same formula with zero coefficients, computed independently.
  assertClose(R.u, 0.194544454, { relative: 1e-8 });
});

Deno.test("GUM H.3: calibration line of a thermometer", () => {
  // deno-fmt-ignore
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511];
  // deno-fmt-ignore
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160];
  const fit = fitLine({ x: t.map((value) => value - 20), y: b });
  assertClose(fit.intercept.value, -0.1712, { absolute: 0.00005 });
  assertClose(fit.slope.value, 0.00218, { absolute: 0.000005 });
  assertClose(fit.intercept.u, 0.0029, { absolute: 0.00005 });
  assertClose(fit.slope.u, 0.00067, { absolute: 0.000005 });
  assertClose(fit.correlation, -0.930, { absolute: 0.0005 });
  assertClose(fit.residualSd, 0.0035, { absolute: 0.00005 });
  assertEquals(fit.dof, 9);
  const at30 = lineAt(fit, 10);
  assertClose(at30.value, -0.1494, { absolute: 0.00005 });
  assertClose(at30.u, 0.0041, { absolute: 0.00005 });
  // A single future reading is less certain than the line: by its own s, hypot(0.00414, 0.00350).
  assertClose(newReadingAt(fit, 10).u, 0.00541857255, { relative: 1e-8 });
  // With t0 at the mean, slope and intercept are independent and the line's u stays (H.3.4).
  const mean = t.reduce((sum, value) => sum + value, 0) / t.length;
  const centred = fitLine({ x: t.map((value) => value - mean), y: b });
  assertClose(centred.correlation, 0, { absolute: 1e-12 });
  assertClose(lineAt(centred, 30 - mean).u, at30.u, { relative: 1e-12 });
});

Deno.test("ISO/TS 28037: line with known u(y), and reading back from it", () => {
  const fit = fitLine({ x: [1, 2, 3, 4, 5, 6], y: [3.3, 5.6, 7.1, 9.3, 10.7, 12.1] }, { uY: 0.5 });
  assertClose(fit.intercept.value, 1.866667, { absolute: 5e-7 });
  assertClose(fit.slope.value, 1.757143, { absolute: 5e-7 });
  assertClose(fit.intercept.u, 0.4654747, { absolute: 5e-8 });
  assertClose(fit.slope.u, 0.1195229, { absolute: 5e-8 });
  assertClose(fit.correlation * fit.intercept.u * fit.slope.u, -0.050, { absolute: 1e-12 });
  assertClose(fit.chiSquared, 1.665, { absolute: 0.0005 });
  // The test of the line: its chi-squared stays below the 95 % point at 4 degrees of freedom.
  assertClose(chiSquaredQuantile(0.95, fit.dof), 9.488, { absolute: 0.0005 });
  assert(fit.chiSquared < chiSquaredQuantile(0.95, fit.dof));
  const back = inverseReading(fit, { value: 10.5, u: 0.5 });
  assertClose(back.value, 4.913, { absolute: 0.0005 });
  assertClose(back.u, 0.322, { absolute: 0.0005 });
});

Deno.test("Welch–Satterthwaite with one component that is known", () => {
  // A teaching example of a university course: u 0.57 with 9 degrees of freedom, 0.25 with none.
  const sum = propagate(({ a, b }) => a + b, {
    a: { value: 0, u: 0.57, dof: 9 },
    b: { value: 0, u: 0.25 },
  });
  assertClose(sum.dof!, 12.8, { absolute: 0.05 });
  assertClose(combineParts(0, [{ u: 0.57, dof: 9 }, { u: 0.25 }]).dof!, sum.dof!, {
    relative: 1e-9,
  });
});

Deno.test("QUAM A1: a solution made up by weighing", () => {
  const volume = combineParts(100, [
    fromHalfWidth(100, 0.1, "triangular"),
    { u: 0.02 },
    fromHalfWidth(100, 0.084),
  ]);
  const concentration = propagate(({ mass, purity, volume }) => (1000 * mass * purity) / volume, {
    mass: { value: 100.28, u: 0.05 },
    purity: fromHalfWidth(0.9999, 0.0001),
    volume,
  });
  assertClose(concentration.value, 1002.7, { absolute: 0.05 });
  // 0.835199 as printed by an independent calculator; the Guide itself rounds to 0.84 on the way.
  assertClose(concentration.u, 0.835199, { absolute: 5e-7 });
  assertEquals(concentration.notes, []);
});

Deno.test("NIST TN 1900, E3: viscosity by a falling ball, first order", () => {
  const viscosity = propagate(
    ({ muC, tM, tC, rhoB, rhoM, rhoC }) => (muC * (rhoB - rhoM) * tM) / ((rhoB - rhoC) * tC),
    {
      muC: { value: 4.63, u: 0.0463 },
      tM: { value: 61, u: 6.1 },
      tC: { value: 36.6, u: 5.49 },
      rhoB: { value: 2217, u: 0.5 },
      rhoM: { value: 1180, u: 0.5 },
      rhoC: { value: 810, u: 0.5 },
    },
  );
  assertClose(viscosity.value, 5.69, { absolute: 0.005 });
  // 1.11 printed is the Monte Carlo value; first order gives 1.0269 (relative parts in quadrature).
  const relative = Math.hypot(0.01, 0.1, 0.15, 0.5 * (1 / 1037 - 1 / 1407), 0.5 / 1037, 0.5 / 1407);
  assertClose(viscosity.u, 5.6874082 * relative, { relative: 1e-7 });
  assertEquals(viscosity.notes.length, 1);
  assert(viscosity.notes[0]!.includes("curves in tC"));
});
