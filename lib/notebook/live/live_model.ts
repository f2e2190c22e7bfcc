import type { Dimension } from "../../quantity/mod.ts";

/** A slider of a live figure; its values are in the unit that the label shows. */
export interface LiveControl {
  /** Name under which the model gets its value. */
  readonly name: string;
  /** What it sets, for the reader. */
  readonly label: string;
  /** Unit of its values, as it is written. */
  readonly unit: string;
  /** Smallest value [unit of the control]. */
  readonly min: number;
  /** Largest value [unit of the control]. */
  readonly max: number;
  /** Distance of neighbouring values [unit of the control]. */
  readonly step: number;
  /** Value at the start [unit of the control]. */
  readonly value: number;
}

/** A reading that the learner puts in, as text with its unit. */
export interface LiveReading {
  /** Name under which the model gets it, in SI. */
  readonly name: string;
  /** What was read, for the learner. */
  readonly label: string;
  /** What kind of quantity it is. */
  readonly dimension: Dimension;
}

/** What a live figure shows for one set of values. */
export interface LiveView {
  /** The answer in one sentence. */
  readonly sentence: string;
  /** The picture. */
  readonly picture: SVGSVGElement;
}

/** A calculation that a reader moves with sliders. */
export interface LiveModel {
  /** What it is called in a page. */
  readonly name: string;
  /** The sliders, in order. */
  readonly controls: readonly LiveControl[];
  /** The learner's own readings, to stand beside the figure's. */
  readonly readings: readonly LiveReading[];
  /** Sentence and picture for values of the sliders. */
  readonly view: (
    values: Readonly<Record<string, number>>,
    page: {
      /** What the page sets, such as its materials. */
      readonly settings: Readonly<Record<string, unknown>>;
      /** The readings that were put in [SI]. */
      readonly readings: Readonly<Record<string, number | undefined>>;
    },
  ) => LiveView;
}

/** The values of the sliders at the start. */
export function startValues(model: LiveModel): Readonly<Record<string, number>> {
  return Object.fromEntries(model.controls.map(({ name, value }) => [name, value]));
}
