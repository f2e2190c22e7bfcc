/**
 * Makes the records of the demonstration part. Everything in them is invented: the crew, the
 * parts and the readings. Run it with `deno run --allow-read --allow-write data/sole-panels/make.ts`.
 *
 * The figures follow from the library's own model with hidden "true" materials, plus scatter of
 * scale and dial gauge, always the same by a fixed seed. Four things are planted for the notebooks
 * to find; the README beside this file names them.
 */
import { layupModel, layupStack } from "../../lib/comparison/mod.ts";
import { randomGenerator } from "../../lib/numeric/mod.ts";
import { partFromFiles, readCatalogue } from "../../lib/records/mod.ts";
import { beamLoadCases, sectionFromStack } from "../../lib/sandwich/mod.ts";

const random = randomGenerator(20260418);
const normal = (sd: number): number => sd * random.normal();
const round = (value: number, step: number): number =>
  Number((Math.round(value / step) * step).toFixed(6));

const LAYUP = `layup,layer,material,resin,angle_deg,thickness_mm,note
sole,1,glass twill 200,epoxy laminating slow,0,,mould side
sole,2,glass twill 200,epoxy laminating slow,0,,
sole,3,PVC foam 80,,0,10,sealed with a thin coat of resin before weighing
sole,4,glass twill 200,epoxy laminating slow,0,,
sole,5,glass twill 200,epoxy laminating slow,0,,bag side
hatch,1,glass twill 290,epoxy laminating slow,0,,mould side
hatch,2,aramid honeycomb 48 3 mm,,0,12,
hatch,3,glass twill 290,epoxy laminating slow,0,,bag side
trial hatch,1,glass UD 250,epoxy laminating slow,0,,mould side: both along
trial hatch,2,glass UD 250,epoxy laminating slow,0,,
trial hatch,3,PVC foam 80,,0,10,
trial hatch,4,glass UD 250,epoxy laminating slow,90,,
trial hatch,5,glass UD 250,epoxy laminating slow,90,,bag side: both across
bracket,1,glass mat 300,epoxy laminating slow,0,,mould side
bracket,2,glass UD 500,epoxy laminating slow,0,,
bracket,3,glass biaxial 400,epoxy laminating slow,45,,at plus and minus 45 degrees
bracket,4,glass UD 500,epoxy laminating slow,0,,
bracket,5,glass mat 300,epoxy laminating slow,0,,bag side
coupon plate,1,glass twill 200,epoxy laminating slow,0,,mould side
coupon plate,2,glass twill 200,epoxy laminating slow,0,,
coupon plate,3,glass twill 200,epoxy laminating slow,0,,
coupon plate,4,glass twill 200,epoxy laminating slow,0,,bag side
`;

interface Part {
  readonly part: string;
  readonly layup: "sole" | "hatch";
  readonly process: "hand" | "bagged";
  readonly date: string;
  readonly length: number;
  readonly width: number;
  /** Resin of the skins by mass, as it truly is [1]. */
  readonly resin: number;
  /** Density of its core, as it truly is [kg/m³]. */
  readonly core: number;
  readonly note?: string;
  /** What was written down in place of the part's mass [g]. */
  readonly written?: number;
  readonly weighedCloth?: boolean;
}

const panel = { layup: "sole", length: 1.2, width: 0.4, core: 80 } as const;
const hatch = { layup: "hatch", length: 0.52, width: 0.42, core: 48 } as const;
const beam = { layup: "sole", length: 0.65, width: 0.075, core: 80 } as const;

const PARTS: readonly Part[] = [
  { ...panel, part: "panel 1", process: "hand", date: "2026-04-18", resin: 0.45 },
  {
    ...panel,
    part: "panel 2",
    process: "hand",
    date: "2026-04-19",
    resin: 0.58,
    note: "resin poured on by the cup",
  },
  {
    ...panel,
    part: "panel 3",
    process: "hand",
    date: "2026-04-25",
    resin: 0.44,
    weighedCloth: true,
  },
  {
    ...panel,
    part: "panel 4",
    process: "bagged",
    date: "2026-05-02",
    resin: 0.37,
    weighedCloth: true,
  },
  { ...panel, part: "panel 5", process: "bagged", date: "2026-05-03", resin: 0.36 },
  {
    ...panel,
    part: "panel 6",
    process: "bagged",
    date: "2026-05-09",
    weighedCloth: true,
    resin: 0.23,
    note: "bled hard; white weave on the bag side",
  },
  { ...panel, part: "panel 7", process: "bagged", date: "2026-05-10", resin: 0.36, written: 35.7 },
  {
    ...panel,
    part: "panel 8",
    process: "bagged",
    date: "2026-05-16",
    resin: 0.35,
    weighedCloth: true,
  },
  { ...hatch, part: "hatch 1", process: "bagged", date: "2026-05-23", resin: 0.37 },
  { ...hatch, part: "hatch 2", process: "bagged", date: "2026-05-24", resin: 0.36 },
  { ...beam, part: "beam 1", process: "bagged", date: "2026-05-30", resin: 0.36 },
  { ...beam, part: "beam 2", process: "bagged", date: "2026-05-30", resin: 0.365 },
  { ...beam, part: "beam 3", process: "bagged", date: "2026-05-31", resin: 0.36, core: 61 },
  { ...beam, part: "beam 4", process: "bagged", date: "2026-05-31", resin: 0.355 },
];

/** Shear modulus of the foam of each beam, as it truly is [Pa]. */
const SHEAR_MODULUS: Readonly<Record<string, number>> = {
  "beam 1": 26.4e6,
  "beam 2": 25.8e6,
  "beam 3": 19.8e6,
  "beam 4": 26.9e6,
};

const catalogue = await readCatalogue();
const { layups } = partFromFiles({
  name: "sole-panels",
  files: new Map([["layup.csv", LAYUP]]),
  catalogue,
});
const fibreDensity = catalogue.fibres.get("E-glass")!.density;
const resinDensity = catalogue.resins.get("epoxy laminating slow")!.density;

/** Fibre volume fraction of the skins of a part, from its resin content by mass. */
function fibreFraction({ resin }: Part): number {
  const [fibre, rest] = [(1 - resin) / fibreDensity, resin / resinDensity];
  return fibre / (fibre + rest);
}

function weighing(part: Part): string {
  const layers = layups.get(part.layup)!.layers;
  const area = part.length * part.width;
  const clothWeight = layers.reduce(
    (sum, layer) => sum + (layer.kind === "core" ? 0 : layer.reinforcement.arealWeight),
    0,
  );
  const core = layers.find((layer) => layer.kind === "core")!;
  const cloth = 1000 * area * clothWeight * (1 + normal(0.008));
  const uptake = core.core.kind === "honeycomb" ? 2 * 55 * area : 0;
  const coreMass = 1000 * area * core.thickness * part.core * (1 + normal(0.01));
  const sealed = core.core.kind === "foam" ? 2 * 30 * area : 0;
  const mass = cloth / (1 - part.resin) + coreMass + sealed + uptake;
  const step = part.part.startsWith("beam") ? 0.1 : 1;
  const plies = clothWeight / (fibreDensity * fibreFraction(part));
  return [
    part.part,
    part.layup,
    part.process,
    part.date,
    1000 * part.length,
    1000 * part.width,
    1,
    1,
    part.weighedCloth ? round(cloth, step) : "",
    round(coreMass + sealed, step),
    core.core.kind === "foam" ? "yes" : "no",
    "",
    part.written ?? round(mass, step),
    part.part.startsWith("beam") ? 0.1 : 1,
    round(1000 * (plies + core.thickness) + normal(0.03), 0.05),
    0.05,
    part.note ?? "",
  ].join(",");
}

const WEIGHINGS = [
  "part,layup,process,date,length_mm,width_mm,length_u_mm,width_u_mm,dry_cloth_mass_g,core_mass_g,core_sealed,other_mass_g,part_mass_g,scale_u_g,thickness_mm,thickness_u_mm,note",
  ...PARTS.map(weighing),
].join("\n") + "\n";

interface Test {
  readonly name: string;
  readonly loading: "three-point" | "quarter-point";
  readonly span: number;
  /** Load at each of the eight steps [N]. */
  readonly step: number;
}

const TESTS: readonly Test[] = [
  { name: "A", loading: "three-point", span: 0.5, step: 10 },
  { name: "B", loading: "quarter-point", span: 0.5, step: 15 },
  { name: "C", loading: "three-point", span: 0.15, step: 40 },
];

/** Compliance of a beam in a test, with the true materials [m/N]. */
function trueCompliance(part: Part, test: Test): number {
  const model = layupModel(layups.get("sole")!);
  const middles = Object.entries(model.inputs).map(([name, { value }]) => [name, value]);
  const stack = model.stack({
    ...Object.fromEntries(middles),
    "fibre volume fraction": fibreFraction(part),
    "modulus of E-glass": 71.6e9,
    "stiffness kept by glass twill 200": 0.92,
    "modulus of epoxy laminating slow": 3.1e9,
    "shear modulus of PVC foam 80": SHEAR_MODULUS[part.part]!,
  });
  const section = sectionFromStack(stack, { width: part.width });
  const { deflection } =
    beamLoadCases[test.loading === "three-point" ? "threePoint" : "fourPointQuarter"];
  return deflection.bending * test.span ** 3 / section.flexuralRigidity +
    deflection.shear * test.span / (section.shearStiffness as number);
}

/** Largest share by which the deflection lags behind on the way down. */
const LAG = 0.015;

function readings(part: Part, test: Test): readonly string[] {
  const compliance = trueCompliance(part, test);
  const seat = Math.abs(normal(0.02e-3));
  const loads = [0, 1, 2, 3, 4, 5, 6, 7, 8, 7, 6, 5, 4, 3, 2, 1].map((k) => k * test.step);
  const top = 8 * test.step;
  return loads.map((load, i) => {
    const unloading = i > 8;
    const lag = unloading ? LAG * 4 * (load / top) * (1 - load / top) * top : 0;
    const seated = seat * (1 - Math.exp(-load / (0.3 * test.step)));
    const slipped = part.part === "beam 2" && test.name === "A" && i === 6;
    const gauge = 1000 * (compliance * (load + lag) + seated) + normal(0.006) +
      (slipped ? 0.42 : 0);
    return [
      `${part.part.replace("beam ", "")}${test.name}`,
      part.part,
      part.layup,
      test.loading,
      1000 * test.span,
      1000 * part.width,
      10.75,
      load,
      round(Math.max(0, gauge), 0.01),
      unloading ? "unloading" : "loading",
      "",
    ].join(",");
  });
}

const LOAD_TESTS = [
  "test,specimen,layup,loading,span_mm,width_mm,thickness_mm,load_N,deflection_mm,branch,note",
  ...PARTS.filter(({ part }) => part.startsWith("beam")).flatMap((part) =>
    TESTS.flatMap((test) => readings(part, test))
  ),
].join("\n") + "\n";

/** Tensile strength of the coupons' cloth: what the catalogue's estimate is multiplied by [1]. */
const STRENGTH_KEPT = 0.93;
/** Scatter of the coupons, one standard deviation [1]. */
const STRENGTH_SCATTER = 0.05;

/** Breaking force per width of the coupon plate by the catalogue's estimate [N/m]. */
function estimatedForce(): number {
  const stack = layupStack(layups.get("coupon plate")!);
  return stack.reduce((sum, { lamina, thickness }) => sum + lamina.strengths!.Xt * thickness, 0);
}

function coupon(number: number): string {
  const width = 15 + normal(0.15);
  const force = estimatedForce() * STRENGTH_KEPT * (1 + normal(STRENGTH_SCATTER));
  return [
    `T${number}`,
    "coupon plate",
    "tension",
    round(width, 0.05),
    round(0.72 + normal(0.015), 0.01),
    round(force * width / 1000, 10),
    "",
  ].join(",");
}

const COUPONS = [
  "coupon,layup,test,width_mm,thickness_mm,breaking_load_N,note",
  ...[1, 2, 3, 4, 5, 6, 7].map(coupon),
].join("\n") + "\n";

const PUTTY =
  `batch,resin,filler,cup_volume_mL,cup_filler_mass_g,resin_mass_g,target_density_kg/m3,note
fillet putty,epoxy laminating slow,glass hollow spheres 200,500,57,200,720,under the sole bearers
fairing putty,epoxy laminating slow,phenolic hollow spheres,500,53,150,,as stiff as can be stirred
`;

const FILLETS = `corner,angle_deg,length_mm,radius_mm,radius_limit_mm,note
sole to hull side,105,2400,12,25.4,both sides together
bearer to hull,90,3200,10,25.4,
hatch coaming,90,1900,6,12.7,rule for crew areas
`;

const WORKSHOP =
  `resin,temperature_degC,laid_per_hour_m2,rate_spread,mixing_time_min,pot_life_min,pot_mass_g,thin_layer_time_min,sheet_temperature_degC,handling_time_h,full_cure_time_h,hardener_density_kg/m3,loss,vacuum_kPa,altitude_m,note
epoxy laminating slow,18,3.6,0.3,4,40,100,180,25,10,168,980,0.15,78,430,two lay and one mixes
`;

const MOUNTS =
  `mount,layup,place,added_plies,load_N,pull_N,load_factor,fitting_factor,bolts,bolt_diameter_mm,hole_diameter_mm,width_mm,edge_distance_mm,washer_diameter_mm,potting_diameter_mm,note
foot stretcher,sole,bolted bracket,5,900,250,3,1.15,2,6,6.2,80,25,24,30,
stay eye,sole,bolted bracket,2,1400,600,3,1.15,2,6,6.2,60,16,18,,as first drawn
`;

for (
  const [file, text] of [
    ["layup.csv", LAYUP],
    ["weighings.csv", WEIGHINGS],
    ["load_tests.csv", LOAD_TESTS],
    ["coupons.csv", COUPONS],
    ["putty.csv", PUTTY],
    ["fillets.csv", FILLETS],
    ["workshop.csv", WORKSHOP],
    ["mounts.csv", MOUNTS],
  ] as const
) {
  await Deno.writeTextFile(new URL(file, import.meta.url), text);
}
