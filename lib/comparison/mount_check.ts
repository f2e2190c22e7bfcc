import { checksFor } from "../check/mod.ts";
import {
  boltedReserve,
  type BoltedStrengths,
  type BoltRow,
  type BuildUp,
  buildUpPlies,
  designLoad,
  type HoleGuidance,
  holeGuidance,
  smallestWasher,
  type Verdict,
} from "../joints/mod.ts";
import type { LaminaStrengths, Ply } from "../materials/mod.ts";
import type { CoreLayer, MountRecord } from "../records/mod.ts";
import { crushStrength, pulledModes } from "./_pulled_modes.ts";
import { layupStack } from "./layup_inputs.ts";

const check = checksFor("check the mount");

/** Plies added on a side beyond which nobody means them. */
const MOST_ADDED = 1000;

/** One way in which a mount can give. */
export interface MountMode {
  /** What gives. */
  readonly what:
    | "bearing"
    | "net tension"
    | "shear-out"
    | "pull-through"
    | "core under the washer"
    | "core around the plug";
  /** Load with its factors: on the row, or the pull on one bolt [N]. */
  readonly demand: number;
  /** Load at which it gives [N]. */
  readonly capacity: number;
  /** Capacity over demand [1]. */
  readonly reserve: number;
  /** The same with the weakest core of the catalogue's range, where a core takes part [1]. */
  readonly leastReserve: number;
}

/** Whether a mount holds. */
export interface MountCheck {
  /** The mount. */
  readonly mount: MountRecord;
  /** Plies on both sides together, those added included [1]. */
  readonly plies: number;
  /** Thickness that carries [m]. */
  readonly thickness: number;
  /** Strengths that it rests on [Pa]. */
  readonly strengths: BoltedStrengths;
  /** Each way to give, the least reserve first. */
  readonly modes: readonly MountMode[];
  /** Holds where each reserve is 1 or above, with the weakest core too; else not known or fails. */
  readonly verdict: Verdict;
  /** Plies that the bolts ask for. */
  readonly buildUp: BuildUp;
  /** Whether edge, side and hole keep what is advised. */
  readonly guidance: readonly HoleGuidance[];
  /** Smallest washer under which the weakest core of its kind holds; none without pull, core [m]. */
  readonly leastWasher?: number;
  /** What is doubtful about it. */
  readonly notes: readonly string[];
}

/** What a hole leaves of the tensile strength across it: an estimate, no source [1]. */
export const HOLE_FACTOR = 0.5;

/**
 * Whether a row of bolts through a sandwich holds, each way to give by itself.
 *
 * Formula: strengths as the thickness-weighted mean over the plies: bearing that in compression,
 * net tension half of that in tension, shear-out and pull-through that in shear; shear-out by the
 * length from the rim of the hole; the rest as in `joints`; the core once with its usual strength
 * and once with the least of the catalogue's range
 *
 * Range: load along x, both skins loaded alike (a plug or spacer between them); a ply neither along
 * nor across the load counts with the lower of its two strengths. Each plug counts by itself: plugs
 * nearer to each other than their own diameter share the core between them and hold less.
 *
 * Source: `boltStresses`, `pullThroughForce`, `washerPressure`, `pottedInsert`; strengths are
 * estimates from the catalogue: own coupons with a bolt in them count for more. Where a person
 * depends on the mount, a qualified person judges it and it is proof-loaded.
 *
 * @param mount The mount, its lay-up filled in.
 * @returns Reserves [1], verdict, plies that it needs and guidance.
 * @throws {InputError} If the lay-up has no ply or a ply has no strengths.
 *
 * @example
 * ```ts
 * import { checkMount } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const { mounts } = await readPart("data/sole-panels");
 * assertEquals(mounts!.map((mount) => checkMount(mount).verdict), [
 *   "not known", // its plug tears out of the weakest foam of its kind
 *   "fails",
 * ]);
 * ```
 */
export function checkMount(mount: MountRecord): MountCheck {
  check.object("mount", mount);
  check.list("layers", check.object("lay-up", mount.layup).layers);
  check.count("added plies", mount.addedPlies);
  check.within("added plies", mount.addedPlies, { min: 0, max: MOST_ADDED });
  const laid = layupStack(mount.layup);
  const skins = mount.layup.layers.flatMap((layer, i) =>
    layer.kind === "reinforcement" ? [laid[i]!] : []
  );
  const added = [skins[0]!, skins.at(-1)!].flatMap((ply) =>
    Array.from({ length: mount.addedPlies }, (): Ply => ({ ...ply, angleDeg: 0 }))
  );
  const plies = [...skins, ...added];
  const thickness = plies.reduce((sum, ply) => sum + ply.thickness, 0);
  const strengths: BoltedStrengths = {
    bearing: mean(plies, ({ Xc, Yc }) => [Xc, Yc]),
    netTension: HOLE_FACTOR * mean(plies, ({ Xt, Yt }) => [Xt, Yt]),
    shearOut: mean(plies, ({ S }) => [S, S]),
  };
  const factors = { loadFactor: mount.loadFactor, fittingFactor: mount.fittingFactor };
  const row: BoltRow = {
    load: designLoad(mount.load, factors),
    boltCount: mount.bolts,
    ...{ boltDiameter: mount.boltDiameter, holeDiameter: mount.holeDiameter },
    ...{ thickness, width: mount.width, edgeDistance: mount.edgeDistance },
  };
  const pull = mount.pull === undefined ? undefined : designLoad(mount.pull, factors);
  const cores = mount.layup.layers.filter((layer) => layer.kind === "core");
  const modes = [
    ...alongModes(row, strengths),
    ...(pull === undefined ? [] : pulledModes(mount, {
      pull,
      cores,
      // One skin, the thinner: the pull may come from either side.
      faceThickness: thinnerFace(mount, laid),
      shear: strengths.shearOut,
    })),
  ].toSorted((a, b) => a.leastReserve - b.leastReserve);
  const buildUp = buildUpPlies({
    ...row,
    strengths,
    plyThickness: thickness / plies.length,
    pliesThere: plies.length,
    place: mount.place,
    plyArealWeight: clothWeight(mount) / plies.length,
  });
  return {
    mount,
    plies: plies.length,
    thickness,
    strengths,
    modes,
    verdict: verdictOf(modes),
    buildUp,
    guidance: holeGuidance({
      material: "laminate",
      ...{ holeDiameter: mount.holeDiameter, thickness, edgeDistance: mount.edgeDistance },
      // Bolts spread evenly over the width.
      sideDistance: mount.width / (2 * mount.bolts),
      ...(mount.bolts > 1 ? { pitch: mount.width / mount.bolts } : {}),
    }),
    ...(pull === undefined || cores.length === 0 ? {} : {
      leastWasher: smallestWasher({
        holeDiameter: mount.holeDiameter,
        force: pull,
        coreStrength: crushStrength(cores).least,
      }),
    }),
    notes: notesOf(mount, { modes, cores, buildUp }),
  };
}

/** Strength along the load, mean over the plies by thickness [Pa]. */
function mean(
  plies: readonly Ply[],
  of: (strengths: LaminaStrengths) => readonly [along: number, across: number],
): number {
  let [sum, thickness] = [0, 0];
  for (const ply of plies) {
    const { strengths } = ply.lamina;
    if (strengths === undefined) {
      return check.refuse("strengths", strengths, `must be known for ${ply.lamina.name}`);
    }
    const [along, across] = of(strengths);
    const turned = Math.abs(ply.angleDeg) % 180;
    const own = turned === 0 ? along : turned === 90 ? across : Math.min(along, across);
    sum += own * ply.thickness;
    thickness += ply.thickness;
  }
  return check.result("mean strength", sum / thickness, "Pa");
}

function alongModes(row: BoltRow, strengths: BoltedStrengths): readonly MountMode[] {
  const { reserves, shearOutFromRim } = boltedReserve(row, strengths);
  const mode = (what: MountMode["what"], reserve: number): MountMode => ({
    what,
    demand: row.load,
    capacity: reserve * row.load,
    reserve,
    leastReserve: reserve,
  });
  return [
    mode("bearing", reserves.bearing),
    mode("net tension", reserves.netTension),
    mode("shear-out", shearOutFromRim),
  ];
}

function verdictOf(modes: readonly MountMode[]): Verdict {
  if (modes.some(({ reserve }) => reserve < 1)) return "fails";
  return modes.some(({ leastReserve }) => leastReserve < 1) ? "not known" : "holds";
}

/** Cloth of all plies, those added included [kg/m²]. */
function clothWeight({ layup, addedPlies }: MountRecord): number {
  const weights = layup.layers.flatMap((layer) =>
    layer.kind === "reinforcement" ? [layer.reinforcement.arealWeight] : []
  );
  const laid = weights.reduce((sum, weight) => sum + weight, 0);
  return laid + addedPlies * (weights[0]! + weights.at(-1)!);
}

/** Thickness of the thinner skin with its build-up; all plies where there is no core [m]. */
function thinnerFace({ layup, addedPlies }: MountRecord, laid: readonly Ply[]): number {
  const { layers } = layup;
  const first = layers.findIndex(({ kind }) => kind === "core");
  const sum = (plies: readonly Ply[]): number =>
    plies.reduce((total, ply) => total + ply.thickness, 0);
  if (first < 0) return sum(laid) + addedPlies * (laid[0]!.thickness + laid.at(-1)!.thickness);
  const last = layers.findLastIndex(({ kind }) => kind === "core");
  const faces = [laid.slice(0, first), laid.slice(last + 1).toReversed()];
  return Math.min(
    ...faces.filter((face) => face.length > 0)
      .map((face) => sum(face) + addedPlies * face[0]!.thickness),
  );
}

function notesOf(
  mount: MountRecord,
  { modes, cores, buildUp }: {
    readonly modes: readonly MountMode[];
    readonly cores: readonly CoreLayer[];
    readonly buildUp: BuildUp;
  },
): readonly string[] {
  const first = modes[0]!;
  return [
    ...(first.reserve >= 1 && first.leastReserve < 1
      ? [
        `${mount.mount}: ${first.what} holds with a usual core, reserve ` +
        `${first.reserve.toFixed(2)}, but not with the weakest of its kind, ` +
        `${first.leastReserve.toFixed(2)}: look at the core's own sheet, or make more of it.`,
      ]
      : []),
    ...(first.reserve >= 1 && first.what !== "bearing"
      ? [`${mount.mount}: ${first.what} gives first, without the warning that bearing gives.`]
      : []),
    ...(cores.length > 0 && mount.pottingDiameter === undefined
      ? [`${mount.mount}: no plug in the core; a bolt drawn tight crushes it.`]
      : []),
    ...buildUp.notes.map((note) => `${mount.mount}: ${note}`),
  ];
}
