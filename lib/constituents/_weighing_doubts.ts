import type { Propagated } from "../statistics/mod.ts";
import { clothVolumes, massesAt, valuesOf } from "./_weighing_inputs.ts";
import { type UsualBand, usualFibreFraction } from "./usual_bands.ts";
import type { PartWeighing } from "./part_weighing.ts";

/** Whether a weighing can be believed: it can, it wants a second look, it cannot be. */
export type WeighingVerdict = "plausible" | "doubtful" | "mistake";

interface Judged {
  readonly verdict: WeighingVerdict;
  readonly notes: readonly string[];
}

interface Figures {
  readonly laminateResin: Propagated<string>;
  readonly resinRatio: Propagated<string>;
  readonly fibreVolumeFraction: Propagated<string> | null;
  readonly usualBand: UsualBand;
}

/** Fibres touch in a square array; no cloth packs closer. */
const TOUCHING = Math.PI / 4;
/** Below this share of the hand lay-up's low end, the excess is no longer resin. */
const ABSURDLY_RICH = 0.5;
/** Below this share of it, a second look is due. */
const VERY_RICH = 0.67;
/** Above this, more than an infusion brings together. */
const VERY_DRY = 0.66;
/** Expanded uncertainty over value from which the ratio says little. */
const VAGUE = 0.3;

/** The verdict on a weighing with its reasons, and the slips that would explain it. */
export function doubtsOf(weighing: PartWeighing, figures: Figures): Judged {
  const { verdict, notes } = judge(weighing, figures);
  const cloth = clothNotes(weighing);
  return verdict === "plausible"
    ? { verdict, notes: [...notes, ...cloth] }
    : { verdict, notes: [...notes, ...cloth, ...slips(weighing)] };
}

function judge(weighing: PartWeighing, figures: Figures): Judged {
  const { laminateResin, resinRatio, fibreVolumeFraction: Vf, usualBand } = figures;
  const hand = usualFibreFraction("hand", clothVolumes(weighing));
  const grams = Math.round(laminateResin.value * 1000);
  if (laminateResin.value + laminateResin.U <= 0) {
    return mistake(
      `The weighing leaves ${grams} g of resin for the laminate, which cannot be: a mass, the ` +
        "area or the number of layers is wrong.",
    );
  }
  if (laminateResin.value <= 0 || Vf === null) {
    const U = Math.round(laminateResin.U * 1000);
    return doubtful(
      `The weighing leaves ${grams} ± ${U} g of resin for the laminate: it cannot tell.`,
    );
  }
  const share = `${(Vf.value * 100).toFixed(0)} % fibre by volume`;
  if (Vf.value - Vf.U > TOUCHING) {
    return mistake(`${share} cannot be: the fibres would touch without room for resin.`);
  }
  if (Vf.value + Vf.U < ABSURDLY_RICH * hand.low) {
    return mistake(
      `${share} is far below what the wettest hand lay-up gives: something else than cloth and ` +
        "resin is in the part's mass.",
    );
  }
  if (Vf.value < VERY_RICH * hand.low) {
    return doubtful(`${share} is very resin-rich: weigh again.`);
  }
  if (Vf.value > VERY_DRY) {
    return doubtful(
      `${share} is more than infusion brings together: weigh again, look for dry spots.`,
    );
  }
  if (resinRatio.U > VAGUE * resinRatio.value) {
    const worst = resinRatio.budget[0];
    // Content (resin over laminate) is R/(1 + R) of the ratio R, and grows with it.
    const content = (ratio: number): string => (100 * ratio / (1 + ratio)).toFixed(0);
    const { value, U } = resinRatio;
    return doubtful(
      `The resin content is known only as ${content(Math.max(0, value - U))} to ${
        content(value + U)
      } %` + (worst === undefined ? "." : `, most of that from the ${worst.name}.`),
    );
  }
  return { verdict: "plausible", notes: bandNotes(Vf, usualBand, weighing.process ?? "hand") };
}

/** Says so where the dry cloth is not what the schedule's layers weigh: a ply too many or few. */
function clothNotes(weighing: PartWeighing): string[] {
  const { dryClothMass, trimmedClothMass: trimmed, area, layers } = weighing;
  if (dryClothMass === undefined) return [];
  const inPart = dryClothMass.value - (trimmed?.value ?? 0);
  const shares = layers.map(({ arealWeight, count = 1, areaShare = 1 }) => ({
    mass: count * areaShare * area.value * arealWeight.value,
    u: count * areaShare * area.value * arealWeight.u,
    ply: areaShare * area.value * arealWeight.value,
    plies: count,
  }));
  const sum = (of: (share: typeof shares[number]) => number): number =>
    shares.reduce((total, share) => total + of(share), 0);
  const planned = sum(({ mass }) => mass);
  const u = Math.hypot(
    dryClothMass.u,
    trimmed?.u ?? 0,
    planned * area.u / area.value,
    // Layers of one roll stray together: that is taken of all, the careful side.
    sum((share) => share.u),
  );
  const excess = inPart - planned;
  // Less than half of the lightest ply is no ply, however exact the scale.
  const lightest = Math.min(...shares.map(({ ply }) => ply));
  if (!(Math.abs(excess) > Math.max(2 * u, lightest / 2))) return [];
  const count = Math.round(Math.abs(excess) / (planned / sum(({ plies }) => plies)));
  const plies = count === 1 ? "one layer" : `${count} layers`;
  const less = excess < 0;
  return [
    `The dry cloth weighed ${grams(inPart)} g, ${less ? "less" : "more"} than the ` +
    `${grams(planned)} g of the schedule` +
    (count === 0 ? "" : `: as ${plies} ${less ? "fewer" : "more"} would`) +
    (less ? ". Is a layer missing?" : ". A layer too many, or offcuts on the scale?"),
  ];
}

const grams = (mass: number): string => String(Math.round(1000 * mass));

const mistake = (note: string): Judged => ({ verdict: "mistake", notes: [note] });
const doubtful = (note: string): Judged => ({ verdict: "doubtful", notes: [note] });

/** Where the part lies in its band, the uncertainty allowed for. */
function bandNotes(Vf: Propagated<string>, band: UsualBand, process: string): string[] {
  const inBand = `${band.low.toFixed(2)} to ${
    band.high.toFixed(2)
  } usual for this cloth, ${process}`;
  if (Vf.value + Vf.U < band.low) {
    return [`Resin-rich: the fibre volume fraction is below the ${inBand}.`];
  }
  if (Vf.value - Vf.U > band.high) {
    return [`Dry: the fibre volume fraction is above the ${inBand}; tap for dry spots and voids.`];
  }
  if (Vf.value < band.low || Vf.value > band.high) {
    const side = Vf.value < band.low ? "below" : "above";
    return [`Just ${side} the ${inBand}, by less than the weighing's uncertainty.`];
  }
  return [];
}

/** A slip of the pen: which input it would have spoilt, and what its true value would be. */
interface Slip {
  readonly says: string;
  readonly input: string;
  readonly factor: number;
}

const OUNCE = 28.349523125;
const POUND = 0.45359237;
const UNIT_SLIPS: readonly Slip[] = ["part mass", "core mass", "dry cloth mass"].flatMap((
  input,
) => [
  { says: `${input} was read in ounces and written as grams`, input, factor: OUNCE },
  { says: `${input} was read in grams and written as ounces`, input, factor: 1 / OUNCE },
  { says: `${input} was read in pounds and written as kilograms`, input, factor: POUND },
  { says: `${input} was read in kilograms and written as pounds`, input, factor: 1 / POUND },
  { says: `${input} was read in pounds and written as grams`, input, factor: 1000 * POUND },
  { says: `${input} was read in grams and written as pounds`, input, factor: 0.001 / POUND },
  { says: `${input} has its decimal point one place too far right`, input, factor: 0.1 },
  { says: `${input} has its decimal point one place too far left`, input, factor: 10 },
]).concat([
  {
    says: "area was read in square feet and written as square metres",
    input: "area",
    factor: 0.09290304,
  },
  { says: "area is half of what was laid up", input: "area", factor: 2 },
  { says: "area counts both faces", input: "area", factor: 0.5 },
]);

/** The slips that would bring the part into the range from wet hand lay-up to infusion. */
function slips(weighing: PartWeighing): string[] {
  const values = valuesOf(weighing);
  const volumes = clothVolumes(weighing);
  const low = usualFibreFraction("hand", volumes).low;
  const high = usualFibreFraction("infused", volumes).high;
  const inRange = (fraction: number): boolean => fraction >= low && fraction <= high;
  const fits = (changed: Record<string, number>): boolean => inRange(fractionAt(weighing, changed));
  // What is in doubt only because it is known roughly needs no slip to explain it.
  if (fits(values)) return [];
  const explained = UNIT_SLIPS
    .filter(({ input, factor }) =>
      values[input] !== undefined && fits({ ...values, [input]: values[input] * factor })
    )
    .map(({ says }) => `It would fit if the ${says}.`);
  const core = values["core mass"] ?? 0;
  if (core === 0) {
    const excess = excessMass(weighing, values);
    if (excess > 0) {
      explained.push(
        `It would fit if about ${Math.round(excess * 1000)} g of something else, such as a core ` +
          "that was not subtracted, were in the part.",
      );
    }
  } else if (fits({ ...values, "core mass": 0 })) {
    explained.push("It would fit if the core had not been on the scale with the part.");
  } else if (fits({ ...values, "core mass": 2 * core })) {
    explained.push("It would fit if only half of the core had been weighed.");
  }
  return [...explained, ...layerSlips(weighing, inRange)];
}

/** One layer more or less of a cloth than was counted. */
function layerSlips(
  weighing: PartWeighing,
  inRange: (fraction: number) => boolean,
): string[] {
  if (weighing.dryClothMass !== undefined) return [];
  const values = valuesOf(weighing);
  const says = weighing.layers.flatMap((layer, i) =>
    [1, -1].flatMap((extra) => {
      const count = (layer.count ?? 1) + extra;
      const layers = count > 0
        ? weighing.layers.with(i, { ...layer, count })
        : weighing.layers.toSpliced(i, 1);
      return layers.length > 0 && inRange(fractionAt({ ...weighing, layers }, values))
        ? [`It would fit with one layer ${extra > 0 ? "more" : "less"} of ${layer.cloth}.`]
        : [];
    })
  );
  return [...new Set(says)];
}

/** Fibre volume fraction at given values; NaN where nothing is left for the laminate. */
function fractionAt(weighing: PartWeighing, values: Record<string, number>): number {
  const { partMass, coreMass, otherMass, coreResin, fibreMass, fibreVolume, resinDensity } =
    massesAt(weighing, values);
  const resin = partMass - coreMass - otherMass - coreResin - fibreMass;
  return resin > 0 ? fibreVolume / (fibreVolume + resin / resinDensity) : NaN;
}

/** Mass beyond the middle of the hand lay-up's band [kg]. */
function excessMass(weighing: PartWeighing, values: Record<string, number>): number {
  const { low, high } = usualFibreFraction("hand", clothVolumes(weighing));
  const middle = (low + high) / 2;
  const { partMass, otherMass, fibreMass, fibreVolume, resinDensity } = massesAt(weighing, values);
  return partMass - otherMass - fibreMass - resinDensity * fibreVolume * (1 - middle) / middle;
}
