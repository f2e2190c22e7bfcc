import type { Checks } from "../check/mod.ts";
import type { Correlation, Uncertain } from "../statistics/mod.ts";
import type { PartMasses } from "./part_balance.ts";
import type { FibreOfForm } from "./usual_bands.ts";
import type { PartWeighing, WeighedCloth } from "./part_weighing.ts";

/** The inputs of a weighing by the words that a budget shows. */
export type NamedValues = Readonly<Record<string, number>>;

const arealWeightOf = (layer: WeighedCloth): string => `areal weight of ${layer.cloth}`;
const densityOf = (layer: WeighedCloth): string => `density of ${layer.fibre}`;

const SCALE_MASSES = [
  "part mass",
  "core mass",
  "other mass",
  "dry cloth mass",
  "trimmed cloth mass",
];

/** Masses that may be left out, by the words that a budget shows. */
function optionalInputs(weighing: PartWeighing): [string, Uncertain | undefined][] {
  return [
    ["core mass", weighing.coreMass],
    ["core area", weighing.coreArea],
    ["core uptake", weighing.coreUptake],
    ["other mass", weighing.otherMass],
    ["dry cloth mass", weighing.dryClothMass],
    ["trimmed cloth mass", weighing.trimmedClothMass],
  ];
}

/** Every input with its uncertainty: one for each roll and each fibre, however many layers. */
export function namedInputs(weighing: PartWeighing): Readonly<Record<string, Uncertain>> {
  const inputs: Record<string, Uncertain> = {
    "part mass": weighing.partMass,
    "area": weighing.area,
    "resin density": weighing.resinDensity,
  };
  for (const [name, value] of optionalInputs(weighing)) {
    if (value !== undefined) inputs[name] = value;
  }
  for (const layer of weighing.layers) {
    inputs[arealWeightOf(layer)] = layer.arealWeight;
    inputs[densityOf(layer)] = layer.fibreDensity;
  }
  return inputs;
}

/** Pairs of masses that one scale weighed, where their errors go together. */
export function scaleCorrelations(weighing: PartWeighing): Correlation[] {
  const coefficient = weighing.scaleCorrelation ?? 0;
  if (coefficient === 0) return [];
  const inputs = namedInputs(weighing);
  const present = SCALE_MASSES.filter((name) => (inputs[name]?.u ?? 0) > 0);
  return present.flatMap((first, i) =>
    present.slice(i + 1).map((second) => ({ between: [first, second] as const, coefficient }))
  );
}

/** Masses and fibre volume of the part at given values of its inputs. */
export function massesAt(weighing: PartWeighing, values: NamedValues): PartMasses {
  const area = values["area"]!;
  let byCloth = 0, volumeByCloth = 0;
  for (const layer of weighing.layers) {
    const mass = (layer.count ?? 1) * (layer.areaShare ?? 1) * area * values[arealWeightOf(layer)]!;
    byCloth += mass;
    volumeByCloth += mass / values[densityOf(layer)]!;
  }
  const dry = values["dry cloth mass"];
  const fibreMass = dry === undefined ? byCloth : dry - (values["trimmed cloth mass"] ?? 0);
  return {
    partMass: values["part mass"]!,
    coreMass: values["core mass"] ?? 0,
    otherMass: values["other mass"] ?? 0,
    coreResin: (values["core uptake"] ?? 0) * (values["core area"] ?? area),
    fibreMass,
    // The dry weighing knows the mass, the schedule how it divides among fibres.
    fibreVolume: fibreMass * volumeByCloth / byCloth,
    resinDensity: values["resin density"]!,
  };
}

/** The values of the inputs without their uncertainties. */
export function valuesOf(weighing: PartWeighing): Record<string, number> {
  const inputs = Object.entries(namedInputs(weighing));
  return Object.fromEntries(inputs.map(([name, { value }]) => [name, value]));
}

/** Whether the masses leave a laminate at all, with room to vary them. */
export function laminateHolds(weighing: PartWeighing): boolean {
  const { partMass, coreMass, otherMass, coreResin, fibreMass, fibreVolume, resinDensity } =
    massesAt(weighing, valuesOf(weighing));
  const laminateResin = partMass - coreMass - otherMass - coreResin - fibreMass;
  return laminateResin > -fibreMass / 2 && laminateResin / resinDensity > -fibreVolume / 2;
}

/** Fibre volumes by form, for the usual band. */
export function clothVolumes(weighing: PartWeighing): FibreOfForm[] {
  return weighing.layers.map((layer) => ({
    form: layer.form,
    fibreVolume: (layer.count ?? 1) * (layer.areaShare ?? 1) * layer.arealWeight.value /
      layer.fibreDensity.value,
  }));
}

/** Refuses a weighing that cannot be computed; one that is only absurd passes, to be judged. */
export function checkWeighing(check: Checks, weighing: PartWeighing): void {
  check.object("weighing", weighing);
  const positive = (name: string, input: Uncertain, unit: string) => {
    check.object(name, input);
    check.positive(name, input.value, unit);
    check.nonNegative(`uncertainty of ${name}`, input.u, unit);
  };
  positive("part mass", weighing.partMass, "kg");
  positive("area", weighing.area, "m²");
  positive("resin density", weighing.resinDensity, "kg/m³");
  for (const [name, input] of optionalInputs(weighing)) {
    if (input === undefined) continue;
    check.object(name, input);
    const unit = name === "core uptake" ? "kg/m²" : name === "core area" ? "m²" : "kg";
    check.nonNegative(name, input.value, unit);
    check.nonNegative(`uncertainty of ${name}`, input.u, unit);
  }
  const { coreArea } = weighing;
  if (coreArea !== undefined) {
    check.positive("core area", coreArea.value, "m²");
    if (!(coreArea.value <= weighing.area.value)) {
      check.refuse("core area", coreArea.value, "must not be above the area of the part");
    }
  }
  check.list("layers", weighing.layers);
  const known = new Map<string, number>();
  for (const layer of weighing.layers) {
    check.object("layer", layer);
    positive(arealWeightOf(layer), layer.arealWeight, "kg/m²");
    positive(densityOf(layer), layer.fibreDensity, "kg/m³");
    check.count(`count of ${layer.cloth}`, layer.count ?? 1, 1);
    check.positive(`area share of ${layer.cloth}`, layer.areaShare ?? 1);
    checkSame(check, known, [arealWeightOf(layer), layer.arealWeight.value]);
    checkSame(check, known, [densityOf(layer), layer.fibreDensity.value]);
  }
  checkTrim(check, weighing);
  check.within("scale correlation", weighing.scaleCorrelation ?? 0, { min: 0, max: 1 });
  const target = weighing.targetFibreVolumeFraction;
  if (target !== undefined) {
    check.positive("target fibre volume fraction", target);
    check.fraction("target fibre volume fraction", target);
  }
}

/** One name, one value: otherwise the second would silently replace the first. */
function checkSame(
  check: Checks,
  known: Map<string, number>,
  [name, value]: readonly [string, number],
): void {
  const earlier = known.get(name);
  if (earlier !== undefined && earlier !== value) {
    check.refuse(name, value, `must be ${earlier} as in the layer before, or carry another name`);
  }
  known.set(name, value);
}

function checkTrim(check: Checks, { dryClothMass, trimmedClothMass }: PartWeighing): void {
  if (trimmedClothMass === undefined) return;
  if (dryClothMass === undefined) {
    check.refuse(
      "trimmed cloth mass",
      trimmedClothMass.value,
      "must be left out where the cloth was not weighed dry: areal weight × area has no trim",
    );
  }
  check.positive(
    "dry cloth mass less trimmed cloth mass",
    dryClothMass.value - trimmedClothMass.value,
    "kg",
  );
}
