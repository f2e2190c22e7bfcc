import type { LiveModel } from "./live_model.ts";
import { repeatedReadingsModel } from "./repeated_readings.ts";
import { resinRatioModel } from "./resin_ratio.ts";
import { sandwichSpanModel } from "./sandwich_span.ts";

/** Every live figure, by the name that a page calls it by. */
export const liveModels: ReadonlyMap<string, LiveModel> = new Map(
  [resinRatioModel, sandwichSpanModel, repeatedReadingsModel].map((model) => [model.name, model]),
);
