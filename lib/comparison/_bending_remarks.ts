import type { LineFit, Slip } from "../statistics/mod.ts";
import type { DoubtfulReading } from "./_doubtful.ts";
import type { LoadReadings } from "./_readings.ts";
import type { Straightness } from "./straightness.ts";

/** What is said of a test. */
export interface Remarked {
  readonly test: LoadReadings;
  readonly fit: LineFit;
  readonly doubtful: readonly DoubtfulReading[];
  readonly slip: Slip | null;
  readonly straightness: Straightness | null;
}

/** One turn of the usual dial gauges: 1 mm, and 0.1 in [m]. */
const TURNS = [1e-3, 2.54e-3];

/** Remarks on a test, for the one who read the gauge. */
export function bendingRemarks(remarked: Remarked): readonly string[] {
  const { test, fit, doubtful, slip, straightness } = remarked;
  return [
    ...doubtful.map((reading) =>
      `Reading ${reading.index + 1}, at ${short(test.load[reading.index]!)} N, lies ` +
      `${millimetres(reading.offset)} off the line through the others: it is left out of the ` +
      `slope. ${guess(reading, remarked)}`
    ),
    ...(slip === null ? [] : [
      `The gauge slipped by ${millimetres(slip.size)} before reading ${
        slip.index + 1
      }: the slope ` +
      "counts the readings from there on from their own zero. Fix the gauge and test again.",
    ]),
    ...bends(straightness),
    ...(fit.slope.value > 0 ? [] : ["The deflection does not grow with the load."]),
  ];
}

function bends(straightness: Straightness | null): readonly string[] {
  const { toe, departure } = straightness ?? { toe: null, departure: null };
  return [
    ...(toe === null ? [] : [
      `Up to ${
        short(toe.load.value)
      } N the specimen was still seating itself (a toe): the slope is ` +
      "that of the readings from there on.",
    ]),
    ...(departure === null ? [] : [
      `The curve leaves the straight line at ${short(departure.load.value)} N (95 %: ` +
      `${short(departure.load.low)} to ${short(departure.load.high)} N) and bends ` +
      `${short(100 * departure.slopeChange.value / departure.slopeBefore.value)} % more for each ` +
      "newton from there on: something gives. The slope is that of the readings below.",
    ]),
  ];
}

/** What slip of the pen or the eye would explain a reading, if one does. */
function guess({ index, offset }: DoubtfulReading, { test, fit }: Remarked): string {
  const read = test.deflection[index]!;
  const belonged = read - offset;
  if (index === 0 && offset < 0) {
    return "The first one below the line: the specimen seated itself, or the gauge was set to zero " +
      "before it did.";
  }
  const near = Math.max(3 * fit.residualSd, 1e-3 * Math.abs(belonged));
  for (
    const [factor, words] of [[10, "ten times too large"], [0.1, "ten times too small"]] as const
  ) {
    if (belonged !== 0 && Math.abs(read / factor - belonged) <= near) {
      return `It is ${words}: look at its decimal point.`;
    }
  }
  const turn = TURNS.find((length) => Math.abs(Math.abs(offset) - length) <= near);
  if (turn !== undefined) {
    return `That is one turn of a dial of ${short(1000 * turn)} mm: count its turns again.`;
  }
  return "Read the gauge again.";
}

function millimetres(value: number): string {
  return `${short(1000 * value)} mm`;
}

function short(value: number): string {
  return Number(value.toPrecision(3)).toString();
}
