/** What a day in the workshop must be before it is planned. */
import type { Checks, Fields } from "../check/mod.ts";
import { checkFigures, checkLayup } from "./_layup_checks.ts";
import type { LayupDay, PartsOfDay } from "./layup_day.ts";

/** What the day needs to be told of its workshop. */
const WORKSHOP: Fields = {
  resin: "object",
  temperature: "positive",
  laidPerHour: "positive",
  rateSpread: "nonNegative",
  mixingTime: "nonNegative",
  potLife: "positive",
  potMass: "positive",
  "thinLayerTime?": "positive",
  sheetTemperature: "positive",
  handlingTime: "positive",
  fullCureTime: "positive",
  hardenerDensity: "positive",
  loss: "nonNegative",
  "vacuum?": "number",
  "altitude?": "number",
};
const STOCK: Fields = {
  rollWidth: "positive",
  joinOverlap: "nonNegative",
  sheetLength: "positive",
  sheetWidth: "positive",
};

/** Refuses a day of which a part is missing or cannot be meant. */
export function checkDay(check: Checks, day: LayupDay): void {
  const { parts, workshop, stock } = check.object("day", day);
  checkParts(check, parts);
  check.shape("workshop", workshop, WORKSHOP);
  checkFigures(check, workshop, "workshop");
  check.shape("stock", stock, STOCK);
}

function checkParts(check: Checks, parts: PartsOfDay): void {
  check.object("parts", parts);
  checkLayup(check, parts.layup);
  check.count("parts", parts.count, 1);
  check.positive("length", parts.length, "m");
  check.positive("width", parts.width, "m");
  check.nonNegative("trim", parts.trim, "m");
  check.nonNegative("ramp", parts.ramp, "m");
  check.nonNegative("coat on the mould", parts.mouldCoat, "kg/m²");
  check.nonNegative("soak of the peel ply", parts.peelPlySoak, "kg/m²");
}
