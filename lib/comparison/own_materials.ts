import { checksFor, type Fields } from "../check/mod.ts";
import type { Core, Fibre, Range, Reinforcement } from "../materials/mod.ts";
import { stiffnessFactorOf } from "../micromechanics/mod.ts";
import { catalogueText, type ReinforcementLayer } from "../records/mod.ts";
import { checkFigures, checkLayup } from "./_layup_checks.ts";
import { INTERVAL, UNCERTAIN } from "./_shape.ts";
import { rangeOf } from "./_spread.ts";
import { asLaid, coreShearModulusInput, fibreModulusInput } from "./input_names.ts";
import type { LearnedCloth, LearnedFromRecords } from "./learn_from_records.ts";
import type { LearnedModulus } from "./learn_materials.ts";

const check = checksFor("write the crew's own materials");

/** Who the rows are of. */
export interface OwnMaterialsOptions {
  /** Name of the crew, for the source text; "own" if left out. */
  readonly crew?: string;
}

const LEARNED: Fields = {
  layup: "object",
  moduli: [{ input: "text", kind: "text", next: { ...INTERVAL, value: "positive" } }],
  cloths: [{
    cloth: {
      ...{ name: "text", fibre: "text", form: "text", weave: "text", source: "text" },
      typical: "object",
    },
    arealWeight: [null, { after: UNCERTAIN, parts: ["text"] }],
    fibreFraction: [null, { pooled: { next: INTERVAL } }],
  }],
  beams: [{ part: "text", tests: ["object"] }],
  days: [null, { from: "text", to: "text" }],
};

/**
 * A crew's own rows of the materials catalogue, with ranges and the evidence as source: the files of
 * a part folder's `materials/`, which the next run reads in place of the catalogue's rows.
 *
 * The fibre of each cloth gets a row of its own, named "… as laid": it carries fibre modulus and
 * crimp together, which no bending test tells apart, so the cloth's `stiffnessKept` stands without a
 * range. Areal weight and fibre fraction stand in the cloth's row, the shear moduli in the core's.
 *
 * Formula: ranges value ± √3 u of the next part's value, from which predictions read u again
 *
 * Range: each row stands by itself: that errors of two rows go against each other is lost, so the
 * next prediction is a little wider than it could be. The rows hold for these rolls and sheets; a
 * new roll is weighed, a new sheet too.
 *
 * Source: JCGM 100:2008, 4.3.7.
 *
 * @param learned What the records teach, from `learnFromRecords`.
 * @param options Name of the crew.
 * @returns CSV text by file name: "fibres.csv", "reinforcements.csv", "cores.csv".
 * @throws {InputError} If nothing was learned.
 *
 * @example
 * ```ts
 * import { learnFromRecords, ownMaterialFiles } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const { weighings, loadTests } = await readPart("data/sole-panels");
 * const learned = learnFromRecords({ weighings: weighings!, loadTests: loadTests! });
 * const files = ownMaterialFiles(learned);
 * assertEquals([...files.keys()], ["fibres.csv", "reinforcements.csv", "cores.csv"]);
 * ```
 */
export function ownMaterialFiles(
  learned: LearnedFromRecords,
  options: OwnMaterialsOptions = {},
): ReadonlyMap<string, string> {
  check.shape("learned", learned, LEARNED);
  checkLayup(check, learned.layup);
  learned.cloths.forEach(({ cloth }, i) => checkFigures(check, cloth, `cloth ${i + 1}`));
  const { crew = "own" } = check.object("options", options);
  check.text("crew", crew);
  const { layup, moduli, cloths } = learned;
  const evidence = evidenceOf(learned, crew);
  const byInput = new Map(moduli.map((modulus) => [modulus.input, modulus]));
  const plies = layup.layers.filter((layer) => layer.kind === "reinforcement");
  const fibres = new Map(plies.map(({ fibre }) => [fibre.name, fibre]));
  const cores = new Map(
    layup.layers.flatMap((layer) => layer.kind === "core" ? [[layer.core.name, layer.core]] : []),
  );
  const fibreRows = [...fibres.values()].flatMap((fibre) => {
    const modulus = byInput.get(fibreModulusInput(fibre));
    return modulus === undefined ? [] : [ownFibre(fibre, modulus, evidence)];
  });
  const laid = new Set(fibreRows.map(({ name }) => name));
  const clothRows = cloths.map((cloth) =>
    ownCloth(cloth, { plies, evidence, fibreIsOwn: (name) => laid.has(asLaid(name)) })
  );
  const coreRows = [...cores.values()].flatMap((core) => {
    const modulus = byInput.get(coreShearModulusInput(core));
    return modulus === undefined ? [] : [ownCore(core, modulus, evidence)];
  });
  const files = new Map<string, string>();
  if (fibreRows.length > 0) files.set("fibres.csv", catalogueText("fibres", fibreRows));
  if (clothRows.length > 0) {
    files.set("reinforcements.csv", catalogueText("reinforcements", clothRows));
  }
  if (coreRows.length > 0) files.set("cores.csv", catalogueText("cores", coreRows));
  check.list("rows learned", [...files], 1);
  return files;
}

/** What the figures rest on, as the source of a row. */
function evidenceOf({ beams, days, cloths }: LearnedFromRecords, crew: string): string {
  const tests = beams.reduce((sum, { tests }) => sum + tests.length, 0);
  const dry = new Set(cloths.flatMap(({ arealWeight }) => arealWeight?.parts ?? [])).size;
  const when = days === null ? "" : `; ${days.from} to ${days.to}`;
  return `${crew} tests: ${tests} bending tests of ${beams.map(({ part }) => part).join(", ")}` +
    `${dry > 0 ? `; cloth of ${dry} parts weighed dry` : ""}${when}; beforehand: the catalogue`;
}

/** The modulus replaced and, of an isotropic fibre, what goes with it; ranges of those dropped. */
function ownFibre(fibre: Fibre, { next }: LearnedModulus, evidence: string): Fibre {
  const isotropic = fibre.E1 === fibre.E2;
  const ratio = next.value / fibre.E1;
  const { E1: _, E2: _2, G12: _3, G23: _4, ...kept } = fibre.typical;
  const across = isotropic
    ? { E2: next.value, G12: ratio * fibre.G12, G23: ratio * fibre.G23 }
    : {};
  return {
    ...fibre,
    ...across,
    name: asLaid(fibre.name),
    E1: next.value,
    typical: {
      ...kept,
      E1: rangeOf(next),
      ...(isotropic ? {} : defined({ E2: fibre.typical.E2, G12: fibre.typical.G12 })),
    },
    source: `${evidence}. Modulus with crimp counted in; other figures: ${fibre.source}`,
  };
}

function defined(ranges: Readonly<Record<string, Range | undefined>>): Record<string, Range> {
  return Object.fromEntries(
    Object.entries(ranges).flatMap(([name, range]) => range === undefined ? [] : [[name, range]]),
  );
}

function ownCloth(
  { cloth, arealWeight, fibreFraction }: LearnedCloth,
  { plies, evidence, fibreIsOwn }: {
    readonly plies: readonly ReinforcementLayer[];
    readonly evidence: string;
    readonly fibreIsOwn: (name: string) => boolean;
  },
): Reinforcement {
  const own = fibreIsOwn(cloth.fibre);
  const { reinforcement } = plies.find((ply) => ply.reinforcement.name === cloth.name) ??
    check.refuse("cloth", cloth.name, "must be in the lay-up");
  const { stiffnessKept: _, ...typical } = cloth.typical;
  const next = fibreFraction?.pooled.next;
  return {
    ...cloth,
    arealWeight: reinforcement.arealWeight,
    fibreFraction: next?.value ?? cloth.fibreFraction,
    ...(own
      ? { fibre: asLaid(cloth.fibre), stiffnessKept: stiffnessFactorOf({ reinforcement: cloth }) }
      : {}),
    typical: {
      ...typical,
      ...(arealWeight === null ? {} : { arealWeight: rangeOf(arealWeight.after) }),
      ...(next === undefined ? {} : { fibreFraction: inside(rangeOf(next)) }),
    },
    source: `${evidence}. ${
      own ? "Crimp as in the catalogue, its range counted with the fibre; other" : "Other"
    } figures: ${cloth.source}`,
  };
}

/** A range of fibre fractions cut to what a table may hold. */
function inside({ low, high }: Range): Range {
  return { low: Math.max(0.01, low), high: Math.min(0.9, high) };
}

function ownCore(core: Core, { next }: LearnedModulus, evidence: string): Core {
  const ratio = next.value / core.shearModulusL;
  const range = rangeOf(next);
  const across = core.shearModulusW / core.shearModulusL;
  return {
    ...core,
    shearModulusL: next.value,
    shearModulusW: ratio * core.shearModulusW,
    typical: {
      ...core.typical,
      shearModulusL: range,
      shearModulusW: { low: across * range.low, high: across * range.high },
    },
    source: `${evidence}. Shear moduli; other figures: ${core.source}`,
  };
}
