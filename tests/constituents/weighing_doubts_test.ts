/**
 * Where a weighing stops being believed: each limit from just inside and just outside, and each
 * slip of the pen. Parts are made backwards from the fraction that they hold, by mass balance.
 */
import { assert, assertEquals } from "@std/assert";
import { type PartWeighing, weighPart } from "../../lib/constituents/mod.ts";
import { assertClose } from "../close.ts";

const exact = (value: number, u = 0) => ({ value, u });
const RESIN = 1150;
const FIBRE = 2560;
/** One square metre of four twills: 0.8 kg of cloth, 0.0003125 m³ of glass. */
const CLOTH = 0.8;
const VOLUME = CLOTH / FIBRE;

/** Resin that brings the cloth to a fibre volume fraction [kg]. */
const resinAt = (Vf: number): number => RESIN * VOLUME * (1 - Vf) / Vf;

/** A solid part that holds a fibre volume fraction; `change` goes over it. */
function partAt(Vf: number, change: Partial<PartWeighing> = {}): PartWeighing {
  const beside = (change.coreMass?.value ?? 0) + (change.otherMass?.value ?? 0) +
    (change.coreUptake?.value ?? 0);
  return {
    partMass: exact(CLOTH + resinAt(Vf) + beside),
    area: exact(1),
    layers: [{
      cloth: "twill",
      fibre: "E-glass",
      form: "woven",
      arealWeight: exact(0.2),
      fibreDensity: exact(FIBRE),
      count: 4,
    }],
    resinDensity: exact(RESIN),
    ...change,
  };
}

/** Verdict and first words of a weighing. */
function saidOf(weighing: PartWeighing): string {
  const { verdict, notes } = weighPart(weighing);
  return [verdict, ...notes].join(" | ");
}

function assertSays(weighing: PartWeighing, verdict: string, words: string): void {
  const said = saidOf(weighing);
  assert(said.startsWith(verdict) && said.includes(words), `${said}: not ${verdict}, ${words}`);
}

Deno.test("each limit of the fibre fraction, from both sides, with exact inputs", () => {
  // Fibres of a square array touch at π/4 = 0.7854. Hand lay-up of woven cloth begins at 0.30:
  // half of it is 0.15, two thirds (0.67) of it 0.201; above 0.66 lies more than infusion.
  const limits: readonly (readonly [number, string, string])[] = [
    [0.786, "mistake", "fibres would touch"],
    [0.785, "doubtful", "more than infusion"],
    [0.6605, "doubtful", "more than infusion"],
    [0.6595, "plausible", "Dry"],
    [0.4505, "plausible", "Dry"],
    [0.2995, "plausible", "Resin-rich"],
    [0.2015, "plausible", "Resin-rich"],
    [0.2005, "doubtful", "very resin-rich"],
    [0.1505, "doubtful", "very resin-rich"],
    [0.1495, "mistake", "wettest hand lay-up"],
  ];
  for (const [Vf, verdict, words] of limits) assertSays(partAt(Vf), verdict, words);
  for (const Vf of [0.3005, 0.4495]) assertEquals(saidOf(partAt(Vf)), "plausible");
});

Deno.test("a cloth among which mat is may be wetter, and an infused part is judged against hand", () => {
  const [twill] = partAt(0.3).layers;
  // Half the glass is mat: low end 1/(0.5/0.30 + 0.5/0.13) = 0.18140, 0.67 of it 0.12154.
  const mat = { ...twill!, cloth: "mat", form: "mat", count: 2 } as const;
  const layers = [{ ...twill!, count: 2 }, mat];
  assertSays(partAt(0.122, { layers }), "plausible", "below the 0.18 to 0.28");
  assertSays(partAt(0.121, { layers }), "doubtful", "very resin-rich");
  // Infused woven begins at 0.45: 0.67 of it would be 0.30, but a wet infusion is no riddle.
  assertSays(partAt(0.21, { process: "infused" }), "plausible", "below the 0.45 to 0.57");
});

Deno.test("the band of a mixture weighs each cloth by its fibre's volume", () => {
  const [twill] = partAt(0.3).layers;
  // Glass on a square metre: 3 × ½ × 0.2/2560 = 1.171875e-4, and 2 × 0.45/2500 = 3.6e-4 m³. Woven by
  // hand 0.30 to 0.45, mat 0.13 to 0.20.
  const layers = [
    { ...twill!, count: 3, areaShare: 0.5 },
    {
      ...{ ...twill!, cloth: "mat", fibre: "glass", form: "mat", count: 2 } as const,
      arealWeight: exact(0.45),
      fibreDensity: exact(2500),
    },
  ];
  const [woven, mat] = [1.171875e-4, 3.6e-4];
  const { low, high } = weighPart(partAt(0.3, { layers })).usualBand;
  assertClose(low, (woven + mat) / (woven / 0.3 + mat / 0.13), { relative: 1e-12 });
  assertClose(high, (woven + mat) / (woven / 0.45 + mat / 0.2), { relative: 1e-12 });
});

/** Standard uncertainty of the part's mass that gives its fibre fraction an expanded one, U. */
function massUncertainty(Vf: number, U: number): number {
  // Vf = V/(V + (m − mf)/ρ), so dVf/dm = −Vf²/(V ρ); and U = 2u.
  return U / 2 * VOLUME * RESIN / Vf ** 2;
}

/** The part again, with so much doubt of its mass that U of the fraction is as given. */
function vaguely(Vf: number, U: number): PartWeighing {
  const part = partAt(Vf);
  return { ...part, partMass: exact(part.partMass.value, massUncertainty(Vf, U)) };
}

Deno.test("what the uncertainty can excuse is no mistake", () => {
  const touching = Math.PI / 4;
  const over = 0.8 - touching;
  assertSays(vaguely(0.8, over * 0.99), "mistake", "fibres would touch");
  assertSays(vaguely(0.8, over * 1.01), "doubtful", "more than infusion");
  assertSays(vaguely(0.14, 0.0099), "mistake", "wettest hand lay-up");
  assertSays(vaguely(0.14, 0.0101), "doubtful", "very resin-rich");
  // The band of woven cloth by hand is 0.30 to 0.45.
  assertSays(vaguely(0.29, 0.0099), "plausible", "Resin-rich");
  assertSays(vaguely(0.29, 0.0101), "plausible", "Just below");
  assertSays(vaguely(0.46, 0.0099), "plausible", "Dry");
  assertSays(vaguely(0.46, 0.0101), "plausible", "Just above");
});

Deno.test("a ratio is vague from an expanded uncertainty of 30 % on", () => {
  // Only the mass is doubtful: u of the resin is u of the mass, and the cloth is exact.
  const part = partAt(0.4);
  const u = 0.15 * resinAt(0.4);
  const at = (share: number): PartWeighing => ({
    ...part,
    partMass: exact(part.partMass.value, share * u),
  });
  // R = 0.6 · 1150/(0.4 · 2560) = 0.674 ± 30.3 %: content R/(1 + R) of 0.470 and of 0.878.
  assertSays(at(1.01), "doubtful", "known only as 32 to 47 %, most of that from the part mass");
  assertEquals(weighPart(at(0.99)).verdict, "plausible");
});

Deno.test("resin below nothing is a mistake where the uncertainty does not reach up to it", () => {
  // 0.8 kg of cloth in a part of 0.75 kg: −50 g of resin.
  const short = (U: number): PartWeighing => ({ ...partAt(0.4), partMass: exact(0.75, U / 2) });
  assertSays(short(0.0499), "mistake", "leaves -50 g of resin");
  assertSays(short(0.0501), "doubtful", "leaves -50 ± 50 g of resin");
  const none = { ...partAt(0.4), partMass: exact(CLOTH, 0.01) };
  assertSays(none, "doubtful", "leaves 0 ± 20 g of resin");
});

Deno.test("the fractions are given as long as the laminate is more than half its fibre", () => {
  // Resin −m of 0.4 kg or −V of half the glass (0.15625 L × 1150 = 0.17969 kg) is the limit.
  const at = (resin: number): PartWeighing => ({
    ...partAt(0.4, { coreMass: exact(0.1), otherMass: exact(0.05), coreUptake: exact(0.08) }),
    partMass: exact(CLOTH + 0.1 + 0.05 + 0.08 + resin),
  });
  assertClose(weighPart(at(-0.179)).fibreMassFraction!.value, CLOTH / (CLOTH - 0.179), {
    relative: 1e-12,
  });
  assertEquals(weighPart(at(-0.181)).fibreMassFraction, null);
  // With glass as light as the resin the mass decides: −0.4 kg.
  const light = (resin: number): PartWeighing => ({
    ...at(resin),
    layers: at(resin).layers.map((layer) => ({ ...layer, fibreDensity: exact(1000) })),
  });
  assert(weighPart(light(-0.399)).fibreMassFraction !== null);
  assertEquals(weighPart(light(-0.401)).fibreMassFraction, null);
});

Deno.test("other mass is no resin, in the figures and in their uncertainty", () => {
  const part = weighPart(partAt(0.4, { otherMass: exact(0.3, 0.02) }));
  assertClose(part.resinMass.value, resinAt(0.4), { relative: 1e-12 });
  assertClose(part.laminateResin.value, resinAt(0.4), { relative: 1e-12 });
  assertClose(part.fibreVolumeFraction!.value, 0.4, { relative: 1e-12 });
  assertClose(part.resinMass.u, 0.02, { relative: 1e-8 });
});

Deno.test("masses of one scale go together in every term of the balance", () => {
  // Resin = part − core − other − (dry − trimmed). With u of 1, 2, 4, 8 and 16 g the errors of one
  // scale add to 1 − 2 − 4 − 8 + 16 = 3 g; apart to √341 g; half together to √(341/2 + 9/2) g.
  const weighing = partAt(0.4, {
    partMass: exact(3, 1e-3),
    coreMass: exact(0.4, 2e-3),
    otherMass: exact(0.1, 4e-3),
    dryClothMass: exact(0.9, 8e-3),
    trimmedClothMass: exact(0.1, 16e-3),
  });
  const u = (scaleCorrelation: number): number =>
    weighPart({ ...weighing, scaleCorrelation }).resinMass.u;
  assertClose(u(1), 3e-3, { relative: 1e-7 });
  assertClose(u(0.5), 1e-3 * Math.sqrt(175), { relative: 1e-7 });
  assertClose(u(0), 1e-3 * Math.sqrt(341), { relative: 1e-7 });
});

// Four twills of 200 g/m² on one square metre weigh 800 g, with 2.5 % of the roll 20 g u: 2 u is 40 g,
// half of a ply 100 g.
Deno.test("dry cloth that is not the schedule's is remarked, as so many layers", () => {
  const said = (dry: number, change: Partial<PartWeighing> = {}): readonly string[] => {
    const part = partAt(0.4, change);
    const mass = dry - (change.trimmedClothMass?.value ?? 0);
    const resin = RESIN * mass / FIBRE * 1.5;
    const dryClothMass = exact(dry, 0.001);
    return weighPart({ ...part, partMass: exact(mass + resin), dryClothMass }).notes;
  };
  assertEquals([said(0.8), said(0.899), said(0.701)], [[], [], []]);
  assertEquals(said(0.901), [
    "The dry cloth weighed 901 g, more than the 800 g of the schedule: as one layer more would. " +
    "A layer too many, or offcuts on the scale?",
  ]);
  // A quarter more, one ply too many: it went unseen.
  assert(said(1)[0]!.includes("as one layer more would"));
  assert(said(1.2)[0]!.includes("as 2 layers more would"));
  assert(said(0.6)[0]!.includes("as one layer fewer would. Is a layer missing?"));
  // What was trimmed off is not in the part; a rough roll or area hides a ply.
  assertEquals(said(1, { trimmedClothMass: exact(0.2) }), []);
  assertEquals(said(1, { area: exact(1, 0.13) }).some((note) => note.includes("dry cloth")), false);
});
