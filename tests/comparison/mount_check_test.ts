import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { checkMount, layupStack, type MountMode } from "../../lib/comparison/mod.ts";
import { type MountRecord, readPart } from "../../lib/records/mod.ts";
import { assertClose } from "../close.ts";

const { mounts, layups } = await readPart("data/sole-panels");
const [foot, eye] = mounts as [MountRecord, MountRecord];
const mode = (mount: MountRecord, what: MountMode["what"]): MountMode =>
  checkMount(mount).modes.find((one) => one.what === what)!;
const ply = layupStack(foot.layup)[0]!;
const { Xc, Xt, S } = ply.lamina.strengths!;

Deno.test("each way to give is load over strength by hand, factors included", () => {
  // Four plies of the schedule and five a side more; two bolts of 6 mm in 6.2 mm holes.
  const t = 14 * ply.thickness;
  const load = 900 * 3 * 1.15;
  assertClose(mode(foot, "bearing").reserve, Xc * 2 * 0.006 * t / load, { relative: 1e-12 });
  assertClose(mode(foot, "net tension").capacity, Xt / 2 * (0.08 - 0.0124) * t, {
    relative: 1e-12,
  });
  assertClose(mode(foot, "shear-out").capacity, S * 2 * 2 * (0.025 - 0.0031) * t, {
    relative: 1e-12,
  });
  // One skin of seven plies under a washer of 24 mm; the plug of 30 mm in 10 mm of foam of 1.1 MPa.
  const through = Math.PI * 0.024 * 7 * ply.thickness * S;
  assertClose(mode(foot, "pull-through").capacity, through, { relative: 1e-12 });
  const plug = Math.PI * 0.03 * 0.01 * 1.1e6;
  assertClose(mode(foot, "core around the plug").capacity, plug, { relative: 1e-12 });
  assertClose(mode(foot, "core around the plug").demand, 250 * 3 * 1.15, { relative: 1e-14 });
  // Without plug the core under the washer: 1.3 MPa on the ring of 18 mm over 6.2 mm.
  const ring = 1.3e6 * Math.PI / 4 * (0.018 ** 2 - 0.0062 ** 2);
  assertClose(mode(eye, "core under the washer").capacity, ring, { relative: 1e-12 });
});

Deno.test("the weakest decides, and what is doubtful is said", () => {
  const [good, bad] = [checkMount(foot), checkMount(eye)];
  assertEquals([good.verdict, good.modes[0]!.what], ["not known", "core around the plug"]);
  assertEquals([bad.verdict, bad.modes[0]!.what], ["fails", "core under the washer"]);
  for (const { modes } of [good, bad]) {
    assert(modes.every(({ reserve }, i) => i === 0 || modes[i - 1]!.reserve <= reserve));
  }
  assert(good.notes.some((note) => note.includes("without the warning")));
  assert(bad.notes.some((note) => note.includes("no plug")));
  assertEquals(bad.guidance.filter(({ kept }) => !kept).length, 4);
});

// By hand: π × 30 mm × 10 mm of foam of 1.1 MPa (0.88 at least) is 1036.7 N (829.4 N), against
// 250 N × 3 × 1.15 = 862.5 N: 1.202 and 0.9616. A plug of 35 mm: 1.1218 at least.
Deno.test("a plug that holds in the usual foam and not in the weakest is not known to hold", () => {
  const plug = mode(foot, "core around the plug");
  assertClose([plug.reserve, plug.leastReserve], [1.2020, 0.9616], { relative: 1e-4 });
  const { notes } = checkMount(foot);
  assert(notes.some((note) => note.includes("1.20, but not with the weakest of its kind, 0.96")));
  const larger = { ...foot, pottingDiameter: 0.035 };
  assertEquals(checkMount(larger).verdict, "holds");
  assertClose(mode(larger, "core around the plug").leastReserve, 1.1218, { relative: 1e-4 });
  // The washer for 862.5 N on foam of 1.04 MPa at least: √(6.2² + 4 × 862.5/(π × 1.04)) mm.
  assertClose(checkMount(foot).leastWasher!, 1e-3 * Math.sqrt(38.44 + 3450 / (1.04 * Math.PI)), {
    relative: 1e-12,
  });
  assertClose(
    mode(eye, "core under the washer").leastReserve,
    0.8 * mode(eye, "core under the washer").reserve,
    { relative: 1e-12 },
  );
});

// Fourteen plies of 200 g/m² are what is usual; of the same count of half the weight it is said.
Deno.test("a build-up of lighter cloth is compared by its weight", () => {
  const lighter = {
    ...foot.layup,
    layers: foot.layup.layers.map((layer) =>
      layer.kind === "core"
        ? layer
        : { ...layer, reinforcement: { ...layer.reinforcement, arealWeight: 0.1 } }
    ),
  };
  const fewer = (mount: MountRecord): boolean =>
    checkMount(mount).notes.some((note) => note.includes("are less than the 14 of 200 g/m²"));
  const light = { ...foot, load: 300, layup: lighter };
  assertEquals([fewer({ ...foot, load: 300 }), fewer(light)], [false, true]);
});

// A hole of 6.2 mm with its centre 8 mm from the edge: 4.9 mm from its rim decide, not 8.
Deno.test("near an edge the plies asked for are those that hold", () => {
  const near: MountRecord = { ...foot, edgeDistance: 0.008, pull: 1, addedPlies: 5 };
  const { buildUp } = checkMount(near);
  assertEquals(buildUp.mode, "shearOut");
  const t = 900 * 3 * 1.15 / (2 * 2 * 0.0049 * S);
  assertEquals(buildUp.plies, Math.ceil(t / ply.thickness));
});

Deno.test("the plies that the build-up asks for are just enough, one fewer is not", () => {
  const { buildUp, plies } = checkMount(eye);
  const along = (added: number): number =>
    Math.min(
      ...(["bearing", "net tension"] as const).map((what) =>
        mode({ ...eye, addedPlies: added }, what).reserve
      ),
    );
  // The schedule has four plies; added ones come in pairs, one a side.
  const pairs = Math.ceil((buildUp.plies - 4) / 2);
  assert(along(pairs) >= 1);
  assert(along(pairs - 1) < 1);
  assertEquals(plies, 8);
});

Deno.test("without pull only the bolts' own ways count; without core there is none to crush", () => {
  const { pull: _, ...along } = foot;
  const checked = checkMount(along);
  assertEquals(checked.modes.map(({ what }) => what), ["bearing", "shear-out", "net tension"]);
  assertEquals(checked.leastWasher, undefined);
  const solid = checkMount({ ...foot, layup: layups.get("coupon plate")! });
  assertEquals(solid.modes.some(({ what }) => what.startsWith("core")), false);
  // All fourteen plies are one skin.
  assertClose(
    solid.modes.find(({ what }) => what === "pull-through")!.capacity,
    Math.PI * 0.024 * 14 * ply.thickness * S,
    { relative: 1e-12 },
  );
});

Deno.test("a ply askew counts with the lower of its strengths, one across with that across", () => {
  const bracket = { ...foot, layup: layups.get("bracket")!, addedPlies: 0 };
  const stack = layupStack(bracket.layup);
  let [sum, thickness] = [0, 0];
  for (const { lamina, thickness: t, angleDeg } of stack) {
    const { Xc, Yc } = lamina.strengths!;
    sum += t * (angleDeg === 0 ? Xc : Math.min(Xc, Yc));
    thickness += t;
  }
  assertClose(checkMount(bracket).strengths.bearing, sum / thickness, { relative: 1e-12 });
});

Deno.test("a mount that cannot be meant is refused", () => {
  assertThrows(() => checkMount(undefined as never), InputError, "mount is missing");
  assertThrows(() => checkMount({ ...foot, addedPlies: 0.5 }), InputError, "added plies");
  assertThrows(() => checkMount({ ...foot, addedPlies: 1e9 }), InputError, "added plies");
  assertThrows(() => checkMount({ ...foot, loadFactor: 0.5 }), InputError, "loadFactor");
  assertThrows(() => checkMount({ ...foot, layup: { name: "x", layers: [] } }), InputError);
});
