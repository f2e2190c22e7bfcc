import type { Checks } from "../check/mod.ts";
import type { EdgeSupport, Panel, PanelEdges } from "./panel.ts";
import type { PanelStiffness } from "./panel_stiffness.ts";

/** Refuses a panel whose sides, stiffness or edges cannot be meant; loads are checked apart. */
export function checkPanel(check: Checks, panel: Panel): void {
  check.object("panel", panel);
  check.positive("length", panel.length, "m");
  check.positive("width", panel.width, "m");
  checkStiffness(check, panel.stiffness);
  checkEdges(check, panel.edges);
  checkBeams(check, panel);
}

/** Refuses a beam off the panel, or one that cannot be meant. */
function checkBeams(check: Checks, { beams, length, width }: Panel): void {
  if (beams === undefined) return;
  check.list("beams", beams, 0).forEach((beam, i) => {
    check.object(`beam ${i + 1}`, beam);
    const name = `beam ${JSON.stringify(check.text(`name of beam ${i + 1}`, beam.name))}`;
    check.oneOf(`direction of ${name}`, beam.along, ["x", "y"]);
    const max = beam.along === "x" ? width : length;
    check.within(`place of ${name}`, beam.at, { min: 0, max, unit: "m" });
    check.positive(`flexural rigidity of ${name}`, beam.bending, "N·m²");
    check.nonNegative(`shear stiffness of ${name}`, beam.shear, "N");
    check.nonNegative(`mass of ${name}`, beam.massPerLength, "kg/m");
  });
}

/** Refuses what no series of waves can take: supports at points, beams along lines. */
export function refusePointsAndLines(check: Checks, { supports = [], beams = [] }: Panel): void {
  if (supports.length > 0) {
    check.refuse("supports", supports, "must be none: use ritzPanel for point supports");
  }
  if (beams.length > 0) check.refuse("beams", beams, "must be none: use ritzPanel for beams");
}

/** Refuses a bending or shear stiffness that a load could gain energy from. */
export function checkStiffness(check: Checks, stiffness: PanelStiffness): void {
  check.object("stiffness", stiffness);
  check.list("notes of the stiffness", stiffness.notes, 0).forEach((note, i) => {
    if (typeof note !== "string") {
      check.refuse(`note ${i + 1} of the stiffness`, note, "must be text");
    }
  });
  const D11 = check.positive("D11", stiffness.D11, "N·m");
  const D22 = check.positive("D22", stiffness.D22, "N·m");
  const D66 = check.positive("D66", stiffness.D66, "N·m");
  const D12 = check.finite("D12", stiffness.D12, "N·m");
  const D16 = check.finite("D16", stiffness.D16, "N·m");
  const D26 = check.finite("D26", stiffness.D26, "N·m");
  if (!(D12 * D12 < D11 * D22)) {
    check.refuse("D12", D12, "must be smaller than the root of D11 D22");
  }
  const determinant = D11 * (D22 * D66 - D26 * D26) - D12 * (D12 * D66 - D26 * D16) +
    D16 * (D12 * D26 - D22 * D16);
  if (!(determinant > 0)) {
    check.refuse("D16 and D26", `${D16} and ${D26}`, "must leave D positive definite");
  }
  if (stiffness.shear === "rigid") return;
  check.object("shear stiffness", stiffness.shear);
  const S44 = check.positive("S44", stiffness.shear.S44, "N/m");
  const S55 = check.positive("S55", stiffness.shear.S55, "N/m");
  const S45 = check.finite("S45", stiffness.shear.S45, "N/m");
  if (!(S45 * S45 < S44 * S55)) {
    check.refuse("S45", S45, "must be smaller than the root of S44 S55");
  }
}

/** The edges by name. */
export const EDGE_NAMES: readonly (keyof PanelEdges)[] = ["x0", "x1", "y0", "y1"];

function checkEdges(check: Checks, edges: PanelEdges): void {
  check.object("edges", edges);
  for (const name of EDGE_NAMES) checkEdge(check, name, edges[name]);
}

/** Refuses an edge that is not known. */
export function checkEdge(check: Checks, name: string, edge: EdgeSupport): void {
  if (typeof edge === "object" && edge !== null) {
    check.nonNegative(`deflection stiffness of edge ${name}`, edge.deflectionStiffness, "N/m²");
    check.nonNegative(`rotation stiffness of edge ${name}`, edge.rotationStiffness, "N");
    return;
  }
  check.oneOf(`edge ${name}`, edge, ["simple", "clamped", "free"]);
}
