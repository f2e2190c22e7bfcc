import { checksFor } from "../check/mod.ts";
import { filletPart, halfRingPart, slabPart, wallsPart } from "./section_parts.ts";
import {
  type PartMaterial,
  type SectionPart,
  type ShapedSection,
  transformedSection,
} from "./shaped_section.ts";

const check = checksFor("compute the stiffener");

/** A flat skin. */
export interface Skin extends PartMaterial {
  /** Thickness [m]. */
  readonly thickness: number;
}

/** A bar over a former, or a hat: plies laid over a strip on a skin. */
export interface BarOnSkin {
  /** Width of skin that bends along with the bar [m]. */
  readonly width: number;
  /** The skin under it. */
  readonly skin: Skin;
  /** The strip: core that stays in, or a mere former with E of 0. */
  readonly former: PartMaterial & {
    /** Width of its crown [m]. */
    readonly crownWidth: number;
    /** Height [m]. */
    readonly height: number;
    /** Angle of its sides from the skin [deg]. */
    readonly sideAngleDeg: number;
  };
  /** Plies over it. */
  readonly cover: Skin & {
    /** Width of the flange that they make on the skin, on each side [m]. */
    readonly flange: number;
  };
}

/**
 * Section of a stiffening bar (a strip of core under plies) or of a hat (the same on a former
 * without stiffness), with the skin that it stands on.
 *
 * Formula: `transformedSection` of skin, flanges, core, walls and crown
 *
 * Range: as `transformedSection`; plies thin against the height.
 *
 * Source: as `transformedSection`.
 *
 * @param bar Skin, strip, cover.
 * @returns The section; heights count from the skin's lower side [m].
 * @throws {InputError} If a size is not above 0, the sides lean less than 5°, or bar with flanges
 * is wider than the skin that counts.
 *
 * @example
 * ```ts
 * import { barOnSkin } from "@laminate/notebooks/sandwich";
 * import { assert } from "@std/assert";
 *
 * const glass = { E: 18e9, density: 1800 };
 * const bar = {
 *   width: 0.2,
 *   skin: { ...glass, thickness: 0.003 },
 *   former: { E: 60e6, density: 80, crownWidth: 0.03, height: 0.02, sideAngleDeg: 60 },
 *   cover: { ...glass, thickness: 0.001, flange: 0.025 },
 * };
 * const flat = 18e9 * 0.2 * 0.003 ** 3 / 12;
 * assert(barOnSkin(bar).flexuralRigidity > 30 * flat);
 * ```
 */
export function barOnSkin(bar: BarOnSkin): ShapedSection {
  check.object("bar", bar);
  const { width, skin, former, cover } = bar;
  for (const [name, value] of Object.entries({ skin, former, cover })) check.object(name, value);
  check.positive("width", width, "m");
  check.positive("height of the former", former.height, "m");
  check.positive("crown width of the former", former.crownWidth, "m");
  check.within("side angle of the former", former.sideAngleDeg, { min: 5, max: 90, unit: "°" });
  check.nonNegative("flange of the cover", cover.flange, "m");
  const top = check.positive("thickness of the skin", skin.thickness, "m");
  const t = check.positive("thickness of the cover", cover.thickness, "m");
  const h = former.height;
  const spread = former.sideAngleDeg === 90 ? 0 : h / Math.tan(former.sideAngleDeg * Math.PI / 180);
  const foot = former.crownWidth + 2 * spread + 2 * cover.flange;
  if (!(foot <= width)) {
    check.refuse("width", width, `must hold the bar with its flanges: ${foot} m or more`);
  }
  const walls = { thickness: t, angleDeg: former.sideAngleDeg, foot: top, crown: top + h };
  const parts: SectionPart[] = [
    slabPart("skin", skin, { width, bottom: 0, top }),
    slabPart("crown", cover, { width: former.crownWidth, bottom: top + h, top: top + h + t }),
    wallsPart("walls", cover, walls),
    trapezoid(former, { bottom: top, height: h, spread }),
  ];
  if (cover.flange > 0) {
    const flanges = { width: 2 * cover.flange, bottom: top, top: top + t };
    parts.push(slabPart("flanges", cover, flanges));
  }
  return transformedSection(parts);
}

/** The strip of core: wider at its foot by twice the spread of its sides. */
function trapezoid(
  former: BarOnSkin["former"],
  { bottom, height: h, spread }: {
    readonly bottom: number;
    readonly height: number;
    readonly spread: number;
  },
): SectionPart {
  const [a, b] = [former.crownWidth + 2 * spread, former.crownWidth];
  return {
    name: "core",
    E: former.E,
    density: former.density,
    area: (a + b) / 2 * h,
    height: bottom + h / 3 * (a + 2 * b) / (a + b),
    ownSecondMoment: h ** 3 * (a * a + 4 * a * b + b * b) / (36 * (a + b)),
    low: bottom,
    high: bottom + h,
  };
}

/** A skin with its edge turned up, or a panel on another at right angles. */
export interface FoldedEdge {
  /** Width of skin that bends along with the upstand [m]. */
  readonly width: number;
  /** The skin. */
  readonly skin: Skin;
  /** The upstand. */
  readonly upstand: Skin & {
    /** Height over the skin [m]. */
    readonly height: number;
  };
  /** A fillet of filler in the corner, on the side of the upstand; none if not given. */
  readonly fillet?: PartMaterial & {
    /** Radius [m]. */
    readonly radius: number;
  };
}

/**
 * Section of an angle: a skin with a turned-up edge, with or without a fillet of filler.
 *
 * Formula: `transformedSection` of skin, upstand and fillet
 *
 * Range: as `transformedSection`; upstand held upright by the part around it.
 *
 * Source: as `transformedSection`.
 *
 * @param edge Skin, upstand, fillet.
 * @returns The section; heights count from the skin's lower side [m].
 * @throws {InputError} If a size is not above 0 or the fillet is larger than upstand or skin.
 *
 * @example
 * ```ts
 * import { foldedEdge } from "@laminate/notebooks/sandwich";
 * import { assert } from "@std/assert";
 *
 * const skin = { E: 18e9, density: 1800, thickness: 0.003 };
 * const plain = foldedEdge({ width: 0.1, skin, upstand: { ...skin, height: 0.03 } });
 * assert(plain.flexuralRigidity > 18e9 * 0.003 * 0.03 ** 3 / 12);
 * ```
 */
export function foldedEdge(edge: FoldedEdge): ShapedSection {
  check.object("edge", edge);
  const { width, skin, upstand, fillet } = edge;
  check.object("skin", skin);
  check.object("upstand", upstand);
  const top = check.positive("thickness of the skin", skin.thickness, "m");
  const height = check.positive("height of the upstand", upstand.height, "m");
  const thickness = check.positive("thickness of the upstand", upstand.thickness, "m");
  check.positive("width", width, "m");
  const parts = [
    slabPart("skin", skin, { width, bottom: 0, top }),
    slabPart("upstand", upstand, { width: thickness, bottom: top, top: top + height }),
  ];
  if (fillet !== undefined) {
    check.object("fillet", fillet);
    const room = Math.min(height, width - thickness);
    if (!(fillet.radius <= room)) {
      check.refuse("radius of the fillet", fillet.radius, `must be ${room} m or less`);
    }
    parts.push(filletPart(fillet, fillet.radius, top));
  }
  return transformedSection(parts);
}

/** A half-round tunnel on a skin. */
export interface HalfRoundTunnel {
  /** Width of skin that bends along with the tunnel [m]. */
  readonly width: number;
  /** The skin under it. */
  readonly skin: Skin;
  /** The tunnel's wall. */
  readonly wall: Skin & {
    /** Radius to the middle of the wall [m]. */
    readonly radius: number;
  };
}

/**
 * Section of a half-round tunnel on a skin, bending along the tunnel.
 *
 * Formula: `transformedSection` of skin and half ring
 *
 * Range: as `transformedSection`; the tunnel keeps its shape: see `tunnelSquash`.
 *
 * Source: as `transformedSection`.
 *
 * @param tunnel Skin and wall.
 * @returns The section; heights count from the skin's lower side [m].
 * @throws {InputError} If a size is not above 0 or the tunnel is wider than the skin that counts.
 *
 * @example
 * ```ts
 * import { halfRoundTunnel } from "@laminate/notebooks/sandwich";
 * import { assert } from "@std/assert";
 *
 * const skin = { E: 18e9, density: 1800, thickness: 0.003 };
 * const tunnel = { width: 0.1, skin, wall: { ...skin, radius: 0.03 } };
 * assert(halfRoundTunnel(tunnel).flexuralRigidity > 0);
 * ```
 */
export function halfRoundTunnel(tunnel: HalfRoundTunnel): ShapedSection {
  check.object("tunnel", tunnel);
  const { width, skin, wall } = tunnel;
  check.object("skin", skin);
  check.object("wall", wall);
  const top = check.positive("thickness of the skin", skin.thickness, "m");
  const { radius, thickness } = wall;
  const ring = halfRingPart("wall", wall, { radius, thickness, feet: top });
  if (!(2 * radius + thickness <= width)) {
    check.refuse("width", width, `must hold the tunnel: ${2 * radius + thickness} m or more`);
  }
  return transformedSection([slabPart("skin", skin, { width, bottom: 0, top }), ring]);
}
