/** Shapes of what comes in by several doors of this room. */

/** A value with standard uncertainty. */
export const UNCERTAIN = { value: "number", u: "nonNegative" } as const;
/** A value above 0 with standard uncertainty. */
export const MEASURED = { value: "positive", u: "nonNegative" } as const;
/** A value with an interval. */
export const INTERVAL = { ...UNCERTAIN, low: "number", high: "number" } as const;
/** How a beam is held and loaded. */
export const LOAD_CASE = {
  equation: "text",
  deflection: { bending: "positive", shear: "positive" },
} as const;
