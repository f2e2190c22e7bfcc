import { checksFor } from "../check/mod.ts";
import type { Lamina, Stack } from "../materials/mod.ts";
import {
  type OrientationCode,
  type OrientationEntry,
  readOrientationCode,
} from "./orientation_code.ts";
import { checkLamina } from "./_checks.ts";
import { checkEntry, endsInMiddle } from "./_orientation_code_check.ts";

const check = checksFor("build the stack");

/** One layer that an orientation code stands for. */
export interface CodeLayer {
  /** A ply with one direction, a cloth, or a layer known by its material alone. */
  readonly kind: "ply" | "cloth" | "layer";
  /** From x to the fibre, or to the warp of a cloth; 0 for a layer without a direction [deg]. */
  readonly angleDeg: number;
  /** Key of the material, where the code names one. */
  readonly material?: string;
}

/** What one layer is made of, and how thick it comes out. */
export interface LayerMaterial {
  /** The cured layer as a homogeneous sheet. */
  readonly lamina: Lamina;
  /** Cured thickness [m]. */
  readonly thickness: number;
}

/** The materials that the layers of an orientation code are made of. */
export interface CodeMaterials {
  /** For plies with one direction that name no material. */
  readonly ply?: LayerMaterial;
  /** For cloths that name no material. */
  readonly cloth?: LayerMaterial;
  /** For layers that name one, by their keys. */
  readonly named?: Readonly<Record<string, LayerMaterial>>;
}

/**
 * The layers that an orientation code stands for, one by one, mould side first.
 *
 * Formula: entries repeated, then followed by their mirror image if symmetric; a middle ply once
 *
 * Range: up to 1000 plies
 *
 * Source: ASTM D6507, from memory
 *
 * @param code The code, as text or taken apart.
 * @returns The layers with their angles [deg].
 * @throws {InputError} If the text is no code, or the object no code taken apart.
 *
 * @example
 * ```ts
 * import { layersOfCode } from "@laminate/notebooks/laminate";
 * import { assertEquals } from "@std/assert";
 *
 * const layers = layersOfCode("[(0/90)/core/(±45)]");
 * assertEquals(layers.map((layer) => layer.kind), ["cloth", "layer", "cloth"]);
 * assertEquals(layers.map((layer) => layer.angleDeg), [0, 0, 45]);
 * ```
 */
export function layersOfCode(code: OrientationCode | string): readonly CodeLayer[] {
  if (typeof code === "string") return layersOf(readOrientationCode(code));
  checkEntry(check, code);
  return layersOf(code);
}

function layersOf(entry: OrientationEntry): readonly CodeLayer[] {
  const named = "material" in entry && entry.material !== undefined
    ? { material: entry.material }
    : {};
  switch (entry.kind) {
    case "pair":
      return [entry.angleDeg, 0 - entry.angleDeg].map((angleDeg) => ({
        kind: "ply",
        angleDeg,
        ...named,
      }));
    case "group": {
      const once = entry.entries.flatMap(layersOf);
      const half = Array.from({ length: entry.count }, () => once).flat();
      if (!entry.symmetric) return half;
      const mirrored = half.slice(0, endsInMiddle(entry) ? -1 : undefined).reverse();
      return [...half, ...mirrored];
    }
    default: {
      const angleDeg = entry.kind === "layer" ? 0 : entry.angleDeg;
      return Array.from({ length: entry.count }, () => ({ kind: entry.kind, angleDeg, ...named }));
    }
  }
}

/**
 * The stack that an orientation code stands for, given its materials.
 *
 * A cloth is one ply with its warp along the first of its two directions.
 *
 * Formula: none
 *
 * Range: up to 1000 plies
 *
 * Source: ASTM D6507 for the code, from memory
 *
 * @param code The code, as text or taken apart.
 * @param materials What its layers are made of, each with its thickness [m].
 * @returns The stack, mould side first.
 * @throws {InputError} If the text is no code, or a layer's material is not given.
 *
 * @example
 * ```ts
 * import { stackOfCode } from "@laminate/notebooks/laminate";
 * import { assertEquals } from "@std/assert";
 *
 * const cloth = {
 *   lamina: {
 *     name: "glass cloth", E1: 20e9, E2: 20e9, G12: 4e9, nu12: 0.13, G13: 3e9, G23: 3e9,
 *     density: 1800, alpha1: 15e-6, alpha2: 15e-6,
 *   },
 *   thickness: 0.25e-3,
 * };
 * const foam = {
 *   lamina: {
 *     name: "foam", E1: 70e6, E2: 70e6, G12: 27e6, nu12: 0.3, G13: 27e6, G23: 27e6,
 *     density: 80, alpha1: 35e-6, alpha2: 35e-6,
 *   },
 *   thickness: 10e-3,
 * };
 * const stack = stackOfCode("[(0/90)_2/core|]s", { cloth, named: { core: foam } });
 * assertEquals(stack.map((ply) => ply.lamina.name).join(" "),
 *   "glass cloth glass cloth foam glass cloth glass cloth");
 * ```
 */
export function stackOfCode(code: OrientationCode | string, materials: CodeMaterials): Stack {
  check.object("set of materials", materials);
  return layersOfCode(code).map((layer, index) => {
    const { lamina, thickness } = materialOf(layer, index, materials);
    const where = `material of layer ${index + 1} `;
    checkLamina(check, lamina, `${where}lamina `);
    check.positive(`${where}thickness`, thickness, "m");
    return { lamina, thickness, angleDeg: layer.angleDeg };
  });
}

function materialOf(layer: CodeLayer, index: number, materials: CodeMaterials): LayerMaterial {
  const { material: key } = layer;
  const named = materials.named ?? {};
  const found = key === undefined
    ? (layer.kind === "cloth" ? materials.cloth : materials.ply)
    : Object.hasOwn(named, key)
    ? named[key]
    : undefined;
  if (found !== undefined) return check.object(`material of layer ${index + 1}`, found);
  return check.refuse(
    `material of layer ${index + 1}`,
    key,
    key === undefined
      ? `must be given as \`${layer.kind}\`, or named in the code`
      : `must be one of: ${Object.keys(named).join(", ") || "(none is named)"}`,
  );
}
