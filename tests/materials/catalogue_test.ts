import { assert } from "@std/assert";
import type { Range } from "../../lib/materials/mod.ts";
import { coreLamina, curedPly } from "../../lib/micromechanics/mod.ts";
import { readCatalogue } from "./catalogue.ts";

const catalogue = readCatalogue();
const { fibres, resins, reinforcements, cores, fillers } = catalogue;

Deno.test("the catalogue offers enough to choose from", () => {
  const least = { fibres: 8, resins: 6, reinforcements: 14, cores: 14, fillers: 8 };
  for (const [table, count] of Object.entries(least)) {
    const { size } = catalogue[table as keyof typeof catalogue];
    assert(size >= count, `${table} has ${size}`);
  }
});

Deno.test("every row has a source that says where it is from, and lies in its usual range", () => {
  for (const rows of Object.values(catalogue)) {
    for (const [name, row] of rows as ReadonlyMap<string, Record<string, unknown>>) {
      const source = String(row["source"]);
      const marks = ["from memory", "common practice", "ISO", "estimate", "no source"];
      assert(marks.some((mark) => source.includes(mark)), `${name}: ${source}`);
      const typical = Object.entries(row["typical"] as Record<string, Range>);
      assert(typical.length > 0, `${name} has no usual range`);
      for (const [property, { low, high }] of typical) {
        const value = Number(row[property]);
        assert(low < high && value >= low && value <= high, `${name}: ${property}`);
      }
    }
  }
});

Deno.test("every fibre is a body that pushes back, glass and basalt alike in all directions", () => {
  for (const { name, kind, E1, E2, G12, nu12, G23 } of fibres.values()) {
    const nu23 = E2 / (2 * G23) - 1;
    assert(Math.abs(nu12) < Math.sqrt(E1 / E2), name);
    assert(Math.abs(nu23) < 1 && 1 - nu23 - 2 * nu12 ** 2 * E2 / E1 > 0, name);
    assert(E2 <= E1 && G23 <= G12 * 1.001 + E1 && G12 > 0, name);
    if (kind === "glass" || kind === "basalt") {
      assert(E1 === E2 && G12 === G23, name);
      // The catalogue gives G to four digits.
      assert(Math.abs(G12 * 2 * (1 + nu12) / E1 - 1) < 5e-4, name);
    }
  }
});

// Windows of the kinds in general handbooks (densities in kg/m³, moduli in GPa); common practice,
// from memory. A row that leaves them has a slipped digit or unit.
const FIBRE_WINDOWS = {
  glass: { density: [2440, 2700], E1: [68, 92] },
  carbon: { density: [1700, 2200], E1: [200, 700] },
  aramid: { density: [1390, 1480], E1: [60, 180] },
  basalt: { density: [2600, 2900], E1: [75, 100] },
  flax: { density: [1300, 1550], E1: [25, 85] },
  polymer: { density: [900, 1600], E1: [5, 180] },
} as const;

Deno.test("fibres, resins, cloths and fillers lie in their kind's window", () => {
  const inside = (value: number, [low, high]: readonly [number, number], what: string) =>
    assert(value >= low && value <= high, `${what} ${value}`);
  for (const { name, kind, density, E1, tensileStrength, compressiveStrength } of fibres.values()) {
    inside(density, FIBRE_WINDOWS[kind].density, name);
    inside(E1 / 1e9, FIBRE_WINDOWS[kind].E1, name);
    // A fibre in a composite breaks in tension between half a per cent and 3.5 % of strain.
    inside(tensileStrength / E1, [0.004, 0.035], name);
    assert(compressiveStrength < tensileStrength, name);
  }
  for (const { name, density, E, nu, alpha, tensileStrength, ...rest } of resins.values()) {
    inside(density, [1080, 1300], name);
    inside(E / 1e9, [2, 5], name);
    inside(nu, [0.3, 0.42], name);
    inside(alpha * 1e6, [40, 120], name);
    inside(tensileStrength / E, [0.01, 0.04], name);
    assert(rest.compressiveStrength > tensileStrength, name);
    inside(rest.shearStrength / tensileStrength, [0.5, 0.9], name);
  }
  for (const { name, form, weave, fibre, arealWeight, warpShare } of reinforcements.values()) {
    assert(fibres.has(fibre), name);
    inside(arealWeight * 1000, [40, 1300], name);
    assert((form === "woven") === (weave !== "none"), name);
    inside(warpShare, form === "unidirectional" ? [0.9, 1] : [0.4, 0.6], name);
    // The number in the name is its areal weight.
    assert(Math.abs(Number(name.split(" ").at(-1)) - arealWeight * 1000) < 1e-9, name);
  }
  for (const { name, particleDensity, bulkDensity, packing } of fillers.values()) {
    assert(bulkDensity < particleDensity, name);
    // No powder lies denser in the cup than its particles pack when stirred (fibres and fume
    // trap air), and none packs closer than equal spheres can.
    assert(packing <= 0.7405, name);
    assert(bulkDensity / particleDensity <= packing * 1.1, name);
  }
});

Deno.test("cores follow their kind: foams alike both ways, honeycombs nearly limp in the plane", () => {
  for (const core of cores.values()) {
    const { name, kind } = core;
    const lamina = coreLamina(core);
    assert(lamina.nu12 ** 2 * lamina.E2 / lamina.E1 < 1, name);
    assert(core.shearModulusL >= core.shearModulusW, name);
    assert(core.shearStrengthL >= core.shearStrengthW, name);
    assert((kind === "honeycomb") === (core.cellSize > 0), name);
    if (kind === "foam") {
      assert(core.shearModulusL === core.shearModulusW, name);
      // The catalogue rounds E = 2 G (1 + ν) to whole MPa.
      const slack = 0.5e6;
      assert(
        Math.abs(core.inPlaneModulusL - 2 * core.shearModulusL * (1 + core.nu)) <= slack,
        name,
      );
    }
    if (kind === "honeycomb") assert(core.inPlaneModulusL < core.shearModulusW / 10, name);
    const number = /\b(\d+)\b/.exec(name);
    assert(number !== null && Number(number[1]) === core.density, name);
  }
});

Deno.test("every reinforcement makes a ply with every resin at its usual fraction", () => {
  for (const reinforcement of reinforcements.values()) {
    const fibre = fibres.get(reinforcement.fibre)!;
    for (const resin of resins.values()) {
      const { fibreFraction } = reinforcement;
      const ply = curedPly({ reinforcement, fibre, resin, fibreVolumeFraction: fibreFraction });
      const { lamina, thickness, notes } = ply;
      assert(notes.length === 0, lamina.name);
      assert(thickness > 0.02e-3 && thickness < 2e-3, lamina.name);
      assert(lamina.nu12 ** 2 * lamina.E2 / lamina.E1 < 1, lamina.name);
      assert(lamina.E1 > resin.E && lamina.E1 < fibre.E1, lamina.name);
      assert(lamina.density > resin.density * 0.95 && lamina.density < fibre.density, lamina.name);
      assert(Object.values(lamina.strengths!).every((strength) => strength > 0), lamina.name);
    }
  }
});
