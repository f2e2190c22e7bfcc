import { linesFigure } from "../../charts/mod.ts";
import { fibreVolumeFraction, plyThickness, usualFibreFraction } from "../../constituents/mod.ts";
import type { LiveModel, LiveView } from "./live_model.ts";

/** Densities of the page's materials [kg/m³]. */
interface ResinRatioSettings {
  readonly fibreDensity: number;
  readonly resinDensity: number;
}

const PERCENT = { symbol: "%", perSI: 100 };

/** What resin content does to a solid laminate of one cloth. */
export const resinRatioModel: LiveModel = {
  name: "resin-ratio",
  controls: [
    {
      name: "content",
      label: "Resin content by mass",
      unit: "%",
      min: 25,
      max: 70,
      step: 1,
      value: 45,
    },
    { name: "cloth", label: "Cloth", unit: "g/m²", min: 50, max: 600, step: 10, value: 200 },
    { name: "layers", label: "Layers", unit: "", min: 1, max: 12, step: 1, value: 4 },
    {
      name: "area",
      label: "Area of the part",
      unit: "m²",
      min: 0.1,
      max: 5,
      step: 0.05,
      value: 0.5,
    },
  ],
  readings: [
    { name: "cloth", label: "Your cloth, dry", dimension: "mass" },
    { name: "part", label: "Your part without core", dimension: "mass" },
  ],
  view(values, { settings, readings }): LiveView {
    const { fibreDensity, resinDensity } = settings as unknown as ResinRatioSettings;
    const densities = { fibreDensity, resinDensity };
    const content = values.content! / 100;
    const fibre = values.cloth! / 1000 * values.layers!;
    const massAt = (share: number): number => fibre / (1 - share);
    const Vf = fibreVolumeFraction(1 - content, densities);
    const thickness = values.layers! *
      plyThickness({ arealWeight: values.cloth! / 1000, fibreDensity, fibreVolumeFraction: Vf });
    const resin = (massAt(content) - fibre) * values.area!;
    const dry = (share: number): number => {
      const [fibres, rest] = [share * fibreDensity, (1 - share) * resinDensity];
      return rest / (fibres + rest);
    };
    const { low, high } = usualFibreFraction("hand", [{ form: "woven", fibreVolume: 1 }]);
    const wet = dry((low + high) / 2);
    const spare = Math.max(0, (massAt(content) - massAt(wet)) * values.area!);
    const sentence = `${(1000 * resin).toFixed(0)} g of resin in the part: ` +
      `${(100 * Vf).toFixed(0)} % fibre by volume, ${(1000 * thickness).toFixed(2)} mm thick; ` +
      (spare > 0
        ? `${(1000 * spare).toFixed(0)} g more than the middle of usual hand lay-up.`
        : "no more than the middle of usual hand lay-up.");
    const own = ownContent(readings);
    const shares = Array.from({ length: 46 }, (_, i) => 0.25 + 0.01 * i);
    const picture = linesFigure({
      lines: [
        { label: "laminate", points: shares.map((x) => ({ x, y: massAt(x) })) },
        { label: "cloth alone", points: shares.map((x) => ({ x, y: fibre })) },
      ],
      x: { name: "resin content by mass", unit: PERCENT },
      y: { name: "mass per area", unit: { symbol: "g/m²", perSI: 1000 }, fromZero: true },
      xMarks: [{ value: dry(high), label: "usual, dry" }, { value: dry(low), label: "usual, wet" }],
      spots: [
        { x: content, y: massAt(content), label: "these sliders" },
        ...own.spots.map((x) => ({ x, y: massAt(x), label: "yours" })),
      ],
    }, {
      title: "The cloth stays the same: past just wet, resin only adds weight",
      description: sentence,
    });
    return { sentence: sentence + own.sentence, picture };
  },
};

/** What the learner's two weighings say. */
function ownContent(
  { cloth, part }: Readonly<Record<string, number | undefined>>,
): { readonly spots: readonly number[]; readonly sentence: string } {
  if (cloth === undefined || part === undefined) return { spots: [], sentence: "" };
  const content = 1 - cloth / part;
  if (!(cloth > 0 && content > 0)) {
    return { spots: [], sentence: " Yours: the part must weigh more than its cloth." };
  }
  const told = `${(100 * content).toFixed(0)} % resin by mass`;
  // Outside the figure a point would not be seen.
  return content < 0.25 || content > 0.7
    ? { spots: [], sentence: ` Yours has ${told}, outside this figure: weigh again.` }
    : { spots: [content], sentence: ` Yours has ${told}.` };
}
