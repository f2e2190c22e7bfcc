/** What a lay-up schedule must be before anything is computed from it. */
import type { Checks } from "../check/mod.ts";
import type { Catalogued } from "../materials/mod.ts";
import type { LayerRecord, LayupRecord } from "../records/mod.ts";

/** Deeper than any field of a record. */
const DEEPEST = 8;

/** Refuses a lay-up that is none, or one in which a figure of a material is no number. */
export function checkLayup(check: Checks, layup: LayupRecord, argument = "lay-up"): void {
  check.object(argument, layup);
  check.text(`name of the ${argument}`, layup.name);
  check.list(`layers of the ${argument}`, layup.layers, 0).forEach((layer, i) =>
    checkLayer(check, layer, `layer ${i + 1}`)
  );
  checkFigures(check, layup, argument);
}

function checkLayer(check: Checks, layer: LayerRecord, where: string): void {
  check.object(where, layer);
  check.oneOf(`kind of ${where}`, layer.kind, ["reinforcement", "core"]);
  check.finite(`angle of ${where}`, layer.angleDeg, "°");
  if (layer.kind === "core") {
    check.positive(`thickness of ${where}`, layer.thickness, "m");
    checkMaterial(check, layer.core, `core of ${where}`);
    return;
  }
  check.positive(`fibre fraction of ${where}`, layer.fibreFraction);
  checkMaterial(check, layer.reinforcement, `reinforcement of ${where}`);
  checkMaterial(check, layer.fibre, `fibre of ${where}`);
  checkMaterial(check, layer.resin, `resin of ${where}`);
}

function checkMaterial(
  check: Checks,
  material: Catalogued<string>,
  where: string,
): void {
  check.object(where, material);
  check.text(`name of the ${where}`, material.name);
  const typical = check.object(`typical ranges of the ${where}`, material.typical);
  for (const [name, range] of Object.entries(typical)) {
    if (range === undefined) continue;
    const { low, high } = check.object(`typical ${name} of the ${where}`, range);
    check.finite(`low end of the typical ${name}`, low);
    check.finite(`high end of the typical ${name}`, high);
  }
}

/** Refuses a number that is none, at any depth: the record is handed on with the result. */
export function checkFigures(check: Checks, value: unknown, argument: string, depth = 0): void {
  if (typeof value === "number") check.finite(argument, value);
  if (typeof value !== "object" || value === null || depth > DEEPEST) return;
  for (const [name, inner] of Object.entries(value)) {
    checkFigures(check, inner, `${name} of the ${argument}`, depth + 1);
  }
}
