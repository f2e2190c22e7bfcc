/** A rule of thumb for a detail, with the range that is in use. */
export interface DetailGuidance {
  /** Which detail. */
  readonly detail: string;
  /** What is usually done. */
  readonly advice: string;
  /** Lower end of the range in use [see `unit`]. */
  readonly low: number;
  /** Upper end of the range in use [see `unit`]. */
  readonly high: number;
  /** Unit of the range. */
  readonly unit: string;
  /** Where it comes from. */
  readonly source: string;
}

const PRACTICE = "common practice, no source";

/**
 * Usual guidance for ends and laps. A starting point for a trial piece, not a proof: class rules
 * and the core maker's sheet go first.
 */
export const detailGuidance: readonly DetailGuidance[] = Object.freeze([
  {
    detail: "ramp at the edge of a core",
    advice: "bevel the core where the faces come together, so that plies lie without a bridge",
    low: 20,
    high: 45,
    unit: "degrees from the skin; the flatter end under load",
    source: PRACTICE,
  },
  {
    detail: "ramped end of a stiffening bar",
    advice: "run the bar out over three times its height or more, and end it on a support",
    low: 3,
    high: 6,
    unit: "lengths of ramp over height of bar",
    source: PRACTICE,
  },
  {
    detail: "ply drop-off",
    advice: "end plies one after another, never two at one line",
    low: 10,
    high: 20,
    unit: "lengths of step over thickness of the ply; 10 mm at the least",
    source: PRACTICE,
  },
  {
    detail: "lap of cloth on cloth",
    advice: "lap along the load; stagger laps of neighbouring plies",
    low: 25,
    high: 50,
    unit: "mm for cloth up to 300 g/m², more for heavier",
    source: PRACTICE,
  },
  {
    detail: "flange of a tabbed joint or bar",
    advice: "let each ply of the flange end further out than the one below",
    low: 25,
    high: 75,
    unit: "mm on each side",
    source: PRACTICE,
  },
  {
    detail: "solid or denser core at fastenings",
    advice: "replace the core under a bolt or a mount out to some three bolt diameters",
    low: 2,
    high: 4,
    unit: "bolt diameters around the bolt",
    source: PRACTICE,
  },
]);
