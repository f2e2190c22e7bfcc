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
  /** Sentence and picture for values of the sliders, from the settings of the page. */
  readonly view: (
    values: Readonly<Record<string, number>>,
    settings: Readonly<Record<string, unknown>>,
  ) => LiveView;
}

/** The values of the sliders at the start. */
export function startValues(model: LiveModel): Readonly<Record<string, number>> {
  return Object.fromEntries(model.controls.map(({ name, value }) => [name, value]));
}
