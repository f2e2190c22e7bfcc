/** Lay-ups read from text, as a crew writes them, with the project's catalogue. */
import { type LayupRecord, partFromFiles, readCatalogue } from "../../lib/records/mod.ts";

const catalogue = await readCatalogue();

/** A lay-up from rows "material, angle, thickness in mm, fibre fraction", mould side first. */
export function layupOf(...rows: readonly string[]): LayupRecord {
  const lines = rows.map((row, i) => {
    const [material = "", angle = "", thickness = "", fraction = ""] = row.split(",").map((cell) =>
      cell.trim()
    );
    const resin = thickness === "" ? "epoxy laminating slow" : "";
    return ["demo", i + 1, material, resin, angle || 0, thickness, fraction].join(",");
  });
  const heading = "layup,layer,material,resin,angle_deg,thickness_mm,fibre_fraction";
  const files = new Map([["layup.csv", [heading, ...lines].join("\n")]]);
  return partFromFiles({ name: "demo", files, catalogue }).layups.get("demo")!;
}
