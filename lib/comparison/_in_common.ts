import type { Checks } from "../check/mod.ts";
import { checkLayup } from "./_layup_checks.ts";
import { UNCERTAIN } from "./_shape.ts";
import type { WeighedRecord } from "./weighed_parts.ts";

/** A figure with what each input does to it. */
export const BUDGET = { ...UNCERTAIN, budget: [{ name: "text", contribution: "number" }] } as const;

/** Under what name an input is the same for other parts too; undefined if it is the part's own. */
export function namesInCommon(
  check: Checks,
  { layup }: WeighedRecord["record"],
): (input: string) => string | undefined {
  checkLayup(check, layup);
  const resin = layup.layers.find((layer) => layer.kind === "reinforcement")?.resin.name;
  const core = layup.layers.find((layer) => layer.kind === "core")?.core.name;
  return (input) =>
    input === "resin density"
      ? `density of ${resin}`
      : input === "core uptake"
      ? `uptake of ${core}`
      : /^(?:areal weight|density) of /.test(input)
      ? input
      : undefined;
}
