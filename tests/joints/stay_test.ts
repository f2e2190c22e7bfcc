import { assertEquals, assertThrows } from "@std/assert";
import { assertClose } from "../close.ts";
import { InputError } from "../../lib/check/mod.ts";
import {
  dropImpact,
  opposedStays,
  saggingStiffness,
  slackOnImpact,
  type Stay,
  stayChain,
  stayedPanel,
  stayStiffness,
} from "../../lib/joints/mod.ts";

const stay: Stay = {
  area: 4.9e-6,
  modulus: 110e9,
  length: 2.35,
  angleDeg: 37,
  fittingStiffness: [2e6, 1.5e6],
};

// Python's mpmath.
Deno.test("stiffness of a stay with two fittings, along and of its end", () => {
  const found = stayStiffness(stay);
  assertClose(
    [found.wire, found.axial, found.horizontal, found.vertical],
    [229361.702127659574, 180943.322329771163, 115409.030624746136, 65534.2917050250275],
    { relative: 1e-13 },
  );
});

Deno.test("a slack wire is softer by its sag", () => {
  const sag = { weightPerLength: 0.39, tension: 20 };
  assertClose(saggingStiffness(stay, sag), 53644.3108296574638, { relative: 1e-13 });
  const bare = { ...stay, fittingStiffness: [] };
  assertClose(saggingStiffness(bare, sag), 57225.7884783639836, { relative: 1e-13 });
});

Deno.test("two opposed stays: taut, at slack, beyond", () => {
  const stays = { stiffness1: 3e5, stiffness2: 1e5, preload: 100 };
  const taut = opposedStays(stays, 200);
  assertEquals([taut.slack, taut.share, taut.slackLoad], [false, 0.75, 400]);
  assertClose([taut.tension1, taut.tension2, taut.displacement], [250, 50, 0.0005], {
    relative: 1e-14,
  });
  const slack = opposedStays(stays, 700);
  assertEquals([slack.slack, slack.tension1, slack.tension2], [true, 700, 0]);
  // 100/1e5 + 300/3e5 = 2 mm
  assertClose(slack.displacement, 0.002, { relative: 1e-14 });
  assertEquals(opposedStays({ ...stays, preload: 0 }, 0).slack, true);
});

Deno.test("a panel and its stay share a load until the stay goes slack", () => {
  const panel = { panelStiffness: 1e5, stayStiffness: 5e4, preload: 100 };
  const tightened = stayedPanel(panel, 600);
  assertClose(
    [tightened.stayForce, tightened.panelForce, tightened.displacement],
    [300, 400, 0.004],
    { relative: 1e-13 },
  );
  assertClose(tightened.slackLoad, -300, { relative: 1e-14 });
  const slackened = stayedPanel(panel, -500);
  // The panel loses the 100 N of preload: −400 N on 1e5 N/m.
  assertClose([slackened.stayForce, slackened.panelForce], [0, -400], { relative: 1e-14 });
  assertClose(slackened.displacement, -0.004, { relative: 1e-14 });
});

Deno.test("a dropped weight, and the preload that keeps the stay taut", () => {
  // √(1 + 2 × 0.05 × 90000/800) = 3.5
  const impact = dropImpact({ weight: 800, dropHeight: 0.05, stiffness: 9e4 });
  assertClose(impact.factor, 4.5, { relative: 1e-14 });
  assertClose(impact.peakForce, 3600, { relative: 1e-14 });
  assertClose(impact.peakDeflection, 0.04, { relative: 1e-14 });
  assertClose(impact.rebound, 2.5 * 800 / 9e4, { relative: 1e-14 });
  const panel = { panelStiffness: 6e4, stayStiffness: 3e4, preload: 700 };
  const drop = { weight: 800, dropHeight: 0.05, direction: "tightens" } as const;
  const rebounding = slackOnImpact(panel, drop);
  assertClose(rebounding.preloadNeeded, 3e4 * 2.5 * 800 / 9e4, { relative: 1e-14 });
  assertEquals([rebounding.verdict, rebounding.notes.length], ["holds", 0]);
  const slackening = slackOnImpact(panel, { ...drop, direction: "slackens" });
  assertClose(slackening.preloadNeeded, 1200, { relative: 1e-14 });
  assertEquals([slackening.verdict, slackening.notes.length], ["fails", 1]);
});

Deno.test("a weight let go in touch doubles and does not rebound", () => {
  const impact = dropImpact({ weight: 800, dropHeight: 0, stiffness: 9e4 });
  assertEquals([impact.factor, impact.rebound], [2, 0]);
});

Deno.test("a chain is as good as its weakest link as fitted", () => {
  const links = [
    { name: "wire", breakingLoad: 7000, efficiency: 0.9 },
    { name: "clamped loop", breakingLoad: 7000, efficiency: 0.6 },
    { name: "shackle", breakingLoad: 9000, efficiency: 1 },
  ];
  const chain = stayChain(links, 1000, { loadFactor: 3, fittingFactor: 1.15 });
  assertEquals(chain.links.map(({ name }) => name), ["clamped loop", "wire", "shackle"]);
  assertClose(chain.designTension, 3450, { relative: 1e-14 });
  assertClose(chain.links[0]!.reserve, 4200 / 3450, { relative: 1e-14 });
  assertEquals(chain.verdict, "holds");
  assertEquals(stayChain(links, 2000, { loadFactor: 3 }).verdict, "fails");
  assertEquals(chain.inspection.length > 3, true);
});

Deno.test("stays refuse what cannot be", () => {
  assertThrows(() => stayStiffness({ ...stay, area: 0 }), InputError, "area is 0 m²");
  assertThrows(() => stayStiffness({ ...stay, angleDeg: 100 }), InputError, "between -90 and 90");
  assertThrows(
    () => stayStiffness({ ...stay, fittingStiffness: [0] }),
    InputError,
    "stiffness of a fitting is 0 N/m",
  );
  assertThrows(
    () => saggingStiffness(stay, { weightPerLength: 1, tension: 0 }),
    InputError,
    "tension is 0 N",
  );
  assertThrows(
    () => opposedStays({ stiffness1: 1, stiffness2: 1, preload: -1 }, 1),
    InputError,
    "preload is -1 N",
  );
  assertThrows(() => stayedPanel(undefined as never, 1), InputError, "panel is missing");
  assertThrows(
    () =>
      slackOnImpact(
        { panelStiffness: 1, stayStiffness: 1, preload: 1 },
        { weight: 1, dropHeight: 0, direction: "up" as never },
      ),
    InputError,
    "must be one of: tightens, slackens",
  );
  assertThrows(() => stayChain([], 1, { loadFactor: 1 }), InputError, "links is a list of 0");
});
