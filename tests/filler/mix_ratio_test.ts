import { assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import {
  checkMix,
  massRatioReadAsVolume,
  measureMix,
  phrFromVolumeRatio,
  splitMix,
  volumeRatioFromPhr,
  type WeighedMix,
} from "../../lib/filler/mod.ts";

const densities = { resinDensity: 1147, hardenerDensity: 962 };

// Expected figures of this file: exact fractions (Python's fractions), printed as doubles.

Deno.test("a mix by mass gives its volumes", () => {
  const mix = measureMix(0.37, 28.5, densities);
  assertClose(mix.hardenerMass, 0.10545, { relative: 1e-14 });
  assertClose(mix.totalMass, 0.47545, { relative: 1e-14 });
  assertClose(mix.resinVolume, 0.0003225806451612903, { relative: 1e-14 });
  assertClose(mix.hardenerVolume, 0.00010961538461538461, { relative: 1e-14 });
  assertClose(mix.totalVolume, 0.0004321960297766749, { relative: 1e-14 });
  assertClose(mix.density, 1100.0795177264247, { relative: 1e-14 });
  assertClose(mix.vhr, 33.98076923076923, { relative: 1e-14 });
  assertClose(volumeRatioFromPhr(28.5, densities), 33.98076923076923, { relative: 1e-14 });
  assertClose(
    phrFromVolumeRatio(50, { resinDensity: 1160, hardenerDensity: 986 }),
    42.5,
    { relative: 1e-14 },
  );
});

Deno.test("a mass of mix is split by the ratio", () => {
  const mix = splitMix(0.83, 28.5);
  assertClose(mix.hardenerMass, 0.18408560311284047, { relative: 1e-14 });
  assertClose(mix.resinMass, 0.6459143968871596, { relative: 1e-14 });
  assertClose(mix.resinMass + mix.hardenerMass, 0.83, { relative: 1e-15 });
});

Deno.test("a ratio by mass read by volume leaves the mix short of the lighter hardener", () => {
  const slip = massRatioReadAsVolume(28.5, densities);
  assertClose(slip.actualPhr, 23.903225806451612, { relative: 1e-14 });
  assertClose(slip.deviation, -0.16129032258064516, { relative: 1e-14 });
});

const weighed: WeighedMix = {
  resin: { value: 0.4, u: 0.001 },
  hardener: { value: 0.095, u: 0.0005 },
  targetPhr: 25,
};

Deno.test("a weighed mix is compared with its target and mended either way", () => {
  const found = checkMix(weighed);
  assertClose(found.phr.value, 23.75, { relative: 1e-14 });
  // u² = (100 u_h/m_r)² + (phr u_r/m_r)²; sensitivities are numerical, hence 1e-10.
  assertClose(found.phr.u, 0.13838493640927830, { relative: 1e-10 });
  assertClose(found.deviation, -0.05, { relative: 1e-13 });
  assertClose(found.hardenerToAdd, 0.005, { relative: 1e-13 });
  assertClose(found.resinToAdd, -0.02, { relative: 1e-13 });
});

Deno.test("what is added brings the ratio to its target", () => {
  const over = checkMix({ ...weighed, hardener: { value: 0.11, u: 0 } });
  assertClose(over.hardenerToAdd, -0.01, { relative: 1e-13 });
  assertClose(100 * 0.11 / (0.4 + over.resinToAdd), 25, { relative: 1e-14 });
});

Deno.test("a cup without hardener still has an uncertainty", () => {
  const none = checkMix({ ...weighed, hardener: { value: 0, u: 0.0005 } });
  assertClose(none.phr.u, 0.125, { relative: 1e-10 });
});

Deno.test("mixing refuses what cannot be", () => {
  assertThrows(() => splitMix(-1, 25), InputError, "mass of mix is -1 kg");
  assertThrows(() => measureMix(0, 25, densities), InputError, "resin mass is 0 kg");
  assertThrows(
    () => phrFromVolumeRatio(30, { resinDensity: 0, hardenerDensity: 1 }),
    InputError,
    "resin density is 0 kg/m³",
  );
  assertThrows(
    () => phrFromVolumeRatio(30, undefined as unknown as typeof densities),
    InputError,
    "densities is missing",
  );
  assertThrows(() => checkMix({ ...weighed, targetPhr: 0 }), InputError, "target phr is 0");
  assertThrows(
    () => checkMix({ ...weighed, resin: 0.4 as unknown as WeighedMix["resin"] }),
    InputError,
    "resin is 0.4, must be an object",
  );
  assertThrows(() => measureMix(1e308, 1e10, densities), InputError, "beyond the range");
});
