import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  type BarOnSkin,
  barOnSkin,
  detailGuidance,
  filletPart,
  type FoldedEdge,
  foldedEdge,
  halfRingPart,
  halfRoundTunnel,
  type RingFeet,
  slabPart,
  transformedSection,
  tunnelSquash,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

const glass = { E: 18e9, density: 1800 };
const exact = { relative: 1e-12 };

/** Mid-point sums over thin slices of a shape: width at height z. */
function sliced(width: (z: number) => number, from: number, to: number): readonly number[] {
  const n = 200_000;
  const h = (to - from) / n;
  let [area, first, second] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    const z = from + (i + 0.5) * h;
    const b = width(z) * h;
    area += b;
    first += b * z;
    second += b * z * z;
  }
  return [area, first / area, second - first * first / area];
}

Deno.test("a fillet: area, centroid and own moment as by slices", () => {
  const r = 0.012;
  // The arc's centre stands at (r, r) from the corner; the filler lies between it and the sides.
  const [area, height, own] = sliced((z) => r - Math.sqrt(r * r - (r - z) ** 2), 0, r);
  const part = filletPart(glass, r, 0);
  assertClose([part.area, part.height, part.ownSecondMoment], [area!, height!, own!], {
    relative: 2e-6,
  });
});

Deno.test("a half ring: thin-wall forms, against a thick ring by slices", () => {
  const [r, t] = [0.03, 0.0006];
  const chord = (R: number, z: number): number => z < R ? 2 * Math.sqrt(R * R - z * z) : 0;
  const width = (z: number): number => chord(r + t / 2, z) - chord(r - t / 2, z);
  const [area, height, own] = sliced(width, 0, r + t / 2);
  const part = halfRingPart("ring", glass, { radius: r, thickness: t, feet: 0 });
  // Thin-wall forms leave out terms of (t/r)²/12 and the like: 1e-4 here.
  assertClose([part.area, part.height, part.ownSecondMoment], [area!, height!, own!], {
    relative: 3e-4,
  });
});

Deno.test("two materials: the transformed section of a textbook", () => {
  // A wooden beam 0.1 × 0.2 m, E 10 GPa, with a steel plate 0.1 × 0.01 m, E 200 GPa, below. By
  // hand, n = 20: steel counts as 2 m of width.
  const section = transformedSection([
    slabPart("steel", { E: 200e9, density: 7850 }, { width: 0.1, bottom: 0, top: 0.01 }),
    slabPart("wood", { E: 10e9, density: 500 }, { width: 0.1, bottom: 0.01, top: 0.21 }),
  ]);
  const axis = (0.02 * 0.005 + 0.02 * 0.11) / 0.04;
  const I = 2 * 0.01 ** 3 / 12 + 0.02 * (axis - 0.005) ** 2 + 0.1 * 0.2 ** 3 / 12 +
    0.02 * (0.11 - axis) ** 2;
  assertClose(section.neutralAxis, axis, exact);
  assertClose(section.flexuralRigidity, 10e9 * I, exact);
  assertClose(section.massPerLength, 7.85 + 10, exact);
  assertClose(section.stressPerMoment[0]![0], 20 * axis / I, exact);
  assertClose(section.stressPerMoment[1]![1], -(0.21 - axis) / I, exact);
});

const bar: BarOnSkin = {
  width: 0.2,
  skin: { ...glass, thickness: 0.003 },
  former: { E: 60e6, density: 80, crownWidth: 0.03, height: 0.02, sideAngleDeg: 60 },
  cover: { ...glass, thickness: 0.0008, flange: 0.025 },
};

Deno.test("a bar on a skin: rigidity as by slices of modulus times width", () => {
  const { height: h, crownWidth: b } = bar.former;
  const [t, s] = [bar.cover.thickness, bar.skin.thickness];
  const slope = 1 / Math.tan(Math.PI / 3);
  const wall = 2 * t / Math.sin(Math.PI / 3);
  const stiffWidth = (z: number): number => {
    if (z < s) return 18e9 * 0.2;
    if (z > s + h) return 18e9 * b;
    const core = b + 2 * (s + h - z) * slope;
    return 60e6 * core + 18e9 * wall + (z < s + t ? 18e9 * 2 * bar.cover.flange : 0);
  };
  const [EA, axis, D] = sliced(stiffWidth, 0, s + h + t);
  const section = barOnSkin(bar);
  assertClose(section.axialStiffness, EA!, { relative: 1e-4 });
  assertClose(section.neutralAxis, axis!, { relative: 1e-4 });
  assertClose(section.flexuralRigidity, D!, { relative: 1e-4 });
});

Deno.test("a hat is a bar on a former without stiffness: little less stiff, lighter", () => {
  const hat = barOnSkin({ ...bar, former: { ...bar.former, E: 0, density: 0 } });
  const solid = barOnSkin(bar);
  assert(hat.flexuralRigidity > 0.98 * solid.flexuralRigidity);
  assert(hat.massPerLength < solid.massPerLength);
  const noFlange = barOnSkin({ ...bar, cover: { ...bar.cover, flange: 0 } });
  assertEquals(noFlange.parts.length, 4);
});

/** Stress of each part's lowest and highest fibre for 1 N·m of sagging, from where they lie. */
function assertStresses(
  section: ReturnType<typeof barOnSkin>,
  fibres: Readonly<Record<string, readonly [E: number, low: number, high: number]>>,
): void {
  const { parts, neutralAxis, flexuralRigidity, stressPerMoment } = section;
  assertEquals(parts.map(({ name }) => name).toSorted(), Object.keys(fibres).toSorted());
  parts.forEach(({ name }, i) => {
    const [E, ...ends] = fibres[name]!;
    const expected = ends.map((z) => -E * (z - neutralAxis) / flexuralRigidity);
    assertClose([...stressPerMoment[i]!], expected, { relative: 1e-11, absolute: 1e-6 }, name);
  });
}

Deno.test("the outer fibres of each part lie where the drawing has them", () => {
  assertStresses(barOnSkin(bar), {
    skin: [18e9, 0, 0.003],
    flanges: [18e9, 0.003, 0.0038],
    walls: [18e9, 0.003, 0.023],
    core: [60e6, 0.003, 0.023],
    crown: [18e9, 0.023, 0.0238],
  });
  const skin = { ...glass, thickness: 0.003 };
  const wall = { E: 12e9, density: 1700, thickness: 0.002, radius: 0.03 };
  // The crown's outside: half a wall beyond the middle of it.
  assertStresses(halfRoundTunnel({ width: 0.1, skin, wall }), {
    skin: [18e9, 0, 0.003],
    wall: [12e9, 0.003, 0.034],
  });
  const fillet = { E: 2e9, density: 700, radius: 0.01 };
  assertStresses(foldedEdge({ width: 0.1, skin, upstand: { ...skin, height: 0.03 }, fillet }), {
    skin: [18e9, 0, 0.003],
    upstand: [18e9, 0.003, 0.033],
    fillet: [2e9, 0.003, 0.013],
  });
});

Deno.test("a folded edge and its fillet; a tunnel", () => {
  const skin = { ...glass, thickness: 0.003 };
  const edge: FoldedEdge = { width: 0.1, skin, upstand: { ...skin, height: 0.03 } };
  const plain = foldedEdge(edge);
  const [EA, axis, D] = sliced((z) => 18e9 * (z < 0.003 ? 0.1 : 0.003), 0, 0.033);
  assertClose([plain.axialStiffness, plain.neutralAxis, plain.flexuralRigidity], [EA!, axis!, D!], {
    relative: 1e-4,
  });
  const filled = foldedEdge({ ...edge, fillet: { E: 2e9, density: 700, radius: 0.01 } });
  assert(filled.flexuralRigidity > plain.flexuralRigidity);
  const fillet = 0.01 ** 2 * (1 - Math.PI / 4);
  assertClose(filled.massPerLength - plain.massPerLength, 700 * fillet, { relative: 1e-9 });
  const tunnel = halfRoundTunnel({
    width: 0.1,
    skin,
    wall: { ...glass, thickness: 0.002, radius: 0.03 },
  });
  assertEquals(tunnel.parts.map(({ name }) => name), ["skin", "wall"]);
  assertClose(tunnel.parts[1]!.height, 0.003 + 0.06 / Math.PI, exact);
});

/** Half ring by the unit-load theorem, quadrature over the angle from the crown. */
function ringByQuadrature(feet: RingFeet): number {
  const n = 20_000;
  const inner = (f: (phi: number) => number): number => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += f((i + 0.5) / n * Math.PI / 2) * Math.PI / 2 / n;
    return sum;
  };
  // P = r = D = 1. Redundants: thrust at the feet (moment −cos φ) and moment there (1).
  const load = (p: number): number => (1 - Math.sin(p)) / 2;
  const redundants: ((p: number) => number)[] = feet === "sliding"
    ? []
    : feet === "hinged"
    ? [(p) => -Math.cos(p)]
    : [(p) => -Math.cos(p), () => 1];
  const a = redundants.map((f) => redundants.map((g) => inner((p) => f(p) * g(p))));
  const b = redundants.map((f) => -inner((p) => f(p) * load(p)));
  const x = redundants.length === 2
    ? [
      (b[0]! * a[1]![1]! - b[1]! * a[0]![1]!) / (a[0]![0]! * a[1]![1]! - a[0]![1]! * a[1]![0]!),
      (b[1]! * a[0]![0]! - b[0]! * a[1]![0]!) / (a[0]![0]! * a[1]![1]! - a[0]![1]! * a[1]![0]!),
    ]
    : redundants.length === 1
    ? [b[0]! / a[0]![0]!]
    : [];
  const M = (p: number): number => load(p) + redundants.reduce((s, f, i) => s + x[i]! * f(p), 0);
  return 2 * inner((p) => M(p) * load(p));
}

Deno.test("a tunnel squashes as its ring by the unit-load theorem, feet held three ways", () => {
  const ring = { lineLoad: 300, radius: 0.04, thickness: 0.0015, E: 15e9, nu: 0.2 };
  const D = 15e9 * 0.0015 ** 3 / 12 / 0.96;
  for (const feet of ["sliding", "hinged", "clamped"] as const) {
    const { deflection } = tunnelSquash({ ...ring, feet });
    const expected = ringByQuadrature(feet) * 300 * 0.04 ** 3 / D;
    assertClose(deflection, expected, { relative: 1e-7 }, feet);
  }
  // Known crown moments, from memory of handbooks: P r/2, 0.182 P r, 0.151 P r.
  const moment = (feet: RingFeet): number => tunnelSquash({ ...ring, feet }).crownMoment / 12;
  assertClose(moment("sliding"), 0.5, exact);
  assertClose(moment("hinged"), 0.182, { absolute: 5e-4 });
  assertClose(moment("clamped"), 0.151, { absolute: 6e-4 });
  const { crownMoment, crownStress } = tunnelSquash({ ...ring, feet: "hinged" });
  assertClose(crownStress, 6 * crownMoment / 0.0015 ** 2, exact);
});

Deno.test("guidance names its range, unit and source", () => {
  for (const { low, high, unit, source } of detailGuidance) {
    assert(low < high && unit !== "" && source !== "");
  }
});

Deno.test("shapes that cannot be meant are refused", () => {
  const refused = (run: () => unknown, message: string): void => {
    assertThrows(run, InputError, message);
  };
  refused(() => transformedSection([]), "parts is a list of 0");
  refused(() => barOnSkin({ ...bar, width: 0.09 }), "width is 0.09, must hold the bar");
  refused(() => barOnSkin({ ...bar, skin: undefined } as unknown as BarOnSkin), "skin is missing");
  refused(
    () => barOnSkin({ ...bar, former: { ...bar.former, sideAngleDeg: 2 } }),
    "side angle of the former is 2 °",
  );
  refused(
    () => slabPart("bar", glass, { width: 0.1, bottom: 0.02, top: 0.01 }),
    "depth of bar is -0.01 m, must be above 0",
  );
  refused(
    () => halfRingPart("ring", glass, { radius: 0.001, thickness: 0.002, feet: 0 }),
    "must be a number above the thickness",
  );
  const skin = { ...glass, thickness: 0.003 };
  refused(
    () =>
      foldedEdge({
        width: 0.1,
        skin,
        upstand: { ...skin, height: 0.005 },
        fillet: { ...glass, radius: 0.01 },
      }),
    "radius of the fillet is 0.01, must be 0.005 m or less",
  );
  refused(
    () => halfRoundTunnel({ width: 0.05, skin, wall: { ...skin, radius: 0.03 } }),
    "width is 0.05, must hold the tunnel",
  );
  const ring = { lineLoad: 1, radius: 0.1, thickness: 0.001, E: 1e9, nu: 0 };
  refused(() => tunnelSquash({ ...ring, feet: "glued" as RingFeet }), 'feet is "glued"');
  refused(() => tunnelSquash({ ...ring, feet: "hinged", radius: 0 }), "radius is 0 m");
});
