import fc from "fast-check";
import { assert } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { engineeringConstants, thermalExpansion } from "../../lib/laminate/mod.ts";
import {
  crossedLamina,
  halpinTsai,
  hashinHillBounds,
  isotropicFibre,
  longitudinalModulus,
  longitudinalTension,
  majorPoissonRatio,
  mixMoistureExpansion,
  mixThermalExpansion,
  parallelFibreLamina,
  randomLamina,
  reuss,
  shearModulusHalpinTsai,
  transverseModulusHalpinTsai,
  transverseShearModulus,
  type TwoPhase,
  voigt,
} from "../../lib/micromechanics/mod.ts";
import { fibreMassFraction, laminateMoisture } from "../../lib/constituents/mod.ts";
import { assertClose } from "../close.ts";

const SEEDED = { seed: 20261125, numRuns: 300 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Fibres as wide as from polyethylene to high-modulus carbon, positive definite. */
const fibre = fc.record({
  E1: between(20e9, 500e9),
  E2: between(4e9, 90e9),
  G12: between(1.5e9, 40e9),
  nu12: between(0.1, 0.4),
  nu23: between(0, 0.6),
}).filter(({ E1, E2, nu12, nu23 }) => E2 <= E1 && 1 - nu23 - 2 * nu12 ** 2 * E2 / E1 > 0.05)
  .map(({ nu23, ...rest }) => ({ ...rest, G23: rest.E2 / (2 * (1 + nu23)) }));
const resin = fc.record({ E: between(1e9, 5e9), nu: between(0.2, 0.45) });
const mix: fc.Arbitrary<TwoPhase> = fc.record({
  fibre,
  resin,
  fibreVolumeFraction: between(0.01, 0.9),
});

Deno.test("Reuss, Halpin and Tsai, Voigt stand in this order, with their limits in xi", () => {
  fc.assert(
    fc.property(
      between(1e9, 500e9),
      between(1e9, 5e9),
      between(0, 1),
      (fibre, resin, fibreVolumeFraction) => {
        const phases = { fibre, resin, fibreVolumeFraction };
        const [low, high] = [reuss(phases), voigt(phases)];
        for (const xi of [0.5, 1, 2, 10]) {
          const between = halpinTsai(phases, xi);
          assert(between >= low * (1 - 1e-12) && between <= high * (1 + 1e-12));
        }
        assertClose(halpinTsai(phases, 0), low, { relative: 1e-12 });
        assertClose(halpinTsai(phases, 1e12), high, { relative: 1e-8 });
      },
    ),
    SEEDED,
  );
});

Deno.test("without fibre it is the resin, with nothing else the fibre", () => {
  fc.assert(
    fc.property(mix, ({ fibre, resin }) => {
      const none = { fibre, resin, fibreVolumeFraction: 0 };
      const all = { fibre, resin, fibreVolumeFraction: 1 };
      const Gm = resin.E / (2 * (1 + resin.nu));
      assertClose(longitudinalModulus(none), resin.E, { relative: 1e-15 });
      assertClose(longitudinalModulus(all), fibre.E1, { relative: 1e-15 });
      assertClose(transverseModulusHalpinTsai(all), fibre.E2, { relative: 1e-12 });
      assertClose(shearModulusHalpinTsai(none), Gm, { relative: 1e-15 });
      const atResin = hashinHillBounds(none);
      const atFibre = hashinHillBounds(all);
      assertClose([atResin.G23.low, atResin.G23.high], [Gm, Gm], { relative: 1e-12 });
      assertClose([atFibre.E1.low, atFibre.E1.high], [fibre.E1, fibre.E1], { relative: 1e-12 });
      assertClose([atFibre.nu12.low, atFibre.nu12.high], [fibre.nu12, fibre.nu12], {
        relative: 1e-12,
      });
    }),
    SEEDED,
  );
});

Deno.test("the bounds are in order, hold the rule of mixtures below, and G12's is Halpin-Tsai", () => {
  fc.assert(
    fc.property(mix, (one) => {
      const bounds = hashinHillBounds(one);
      for (const { low, high } of Object.values(bounds)) assert(low <= high);
      // E1 of any arrangement is at least the rule of mixtures (Hill 1964).
      assert(bounds.E1.low >= longitudinalModulus(one) * (1 - 1e-12));
      const Gm = one.resin.E / (2 * (1 + one.resin.nu));
      const fibreInResin = one.fibre.G12 >= Gm ? bounds.G12.low : bounds.G12.high;
      assertClose(shearModulusHalpinTsai(one), fibreInResin, { relative: 1e-12 });
    }),
    SEEDED,
  );
});

// E. J. Barbero, Introduction to Composite Materials Design, stress partitioning: G23 with
// η = (3 − 4νm + Gm/Gf)/(4 (1 − νm)); from memory. It is the bound of fibre set in resin.
Deno.test("stress partitioning and the G23 bound of fibre in resin are the same formula", () => {
  fc.assert(
    fc.property(mix, (one) => {
      const { fibre, resin, fibreVolumeFraction: Vf } = one;
      const Gm = resin.E / (2 * (1 + resin.nu));
      const eta = (3 - 4 * resin.nu + Gm / fibre.G23) / (4 * (1 - resin.nu));
      const G23 = Gm * (Vf + eta * (1 - Vf)) / (eta * (1 - Vf) + Vf * Gm / fibre.G23);
      assertClose(transverseShearModulus(one), G23, { relative: 1e-12 });
      const { low, high } = hashinHillBounds(one).G23;
      assert(Math.min(Math.abs(low / G23 - 1), Math.abs(high / G23 - 1)) < 1e-12);
    }),
    SEEDED,
  );
});

Deno.test("two equal phases are one", () => {
  fc.assert(
    fc.property(resin, between(0, 1), between(-1e-5, 1e-4), (resin, fibreVolumeFraction, alpha) => {
      const fibre = { ...isotropicFibre(resin), alpha1: alpha, alpha2: alpha };
      const one = { fibre, resin: { ...resin, alpha }, fibreVolumeFraction };
      const { E1, G23, nu12, planeStrainBulk } = hashinHillBounds(one);
      const G = resin.E / (2 * (1 + resin.nu));
      assertClose([E1.low, E1.high, transverseModulusHalpinTsai(one)], Array(3).fill(resin.E), {
        relative: 1e-12,
      });
      assertClose([G23.low, G23.high], [G, G], { relative: 1e-12 });
      assertClose([nu12.low, nu12.high], [resin.nu, resin.nu], { relative: 1e-12 });
      assertClose(planeStrainBulk.low, G / (1 - 2 * resin.nu), { relative: 1e-11 });
      const heat = mixThermalExpansion(one);
      assertClose([heat.along, heat.across], [alpha, alpha], { relative: 1e-12, absolute: 1e-20 });
    }),
    SEEDED,
  );
});

Deno.test("phases that expand alike do so together, whatever their stiffness", () => {
  fc.assert(
    fc.property(mix, between(1e-6, 1e-4), (one, alpha) => {
      const heat = mixThermalExpansion({
        ...one,
        fibre: { ...one.fibre, alpha1: alpha, alpha2: alpha },
        resin: { ...one.resin, alpha },
      });
      assertClose([heat.along, heat.across], [alpha, alpha], { relative: 1e-12 });
    }),
    SEEDED,
  );
});

// Heat and moisture are one mechanics: a resin that swells by β m_resin in dry fibres is one that
// expands in fibres that do not; the moisture of the laminate is that of its resin, shared out.
Deno.test("moisture strains a mix as heat does when the fibre does not expand", () => {
  fc.assert(
    fc.property(mix, between(0.1, 0.6), between(1e-3, 0.06), (one, beta, resinMoisture) => {
      const density = { fibre: 1800, resin: 1150 };
      const moist = mixMoistureExpansion({
        ...one,
        fibre: { ...one.fibre, density: density.fibre },
        resin: { ...one.resin, density: density.resin, beta },
      });
      const W = fibreMassFraction(one.fibreVolumeFraction, {
        fibreDensity: density.fibre,
        resinDensity: density.resin,
      });
      const content = laminateMoisture(resinMoisture, W);
      const heat = mixThermalExpansion({
        ...one,
        fibre: { ...one.fibre, alpha1: 0, alpha2: 0 },
        resin: { ...one.resin, alpha: beta * resinMoisture },
      });
      assertClose([moist.along * content, moist.across * content], [heat.along, heat.across], {
        relative: 1e-12,
      });
    }),
    SEEDED,
  );
});

Deno.test("moduli scale with moduli", () => {
  fc.assert(
    fc.property(mix, between(0.1, 10), (one, factor) => {
      const { fibre, resin } = one;
      const scaled = {
        ...one,
        fibre: {
          E1: fibre.E1 * factor,
          E2: fibre.E2 * factor,
          G12: fibre.G12 * factor,
          G23: fibre.G23 * factor,
          nu12: fibre.nu12,
        },
        resin: { E: resin.E * factor, nu: resin.nu },
      };
      const [a, b] = [hashinHillBounds(one), hashinHillBounds(scaled)];
      for (const name of ["E1", "G12", "G23", "planeStrainBulk"] as const) {
        assertClose([b[name].low, b[name].high], [a[name].low * factor, a[name].high * factor], {
          relative: 1e-12,
        });
      }
      assertClose([b.nu12.low, b.nu12.high], [a.nu12.low, a.nu12.high], { relative: 1e-12 });
      assertClose(majorPoissonRatio(scaled), majorPoissonRatio(one), { relative: 1e-15 });
    }),
    SEEDED,
  );
});

Deno.test("the fibre's strength counts in proportion, and the resin never lowers it", () => {
  fc.assert(
    fc.property(mix, between(200e6, 4000e6), between(20e6, 100e6), (one, Xf, Xm) => {
      const { strength } = longitudinalTension({
        ...one,
        fibre: { ...one.fibre, tensileStrength: Xf },
        resin: { ...one.resin, tensileStrength: Xm },
      });
      assert(strength >= Xf * one.fibreVolumeFraction);
      const strain = Xf / one.fibre.E1;
      // All fibres broken, the resin left bears Xm (1 − Vf), which counts where fibres are few.
      const most = Math.max(
        strain * longitudinalModulus(one),
        Xm * (1 - one.fibreVolumeFraction),
      );
      assert(strength <= most * (1 + 1e-12));
    }),
    SEEDED,
  );
});

const strands = mix.map((mix) =>
  parallelFibreLamina({
    fibreVolumeFraction: mix.fibreVolumeFraction,
    fibre: {
      ...mix.fibre,
      density: 2000,
      alpha1: 1e-6,
      alpha2: 2e-5,
      tensileStrength: 1e9,
      compressiveStrength: 1e9,
    },
    resin: {
      ...mix.resin,
      density: 1200,
      alpha: 6e-5,
      beta: 0.33,
      tensileStrength: 6e7,
      compressiveStrength: 1e8,
      shearStrength: 4e7,
      hardenerPhr: 30,
    },
  })
);

// The laminate room works the same cross-ply from its own A matrix.
Deno.test("a cloth is the membrane of its strands laid crosswise, in stiffness and in heat", () => {
  fc.assert(
    fc.property(strands, between(0.05, 0.95), (lamina, share) => {
      const cloth = crossedLamina(lamina, share);
      const half = share / 2;
      const stack = [
        { lamina, thickness: half, angleDeg: 0 },
        { lamina, thickness: 1 - share, angleDeg: 90 },
        { lamina, thickness: half, angleDeg: 0 },
      ];
      const { Ex, Ey, nuxy, Gxy } = engineeringConstants(stack).membraneFree;
      assertClose([cloth.E1, cloth.E2, cloth.G12], [Ex, Ey, Gxy], { relative: 1e-10 });
      assertClose(cloth.nu12, nuxy, { relative: 1e-10 });
      const { alphaX, alphaY } = thermalExpansion(stack).membrane;
      assertClose([cloth.alpha1, cloth.alpha2], [alphaX, alphaY], {
        relative: 1e-9,
        absolute: 1e-15,
      });
    }),
    SEEDED,
  );
});

Deno.test("a cloth turned by its shares is the same cloth turned; warp alone is the strand", () => {
  fc.assert(
    fc.property(strands, between(0, 1), (lamina, share) => {
      const a = crossedLamina(lamina, share);
      const b = crossedLamina(lamina, 1 - share);
      assertClose([a.E1, a.E2, a.G13], [b.E2, b.E1, b.G23], { relative: 1e-12 });
      assertClose([a.alpha1, a.beta1!], [b.alpha2, b.beta2!], { relative: 1e-9 });
      const warp = crossedLamina(lamina, 1);
      assertClose([warp.E1, warp.E2, warp.nu12], [lamina.E1, lamina.E2, lamina.nu12], {
        relative: 1e-12,
      });
      assertClose([warp.alpha1, warp.alpha2], [lamina.alpha1, lamina.alpha2], {
        relative: 1e-9,
        absolute: 1e-18,
      });
    }),
    SEEDED,
  );
});

// Mean of the rotated stiffness over all directions, summed here at equal steps: a trapezoid sum
// of a trigonometric polynomial of degree four is exact from five directions on.
Deno.test("a mat is the mean of its strands over all directions", () => {
  fc.assert(
    fc.property(strands, (lamina) => {
      const whole = 1 - lamina.nu12 ** 2 * lamina.E2 / lamina.E1;
      const [q11, q22, q12, q66] = [
        lamina.E1 / whole,
        lamina.E2 / whole,
        lamina.nu12 * lamina.E2 / whole,
        lamina.G12,
      ];
      let Q11 = 0, Q12 = 0, Q66 = 0;
      for (let i = 0; i < 8; i++) {
        const c = Math.cos(i * Math.PI / 8) ** 2, s = 1 - c;
        Q11 += (q11 * c * c + 2 * (q12 + 2 * q66) * c * s + q22 * s * s) / 8;
        Q12 += ((q11 + q22 - 4 * q66) * c * s + q12 * (s * s + c * c)) / 8;
        Q66 += ((q11 + q22 - 2 * q12 - 2 * q66) * c * s + q66 * (s * s + c * c)) / 8;
      }
      const mat = randomLamina(lamina);
      assertClose([mat.E1, mat.nu12, mat.G12], [Q11 - Q12 * Q12 / Q11, Q12 / Q11, Q66], {
        relative: 1e-11,
      });
      assertClose(mat.G12, mat.E1 / (2 * (1 + mat.nu12)), { relative: 1e-12 });
    }),
    SEEDED,
  );
});

Deno.test("numbers that are none never get through", () => {
  const odd = fc.constantFrom(NaN, Infinity, undefined, null, "70e9", [], {});
  fc.assert(
    fc.property(odd, fc.constantFrom("E1", "E2", "G12", "nu12", "G23"), (bad, name) => {
      const fibre = { ...isotropicFibre({ E: 72e9, nu: 0.2 }), [name]: bad };
      try {
        hashinHillBounds({ fibre, resin: { E: 3e9, nu: 0.35 }, fibreVolumeFraction: 0.4 });
        assert(false, `${name} ${bad} was taken`);
      } catch (error) {
        assert(error instanceof InputError, String(error));
      }
    }),
    { ...SEEDED, numRuns: 60 },
  );
});
