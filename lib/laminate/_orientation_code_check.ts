/** What an orientation code must keep to, whoever made it. */
import type { Checks } from "../check/mod.ts";
import type { GroupEntry, OrientationEntry } from "./orientation_code.ts";

/** Most plies that a code may stand for. */
export const MOST_PLIES = 1000;

/** Most brackets inside each other. */
export const DEEPEST = 20;

/** Refuses a code that was not taken apart by the reader and could not have been. */
export function checkEntry(check: Checks, entry: OrientationEntry, depth = 0): void {
  check.object("entry of the code", entry);
  check.oneOf("kind of an entry", entry.kind, ["ply", "cloth", "layer", "pair", "group"]);
  if (entry.kind !== "pair") check.count("number of copies", entry.count, 1);
  if (entry.kind === "group") {
    check.within("number of brackets inside each other", depth + 1, { min: 1, max: DEEPEST });
    check.list("list of entries", entry.entries);
    entry.entries.forEach((inner, index) => {
      checkEntry(check, inner, depth + 1);
      if (!("middle" in inner) || !inner.middle) return;
      const alone = entry.symmetric && entry.count === 1 && index === entry.entries.length - 1;
      if (!alone || inner.count !== 1) {
        check.refuse("middle ply", inner, "must be one ply, the last of a symmetric group");
      }
    });
    if (depth === 0) {
      check.within("number of plies", plyCount(entry), { min: 1, max: MOST_PLIES });
    }
  }
  if (entry.kind !== "group" && entry.kind !== "layer") checkCodeAngle(check, entry.angleDeg);
  if (entry.kind === "cloth") checkCodeAngle(check, entry.weftDeg);
  if (entry.kind === "layer" || "material" in entry) checkKey(check, entry.material!);
}

/** Refuses an angle that the code cannot write. */
export function checkCodeAngle(check: Checks, angleDeg: number): void {
  check.within("angle", angleDeg, { min: -90, max: 90, unit: "°" });
}

/** Refuses a material that the code cannot write. */
export function checkKey(check: Checks, key: string): void {
  if (typeof key !== "string" || !/^\p{L}[\p{L}\p{Nd}-]*$/u.test(key)) {
    check.refuse("material", key, "must be a key of letters, digits and hyphens");
  }
}

/** How many plies an entry stands for. */
export function plyCount(entry: OrientationEntry): number {
  if (entry.kind === "pair") return 2;
  if (entry.kind !== "group") return entry.count;
  const once = entry.entries.reduce((sum, inner) => sum + plyCount(inner), 0);
  const middle = endsInMiddle(entry) ? 1 : 0;
  return entry.symmetric ? 2 * entry.count * once - middle : entry.count * once;
}

/** Whether the last entry of a group is cut by the plane of symmetry. */
export function endsInMiddle({ entries }: GroupEntry): boolean {
  const last = entries.at(-1);
  return last !== undefined && "middle" in last && last.middle;
}
