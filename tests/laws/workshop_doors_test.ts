import { assert } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import * as filler from "../../lib/filler/mod.ts";
import * as joints from "../../lib/joints/mod.ts";
import * as shop from "../../lib/shop/mod.ts";

type Call = (...args: never[]) => unknown;

/** What a crew's cell may hold by mistake. */
const GARBAGE: readonly unknown[] = [
  undefined,
  null,
  "1",
  NaN,
  Infinity,
  -Infinity,
  -1,
  1e308,
  5e-324,
  [],
  {},
  true,
];

/** Every copy of a value in which one place holds garbage. */
function* spoilt(value: unknown): Generator<unknown> {
  for (const garbage of GARBAGE) yield garbage;
  if (Array.isArray(value)) {
    for (const [i, entry] of value.entries()) {
      for (const bad of spoilt(entry)) yield value.with(i, bad);
    }
  } else if (typeof value === "object" && value !== null) {
    for (const [key, entry] of Object.entries(value)) {
      for (const bad of spoilt(entry)) yield { ...value, [key]: bad };
    }
  }
}

/** Where a result holds a number that is none, or nothing under a name. */
function unsound(value: unknown, path = "result"): string | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : `${path} is ${value}`;
  if (value === undefined) return undefined;
  if (typeof value !== "object" || value === null) return undefined;
  for (const [key, entry] of Object.entries(value)) {
    const found = unsound(entry, `${path}.${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}

function tryDoor(name: string, call: Call, args: readonly unknown[]): void {
  call(...args as never[]);
  for (const [i, arg] of args.entries()) {
    for (const bad of spoilt(arg)) {
      const given = args.with(i, bad);
      let result: unknown;
      try {
        result = call(...given as never[]);
      } catch (error) {
        assert(
          error instanceof InputError,
          `${name}(${JSON.stringify(given)}) throws ${error}, which is no InputError`,
        );
        continue;
      }
      const fault = unsound(result);
      assert(fault === undefined, `${name}(${JSON.stringify(given)}): ${fault}`);
    }
  }
}

const densities = { resinDensity: 1150, hardenerDensity: 980 };
const light = { particleDensity: 200, bulkDensity: 120, packing: 0.6 };
const ingredients = { resinDensity: 1150, filler: light, airFraction: 0.05, airDensity: 1.2 };
const recipe = filler.recipeForDensity(700, ingredients);
const { notes: _, ...plainRecipe } = recipe;
const run = { radius: 0.02, cornerDeg: 90, length: 1, count: 2, density: 600 };
const phases = [
  { bulkModulus: 4e9, shearModulus: 1e9, fraction: 0.5 },
  { bulkModulus: 2e9, shearModulus: 2e9, fraction: 0.5 },
];
const parts = [{ mass: 1, density: 1150 }, { mass: 0.2, density: 200 }];

const FILLER: readonly (readonly [string, Call, readonly unknown[]])[] = [
  ["bulkDensity", filler.bulkDensity, [200, 0.6]],
  ["particleDensity", filler.particleDensity, [120, 0.6]],
  ["packingFraction", filler.packingFraction, [120, 200]],
  ["hollowRadiusRatio", filler.hollowRadiusRatio, [200, 2540]],
  ["phrFromVolumeRatio", filler.phrFromVolumeRatio, [30, densities]],
  ["volumeRatioFromPhr", filler.volumeRatioFromPhr, [30, densities]],
  ["splitMix", filler.splitMix, [1, 30]],
  ["measureMix", filler.measureMix, [1, 30, densities]],
  ["massRatioReadAsVolume", filler.massRatioReadAsVolume, [30, densities]],
  [
    "checkMix",
    filler.checkMix,
    [{ resin: { value: 0.4, u: 0.001 }, hardener: { value: 0.1, u: 0.001 }, targetPhr: 25 }],
  ],
  ["puttyDensity", filler.puttyDensity, [{ parts, airFraction: 0.1, airDensity: 1.2 }]],
  ["entrainedAir", filler.entrainedAir, [{ parts, measuredDensity: 500, airDensity: 1.2 }]],
  ["recipeForDensity", filler.recipeForDensity, [700, ingredients]],
  [
    "stiffestRecipe",
    filler.stiffestRecipe,
    [{ particleDiameter: 6e-5, filmThickness: 5e-7 }, ingredients],
  ],
  ["filmFromTrial", filler.filmFromTrial, [{
    resinMass: 0.1,
    fillerMass: 0.02,
    resinDensity: 1150,
    filler: light,
    particleDiameter: 6e-5,
  }]],
  ["puttyFromResin", filler.puttyFromResin, [plainRecipe, 0.1]],
  ["puttyForVolume", filler.puttyForVolume, [plainRecipe, 1e-4]],
  ["puttyStiffness", filler.puttyStiffness, [plainRecipe, {
    resin: { E: 3e9, nu: 0.35 },
    filler: { E: 2e9, nu: 0.2 },
  }]],
  ["puttyModulusRange", filler.puttyModulusRange, [plainRecipe, {
    resin: { E: { low: 2.8e9, high: 3.5e9 }, nu: 0.36 },
    filler: { E: { low: 1.8e9, high: 3.5e9 }, nu: 0.21 },
  }]],
  ["isotropicModuli", filler.isotropicModuli, [3e9, 0.3]],
  ["voigtReussBounds", filler.voigtReussBounds, [phases]],
  ["hashinShtrikmanBounds", filler.hashinShtrikmanBounds, [phases]],
  ["filletSection", filler.filletSection, [0.02, 90]],
  ["filletQuantity", filler.filletQuantity, [run]],
  ["filletSchedule", filler.filletSchedule, [{
    places: [{ name: "corner", radius: 0.02, cornerDeg: 90, length: 1, count: 2 }],
    density: 600,
    lossFraction: 0.2,
  }]],
  ["largestRadius", filler.largestRadius, [{
    cornerDeg: 90,
    limits: { radius: 0.02, tangentLength: 0.02, throat: 0.01, area: 1e-4 },
    makingTolerance: 0.001,
  }]],
  ["gaugeFillet", filler.gaugeFillet, [{
    chord: { value: 0.03, u: 0.0002 },
    sagitta: { value: 0.005, u: 5e-5 },
    limit: 0.0254,
    cornerDeg: 90,
  }]],
  ["stiffenedCorner", filler.stiffenedCorner, [{
    radius: 0.02,
    cornerDeg: 90,
    puttyDensity: 600,
    puttyModulus: 1.5e9,
    clothThickness: 5e-4,
    clothModulus: 18e9,
    clothArealMass: 0.8,
    overlap: 0.04,
  }]],
  ["fairingSkim", filler.fairingSkim, [{
    area: 2,
    gaps: [0, 4e-4],
    excess: 3e-4,
    density: 600,
  }]],
  ["relativeViscosity", filler.relativeViscosity, [0.4, {
    maximumPacking: 0.64,
    intrinsicViscosity: 2.5,
  }]],
  ["fillerForViscosity", filler.fillerForViscosity, [10, { maximumPacking: 0.64 }]],
  ["stirVerdict", filler.stirVerdict, [plainRecipe, {
    maximumPacking: 0.64,
    resinViscosity: 1,
    thickestStirred: 100,
  }]],
];

const row = {
  load: 2400,
  boltCount: 2,
  boltDiameter: 0.006,
  holeDiameter: 0.0065,
  thickness: 0.002,
  width: 0.06,
  edgeDistance: 0.02,
};
const strengths = { bearing: 200e6, netTension: 150e6, shearOut: 60e6 };
const lap = {
  modulus1: 70e9,
  thickness1: 0.002,
  modulus2: 20e9,
  thickness2: 0.003,
  adhesiveShearModulus: 1e9,
  adhesiveThickness: 2e-4,
  width: 0.025,
  overlap: 0.02,
  load: 1000,
};
const stay = { area: 5e-6, modulus: 1e11, length: 2, angleDeg: 30, fittingStiffness: [1e6] };
const panel = { panelStiffness: 1e5, stayStiffness: 5e4, preload: 100 };
const washer = { holeDiameter: 0.006, force: 600, coreStrength: 2e6 };

const JOINTS: readonly (readonly [string, Call, readonly unknown[]])[] = [
  ["designLoad", joints.designLoad, [1000, { loadFactor: 3, fittingFactor: 1.15 }]],
  ["boltStresses", joints.boltStresses, [row]],
  ["boltedReserve", joints.boltedReserve, [row, strengths]],
  ["holeGuidance", joints.holeGuidance, [{
    material: "laminate",
    holeDiameter: 0.006,
    thickness: 0.003,
    edgeDistance: 0.02,
    sideDistance: 0.02,
    pitch: 0.03,
  }]],
  ["buildUpPlies", joints.buildUpPlies, [{
    ...row,
    strengths,
    plyThickness: 2.3e-4,
    pliesThere: 2,
    place: "spine",
    plyArealWeight: 0.2,
  }]],
  ["pullThroughForce", joints.pullThroughForce, [{
    washerDiameter: 0.02,
    faceThickness: 0.001,
    faceShearStrength: 5e7,
  }]],
  ["washerPressure", joints.washerPressure, [washer, 0.03]],
  ["smallestWasher", joints.smallestWasher, [washer]],
  ["backingPlate", joints.backingPlate, [{
    length: 0.1,
    width: 0.06,
    force: 3000,
    overhang: 0.03,
    plateStrength: 150e6,
    coreStrength: 1.5e6,
  }]],
  ["pottedInsert", joints.pottedInsert, [{
    pottingDiameter: 0.03,
    insertDiameter: 0.012,
    coreThickness: 0.01,
    coreShearStrength: 1e6,
    pottingDensity: 700,
  }]],
  ["lapShear", joints.lapShear, [lap]],
  ["lapProfile", joints.lapProfile, [lap, 5]],
  ["bentLap", joints.bentLap, [{
    modulus: 20e9,
    nu: 0.15,
    thickness: 0.002,
    adhesiveModulus: 3e9,
    adhesiveShearModulus: 1.1e9,
    adhesiveThickness: 3e-4,
    width: 0.025,
    overlap: 0.05,
    load: 2000,
  }]],
  ["bondReserve", joints.bondReserve, [
    {
      shearStrength: 20e6,
      peelStrength: 10e6,
      knockDowns: [{ reason: "wet", factor: 0.6, source: "coupon" }],
    },
    { peakShear: 6e6, peakPeel: 3e6 },
  ]],
  ["doublerReach", joints.doublerReach, [{
    plies: 4,
    plyThickness: 2.5e-4,
    modulus: 20e9,
    skinThickness: 5e-4,
    skinModulus: 20e9,
    resinShearModulus: 1.1e9,
    resinThickness: 1e-4,
    taperRatio: 30,
  }]],
  ["stayStiffness", joints.stayStiffness, [stay]],
  ["saggingStiffness", joints.saggingStiffness, [stay, { weightPerLength: 0.4, tension: 50 }]],
  [
    "opposedStays",
    joints.opposedStays,
    [{ stiffness1: 3e5, stiffness2: 1e5, preload: 100 }, 200],
  ],
  ["stayedPanel", joints.stayedPanel, [panel, 600]],
  ["dropImpact", joints.dropImpact, [{ weight: 800, dropHeight: 0.1, stiffness: 1e5 }]],
  ["slackOnImpact", joints.slackOnImpact, [panel, {
    weight: 800,
    dropHeight: 0.01,
    direction: "tightens",
  }]],
  ["stayChain", joints.stayChain, [
    [{ name: "wire", breakingLoad: 5000, efficiency: 0.8 }],
    1000,
    { loadFactor: 3 },
  ]],
];

const rate = { activationEnergy: 55e3, referenceTemperature: 298 };
const log = { times: [0, 3600], temperatures: [290, 300] };
const sheet = { temperature: 298, handlingTime: 36e3, fullCureTime: 6e5, activationEnergy: 55e3 };
const potSheet = {
  potLife: 2400,
  mass: 0.1,
  temperature: 293,
  thinLayerTime: 9000,
  activationEnergy: 55e3,
  massExponent: 0.3,
};
const crew = {
  layingRate: 0.002,
  rateSpread: 0.3,
  mixingTime: 240,
  temperature: 293,
  usableShare: 0.8,
  largestBatch: 0.4,
  sheet: potSheet,
};
const task = { ...crew, totalMass: 1.8, resinPerArea: 0.25 };
const plan = shop.planBatches(task);
const cloth = {
  name: "twill",
  rollWidth: 1.2,
  arealWeight: 0.2,
  balanced: true,
  joinOverlap: 0.05,
  pieces: [
    { name: "skin", shape: { length: 1, width: 0.5 }, angleDeg: 0, trim: 0.02, count: 2 },
    {
      name: "web",
      shape: { outline: [{ x: 0, y: 0 }, { x: 0.5, y: 0 }, { x: 0, y: 0.4 }] },
      angleDeg: 45,
      trim: 0.02,
      count: 1,
    },
  ],
};
const core = {
  name: "foam",
  sheetLength: 1.2,
  sheetWidth: 0.8,
  thickness: 0.006,
  density: 80,
  turnable: true,
  pieces: [{ name: "sole", length: 1, width: 0.5, rampLength: 0.02, count: 1 }],
};
const bag = {
  length: 1,
  width: 0.5,
  height: 0,
  style: "on the mould",
  margin: 0.05,
  flange: 0.1,
  pleatShare: 0.2,
  pleats: 4,
  tapePerPleat: 0.2,
  spareShare: 0.1,
};
const resin = { lossFraction: 0.15, phr: 30, densities };
const coats = [{ name: "peel ply", area: 0.6, arealMass: 0.05, stays: false }];
const line = {
  item: "cloth",
  operation: "laying up",
  mass: { low: 1, likely: 2, high: 3 },
  cost: { low: 1, likely: 2, high: 3 },
  time: { low: 1, likely: 2, high: 3 },
};

const day = {
  part: "sole",
  start: "18:00",
  layers: ["twill"],
  cloths: [{ ...cloth, fibreMassFraction: 0.5 }],
  cores: [{ ...core, faces: 2, resinUptake: 0.2 }],
  coats,
  resin,
  crew,
  cure: sheet,
  bag: { ...bag, vacuum: { gauge: -8e4, outside: 1e5 }, coreStrength: 1e6 },
  fillets: {
    places: [{ name: "corner", radius: 0.02, cornerDeg: 90, length: 1, count: 2 }],
    density: 600,
    lossFraction: 0.2,
  },
  operations: ["sanding"],
};

const SHOP: readonly (readonly [string, Call, readonly unknown[]])[] = [
  ["standardAtmosphere", shop.standardAtmosphere, [500]],
  ["geopotentialAltitude", shop.geopotentialAltitude, [500]],
  ["bagPressure", shop.bagPressure, [{ gauge: -8e4, outside: 1e5 }]],
  ["crushCheck", shop.crushCheck, [{
    compaction: 8e4,
    bagArea: 2,
    coreStrength: 4e5,
    contactShare: 0.5,
  }]],
  ["leakRate", shop.leakRate, [{
    times: [0, 60, 120],
    pressures: [2e4, 2.1e4, 2.2e4],
    volume: 0.006,
    temperature: 293,
  }]],
  ["leakTimeConstant", shop.leakTimeConstant, [{
    first: 2e4,
    second: 6e4,
    time: 3600,
    outside: 1e5,
  }]],
  [
    "pressureAfterLeak",
    shop.pressureAfterLeak,
    [{ start: 2e4, outside: 1e5, timeConstant: 3600 }, 600],
  ],
  [
    "pressureAtTemperature",
    shop.pressureAtTemperature,
    [{ pressure: 2e4, temperature: 300 }, 290],
  ],
  ["pumpHolds", shop.pumpHolds, [{
    throughput: 0.02,
    pumpFlow: 1e-5,
    ultimatePressure: 5e3,
    wantedPressure: 2e4,
  }]],
  ["infusionCheck", shop.infusionCheck, [{
    viscosity: 0.3,
    permeability: 1e-9,
    porosity: 0.5,
    pressure: 7e4,
    flowLength: 1,
    gelTime: 3600,
  }]],
  ["cureRateFactor", shop.cureRateFactor, [300, rate]],
  ["activationEnergy", shop.activationEnergy, [{ cooler: 298, warmer: 308, ratio: 2 }]],
  ["equivalentTime", shop.equivalentTime, [log, rate]],
  ["curePlan", shop.curePlan, [{ ...sheet, postCureTemperature: 330 }, 293]],
  ["cureProgress", shop.cureProgress, [sheet, log]],
  ["degreeOfCure", shop.degreeOfCure, [7200, { time: 3600, degree: 0.5 }]],
  ["planNights", shop.planNights, [
    [
      { name: "skin", after: [], handsOn: 3600, wait: 43200 },
      { name: "core", after: ["skin"], handsOn: 3600, wait: 43200 },
    ],
    { length: 14400, gap: 72000 },
  ]],
  ["planResin", shop.planResin, [{
    cloths: [{ name: "twill", area: 4, arealWeight: 0.2, fibreMassFraction: 0.5 }],
    cores: [{ name: "foam", area: 2, faces: 2, resinUptake: 0.2 }],
    coats,
    ...resin,
  }]],
  ["potLife", shop.potLife, [potSheet, { mass: 0.2, temperature: 293 }]],
  [
    "massExponent",
    shop.massExponent,
    [{ mass: 0.1, potLife: 1800 }, { mass: 0.4, potLife: 900 }],
  ],
  ["exothermCheck", shop.exothermCheck, [potSheet, {
    mass: 0.2,
    temperature: 293,
    emptyAfter: 600,
    massLimit: 0.5,
  }]],
  ["planBatches", shop.planBatches, [task]],
  ["runLayup", shop.runLayup, [plan, { factors: [1, 0.9], interval: 300, mixBy: "mark" }]],
  ["tryLayups", shop.tryLayups, [plan, { spread: 0.3, mixBy: "clock", randomRuns: 2, seed: 1 }]],
  ["outlineMeasures", shop.outlineMeasures, [[
    { x: 0, y: 0 },
    { x: 1, y: 0 },
    { x: 0, y: 1 },
  ]]],
  ["blankOf", shop.blankOf, [cloth.pieces[0], { width: 1.2, joinOverlap: 0.05 }]],
  ["cutFromRoll", shop.cutFromRoll, [cloth]],
  ["cutCore", shop.cutCore, [core]],
  ["planBag", shop.planBag, [bag]],
  ["addUpCosts", shop.addUpCosts, [[line]]],
  ["whatItAdds", shop.whatItAdds, [shop.addUpCosts([line]), shop.addUpCosts([line])]],
  ["paintMass", shop.paintMass, [{
    area: 4,
    coats: 2,
    wetThickness: 1e-4,
    solidsByVolume: 0.5,
    dryDensity: 1500,
    lossFraction: 0.2,
  }]],
  ["cautionsFor", shop.cautionsFor, [["sanding"]]],
  ["clockAfter", shop.clockAfter, ["18:00", 600]],
  ["fullHourAfter", shop.fullHourAfter, ["18:00", 600]],
  ["planDay", shop.planDay, [day]],
  ["dayCosts", shop.dayCosts, [{
    plan: shop.planDay(day as unknown as shop.DayTask),
    parts: 1,
    hands: 2,
    trimmedShare: 0.05,
    finishedArea: 1,
    skim: filler.fairingSkim({ area: 1, gaps: [1e-4, 3e-4], excess: 2e-4, density: 700 }),
    paint: shop.paintMass({
      area: 1,
      coats: 2,
      wetThickness: 1e-4,
      solidsByVolume: 0.5,
      dryDensity: 1300,
      lossFraction: 0.2,
    }),
    coats: 2,
    prices: {
      clothPerArea: 6,
      corePerArea: 25,
      resinPerMass: 20,
      bagPerArea: 6,
      tapePerLength: 0.5,
      smallThings: 10,
      paintPerVolume: 3e4,
    },
    paces: shop.USUAL_PACES,
    resinStray: { low: 0.9, high: 1.3 },
  }]],
];

for (const [room, doors] of Object.entries({ filler: FILLER, joints: JOINTS, shop: SHOP })) {
  for (const [name, call, args] of doors) {
    Deno.test(`${room}: ${name} refuses garbage as wrong input, and lets no NaN out`, () => {
      tryDoor(name, call, args);
    });
  }
}

Deno.test("every function of the three rooms has its door tried", () => {
  for (const [exports, doors] of [[filler, FILLER], [joints, JOINTS], [shop, SHOP]] as const) {
    const functions = Object.entries(exports).filter(([, value]) => typeof value === "function");
    const tried = doors.map(([name]) => name);
    const missing = functions.map(([name]) => name).filter((name) => !tried.includes(name));
    assert(missing.length === 0, `not tried: ${missing.join(", ")}`);
  }
});
