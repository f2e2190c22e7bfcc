import fc from "fast-check";
import { assert } from "@std/assert";
import { assertClose } from "../close.ts";
import {
  checkMix,
  entrainedAir,
  filletSection,
  hashinShtrikmanBounds,
  largestRadius,
  phrFromVolumeRatio,
  puttyDensity,
  puttyForVolume,
  puttyFromResin,
  recipeForDensity,
  splitMix,
  voigtReussBounds,
  volumeRatioFromPhr,
} from "../../lib/filler/mod.ts";

const SEEDED = { seed: 20261125, numRuns: 300 };

function between(min: number, max: number): fc.Arbitrary<number> {
  return fc.double({ min, max, noNaN: true });
}

const ingredients = fc.record({
  resinDensity: between(1000, 1300),
  filler: fc.record({
    particleDensity: between(100, 500),
    bulkDensity: between(60, 300),
    packing: between(0.4, 0.74),
  }),
  airFraction: between(0, 0.3),
  airDensity: between(1, 1.3),
});

Deno.test("a recipe's parts have the density that was asked for, and no mass is lost", () => {
  fc.assert(
    fc.property(ingredients, between(0, 0.95), between(0.01, 5), (made, share, resinMass) => {
      const filler = share * made.filler.packing;
      const target = (1 - made.airFraction) *
          (filler * made.filler.particleDensity + (1 - filler) * made.resinDensity) +
        made.airFraction * made.airDensity;
      const recipe = recipeForDensity(target, made);
      assertClose(recipe.fillerVolumeFraction, filler, { absolute: 1e-12 });
      const batch = puttyFromResin(recipe, resinMass);
      const parts = [
        { mass: resinMass, density: made.resinDensity },
        { mass: batch.fillerMass, density: made.filler.particleDensity },
      ];
      const { airFraction, airDensity } = made;
      assertClose(puttyDensity({ parts, airFraction, airDensity }), target, { relative: 1e-12 });
      assertClose(
        batch.puttyMass,
        resinMass + batch.fillerMass + batch.puttyVolume * airFraction * airDensity,
        { relative: 1e-12 },
      );
      assertClose(puttyForVolume(recipe, batch.puttyVolume).resinMass, resinMass, {
        relative: 1e-12,
      });
      assertClose(entrainedAir({ parts, measuredDensity: target, airDensity }), airFraction, {
        absolute: 1e-12,
      });
    }),
    SEEDED,
  );
});

Deno.test("ratios by mass and by volume go there and back, and a mend meets the target", () => {
  fc.assert(
    fc.property(
      between(1, 200),
      between(900, 1300),
      between(0.01, 5),
      between(0.01, 5),
      (phr, density, resin, hardener) => {
        const densities = { resinDensity: 1150, hardenerDensity: density };
        const back = phrFromVolumeRatio(volumeRatioFromPhr(phr, densities), densities);
        assertClose(back, phr, { relative: 1e-14 });
        const mix = splitMix(resin, phr);
        assertClose(100 * mix.hardenerMass / mix.resinMass, phr, { relative: 1e-12 });
        const found = checkMix({
          resin: { value: resin, u: 0 },
          hardener: { value: hardener, u: 0 },
          targetPhr: phr,
        });
        // Far too much in the cup cancels digits: the limit is set on what was poured.
        const mended = hardener + found.hardenerToAdd;
        assertClose(mended, resin * phr / 100, { absolute: 1e-15 * (hardener + resin * phr) });
        const thinned = resin + found.resinToAdd;
        assertClose(thinned, 100 * hardener / phr, { absolute: 1e-15 * (resin + 100 * hardener) });
      },
    ),
    SEEDED,
  );
});

const modulus = between(0, 100);
const phases = fc.array(
  fc.record({ bulkModulus: modulus, shearModulus: modulus, weight: between(0.01, 1) }),
  { minLength: 1, maxLength: 5 },
).map((drawn) => {
  const sum = drawn.reduce((total, { weight }) => total + weight, 0);
  return drawn.map(({ weight, ...moduli }) => ({ ...moduli, fraction: weight / sum }));
});

Deno.test("the tighter bounds lie inside the wide ones, and all in order", () => {
  fc.assert(
    fc.property(phases, (mixture) => {
      const wide = voigtReussBounds(mixture);
      const tight = hashinShtrikmanBounds(mixture);
      for (const name of ["bulkModulus", "shearModulus", "youngsModulus"] as const) {
        const slack = 1e-9 * (1 + wide[name].high);
        assert(wide[name].low <= tight[name].low + slack, `${name}: Reuss above`);
        assert(tight[name].low <= tight[name].high + slack, `${name}: crossed`);
        assert(tight[name].high <= wide[name].high + slack, `${name}: above Voigt`);
      }
    }),
    SEEDED,
  );
});

Deno.test("bounds scale with the unit and do not know the order of the constituents", () => {
  fc.assert(
    fc.property(phases, (mixture) => {
      const bounds = hashinShtrikmanBounds(mixture);
      const scaled = hashinShtrikmanBounds(
        mixture.map((phase) => ({
          ...phase,
          bulkModulus: phase.bulkModulus * 1024,
          shearModulus: phase.shearModulus * 1024,
        })).reverse(),
      );
      for (const name of ["bulkModulus", "shearModulus", "youngsModulus"] as const) {
        for (const end of ["low", "high"] as const) {
          assertClose(scaled[name][end] / 1024, bounds[name][end], {
            relative: 1e-9,
            absolute: 1e-12,
          });
        }
      }
    }),
    SEEDED,
  );
});

Deno.test("a fillet's area is that of the kite less the sector, and grows with r²", () => {
  fc.assert(
    fc.property(between(0.001, 0.1), between(5, 170), (radius, cornerDeg) => {
      const section = filletSection(radius, cornerDeg);
      // Kite of the two tangents and the two radii, less the sector of the arc.
      const area = radius * section.tangentLength - radius * section.arcLength / 2;
      assertClose(section.area, area, { relative: 1e-10, absolute: 1e-12 * radius ** 2 });
      // Pythagoras from the corner to the centre of the arc.
      assertClose(Math.hypot(radius, section.tangentLength), radius + section.throat, {
        relative: 1e-13,
      });
      const twice = filletSection(2 * radius, cornerDeg);
      assertClose(twice.area, 4 * section.area, { relative: 1e-13 });
      const back = largestRadius({ cornerDeg, limits: { area: section.area } });
      assertClose(back.radius, radius, { relative: 1e-13 });
    }),
    SEEDED,
  );
});

Deno.test("the tangent's series meets its closed form where one hands over to the other", () => {
  // Half turn 0.25 rad is a corner of 180° − 0.5 rad.
  const handover = 180 - 0.5 * 180 / Math.PI;
  const below = filletSection(1, handover + 1e-9).area;
  const above = filletSection(1, handover - 1e-9).area;
  // d(tan x − x)/dx = tan² x, and x is half of the turn.
  assertClose(below, above, { relative: 1e-8 });
  const slope = Math.tan(0.25) ** 2 / 2 * (2e-9 * Math.PI / 180);
  assertClose(above - below, slope, { absolute: 2e-16 });
});
