import type { LayerRecord } from "../records/mod.ts";
import type { GroupedEvidence, PooledPrior, Uncertain } from "../statistics/mod.ts";
import { coreNames, plyNames } from "./_layer_inputs.ts";
import type { BeamEvidence } from "./beam_evidence.ts";
import { predictBending } from "./predicted_bending.ts";

/** How much is thought to differ from part to part, and how well the gauge is known. */
export interface Thought {
  readonly faceSpread: number;
  readonly coreSpread: number;
  readonly uScale: number;
}

/** One thing that is learned: a fibre as laid, or a core. */
export interface Subject {
  /** Name of its input in predictions. */
  readonly input: string;
  readonly kind: "fibre" | "core";
  /** As thought beforehand; a fibre's crimp is counted in its u [Pa]. */
  readonly before: Uncertain;
}

/** The beams as groups that a formula predicts. */
export interface LearnedModel {
  readonly subjects: readonly Subject[];
  readonly evidence: GroupedEvidence;
}

/** Gauge and weights of all tests together: a share of every slope. */
const SCALE = "gauge and weights";
/** How far the core of another sheet may be from that of the schedule, as a logarithm [1]. */
const ANOTHER_CORE = 0.6;

type Values = Readonly<Record<string, number>>;

/**
 * Logarithms of fibre modulus and core shear modulus over what the catalogue has are pooled over
 * parts; areal weights, resins and the gauge are common; fibre fraction, thickness, width and spans
 * are each part's own. What crimp keeps of the modulus acts exactly as the modulus does, so it stays
 * at its value and its uncertainty counts with the modulus.
 */
export function learnedModel(beams: readonly BeamEvidence[], thought: Thought): LearnedModel {
  const subjects = new Map<string, Subject>();
  const common: Record<string, Uncertain> = { [SCALE]: { value: 0, u: thought.uScale } };
  const groups = beams.map((evidence) => {
    const { inputs, predict, compliances } = predictBending(evidence.beam);
    const roles = rolesOf(evidence.beam.layup.layers);
    const middles: Record<string, number> = {};
    const own: Record<string, Uncertain> = {};
    for (const [name, { value, u }] of Object.entries(inputs)) {
      middles[name] = value;
      const crimp = roles.crimpOf.get(name);
      if (crimp !== undefined || roles.cores.has(name)) {
        const bent = crimp === undefined ? { value: 1, u: 0 } : inputs[crimp]!;
        const share = Math.hypot(u / value, bent.u / bent.value);
        const kind = crimp === undefined ? "core" : "fibre";
        if (kind === "core" && evidence.otherCore !== null) {
          own[anotherCore(name)] = { value: 0, u: ANOTHER_CORE };
        } else if (share > 0) {
          subjects.set(name, { input: name, kind, before: { value, u: share * value } });
        }
      } else if (roles.crimps.has(name) || u === 0) continue;
      else if (roles.common.has(name)) common[name] = { value, u };
      else own[name] = { value, u };
    }
    const expected = compliances.map(({ value }) => value);
    return {
      name: evidence.part,
      own,
      observed: Object.fromEntries(
        evidence.measured.map(({ value, u }, i) => [
          evidence.tests[i]!.test,
          { value: value / expected[i]!, u: u / expected[i]! },
        ]),
      ),
      predict: (parameters: Values): Values => {
        const values = { ...middles };
        for (const name of Object.keys(middles)) {
          const factor = parameters[anotherCore(name)] ??
            (subjects.has(name) ? parameters[name] : undefined);
          if (factor !== undefined) values[name] = middles[name]! * Math.exp(factor);
          else if (parameters[name] !== undefined) values[name] = parameters[name];
        }
        const scale = 1 + parameters[SCALE]!;
        return Object.fromEntries(
          predict(values).map((compliance, i) => [
            evidence.tests[i]!.test,
            scale * compliance / expected[i]!,
          ]),
        );
      },
    };
  });
  const pooled = Object.fromEntries(
    [...subjects.values()].map(({ input, kind, before }): [string, PooledPrior] => [input, {
      value: 0,
      u: before.u / before.value,
      spread: kind === "fibre" ? thought.faceSpread : thought.coreSpread,
    }]),
  );
  return { subjects: [...subjects.values()], evidence: { pooled, common, groups } };
}

/** Name of the own parameter of a part whose core is another. */
export function anotherCore(input: string): string {
  return `${input}, of this part's sheet`;
}

interface Roles {
  /** The crimp that goes with each fibre's modulus; the first cloth's, where a fibre has several. */
  readonly crimpOf: ReadonlyMap<string, string>;
  readonly crimps: ReadonlySet<string>;
  readonly cores: ReadonlySet<string>;
  readonly common: ReadonlySet<string>;
}

function rolesOf(layers: readonly LayerRecord[]): Roles {
  const crimpOf = new Map<string, string>();
  const [crimps, cores, common] = [new Set<string>(), new Set<string>(), new Set<string>()];
  for (const layer of layers) {
    if (layer.kind === "core") {
      cores.add(coreNames(layer).shearModulus);
      continue;
    }
    const { crimp, fibreModulus, resinModulus, arealWeight } = plyNames(layer);
    if (!crimpOf.has(fibreModulus)) crimpOf.set(fibreModulus, crimp);
    crimps.add(crimp);
    common.add(resinModulus).add(arealWeight);
  }
  return { crimpOf, crimps, cores, common };
}
