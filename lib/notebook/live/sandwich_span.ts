import { type Line, linesFigure } from "../../charts/mod.ts";
import type { Core, Fibre, Reinforcement, Resin, Stack } from "../../materials/mod.ts";
import { coreLamina, curedPly } from "../../micromechanics/mod.ts";
import { beamCompliance, beamLoadCases, sectionFromStack } from "../../sandwich/mod.ts";
import type { LiveModel, LiveView } from "./live_model.ts";

/** Rows of the catalogue that the page's panel is made of, and the strip's width. */
interface SandwichSpanSettings {
  readonly reinforcement: Reinforcement;
  readonly fibre: Fibre;
  readonly resin: Resin;
  readonly core: Core;
  /** Width of the strip [m]. */
  readonly width: number;
}

/** Largest bend, as a share of the span, for which small-deflection theory is a fair guide [1]. */
const LARGEST = 0.1;

const MM = { symbol: "mm", perSI: 1000 };

/** How far a sandwich strip between two bearers bends under a load in its middle. */
export const sandwichSpanModel: LiveModel = {
  name: "sandwich-span",
  controls: [
    { name: "span", label: "Span", unit: "mm", min: 100, max: 1000, step: 10, value: 400 },
    { name: "load", label: "Load", unit: "N", min: 10, max: 300, step: 5, value: 100 },
    { name: "core", label: "Core thickness", unit: "mm", min: 3, max: 30, step: 0.5, value: 10 },
    { name: "plies", label: "Plies on each face", unit: "", min: 1, max: 6, step: 1, value: 2 },
    { name: "fibre", label: "Fibre by volume", unit: "%", min: 25, max: 60, step: 1, value: 40 },
  ],
  readings: [{ name: "bend", label: "Yours bends, at this span and load", dimension: "length" }],
  view(values, { settings, readings: { bend } }): LiveView {
    const { core, width, ...cloth } = settings as unknown as SandwichSpanSettings;
    const { lamina, thickness } = curedPly({ ...cloth, fibreVolumeFraction: values.fibre! / 100 });
    const face: Stack = Array.from(
      { length: values.plies! },
      () => ({ lamina, thickness, angleDeg: 0 }),
    );
    const middle = { lamina: coreLamina(core), thickness: values.core! / 1000, angleDeg: 0 };
    const section = sectionFromStack([...face, middle, ...face], { width });
    const at = (span: number): { readonly bending: number; readonly shear: number } => {
      const { bending, shear } = beamCompliance(beamLoadCases.threePoint, { ...section, span });
      return { bending: bending * values.load!, shear: shear * values.load! };
    };
    const here = at(values.span! / 1000);
    const total = here.bending + here.shear;
    const sentence = `The strip bends ${(1000 * total).toFixed(1)} mm, ` +
      `${(100 * here.shear / total).toFixed(0)} % of it by shear of the core.` +
      (total > LARGEST * values.span! / 1000
        ? " That is too far for this calculation: a real strip stiffens, or breaks."
        : "") +
      (bend === undefined ? "" : besideOwn(bend, total));
    const spans = Array.from({ length: 37 }, (_, i) => 0.1 + 0.025 * i);
    const line = (label: string, of: (span: number) => number): Line => ({
      label,
      points: spans.map((x) => ({ x, y: of(x) })),
    });
    const picture = linesFigure({
      lines: [
        line("all of it", (span) => at(span).bending + at(span).shear),
        line("by shear", (span) => at(span).shear),
      ],
      x: { name: "span", unit: MM },
      y: { name: "deflection", unit: MM, fromZero: true },
      spots: [
        { x: values.span! / 1000, y: total, label: "predicted" },
        ...(bend === undefined ? [] : [{ x: values.span! / 1000, y: bend, label: "yours" }]),
      ],
    }, {
      title: "The longer the span, the less of its bend is shear of the core",
      description: sentence,
    });
    return { sentence, picture };
  },
};

/** The learner's own bend beside the predicted one. */
function besideOwn(bend: number, predicted: number): string {
  const off = 100 * (bend / predicted - 1);
  const told = Math.abs(off) < 0.5
    ? "as predicted"
    : `${Math.abs(off).toFixed(0)} % ${off > 0 ? "more" : "less"} than predicted`;
  return ` Yours bends ${(1000 * bend).toFixed(1)} mm, ${told}.`;
}
