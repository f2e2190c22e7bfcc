import type { Fields } from "./_shape.ts";

/** What the day needs to be told of its workshop. */
export const WORKSHOP: Fields = {
  resin: "object",
  temperature: "positive",
  laidPerHour: "positive",
  rateSpread: "nonNegative",
  mixingTime: "nonNegative",
  potLife: "positive",
  potMass: "positive",
  sheetTemperature: "positive",
  handlingTime: "positive",
  fullCureTime: "positive",
  hardenerDensity: "positive",
  loss: "nonNegative",
  "vacuum?": "number",
  "altitude?": "number",
};
/** What it needs to be told of its stock. */
export const STOCK: Fields = {
  rollWidth: "positive",
  joinOverlap: "nonNegative",
  sheetLength: "positive",
  sheetWidth: "positive",
};
