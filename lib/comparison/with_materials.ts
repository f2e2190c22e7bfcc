import { checksFor } from "../check/mod.ts";
import type { Catalogue, LayerRecord, LayupRecord } from "../records/mod.ts";
import { checkLayup } from "./_layup_checks.ts";

const check = checksFor("lay the schedule in other materials");

/**
 * The same lay-up schedule with each material's row from another catalogue, by its name: what a part
 * would be with the crew's own rows.
 *
 * Formula: none; a fibre fraction that was the cloth's usual one becomes the other row's
 *
 * Range: catalogues that have every material of the schedule.
 *
 * Source: none needed.
 *
 * @param layup The schedule.
 * @param catalogue The other catalogue.
 * @returns The schedule with its rows.
 * @throws {InputError} If the catalogue lacks a material.
 *
 * @example
 * ```ts
 * import { withMaterials } from "@laminate/notebooks/comparison";
 * import { catalogueFromFiles, readPart } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const { layups, catalogue } = await readPart("data/sole-panels");
 * const sole = layups.get("sole")!;
 * assertEquals(withMaterials(sole, catalogueFromFiles({ files: new Map(), base: catalogue })), sole);
 * ```
 */
export function withMaterials(layup: LayupRecord, catalogue: Catalogue): LayupRecord {
  checkLayup(check, layup);
  check.object("catalogue", catalogue);
  const row = <Row>(rows: ReadonlyMap<string, Row>, name: string): Row => {
    if (!(rows instanceof Map)) {
      check.refuse("table of the catalogue", rows, "must be a Map by name");
    }
    return rows.get(name) ?? check.refuse("material", name, "must be in the catalogue");
  };
  return {
    name: layup.name,
    layers: layup.layers.map((layer): LayerRecord => {
      const resin = layer.resin === undefined
        ? {}
        : { resin: row(catalogue.resins, layer.resin.name) };
      if (layer.kind === "core") {
        return { ...layer, ...resin, core: row(catalogue.cores, layer.core.name) };
      }
      const reinforcement = row(catalogue.reinforcements, layer.reinforcement.name);
      check.shape(layer.reinforcement.name, reinforcement, { fibre: "text" });
      const usual = layer.fibreFraction === layer.reinforcement.fibreFraction;
      return {
        ...layer,
        ...resin,
        reinforcement,
        fibre: row(catalogue.fibres, reinforcement.fibre),
        fibreFraction: usual ? reinforcement.fibreFraction : layer.fibreFraction,
      };
    }),
  };
}
