import { assert, assertThrows } from "@std/assert";
import katex from "katex";
import { InputError } from "../../lib/check/mod.ts";
import { explainCriterion, failureCriteria } from "../../lib/laminate/mod.ts";

Deno.test("every criterion is explained, its formula can be set, and its source is named", () => {
  const formulas = new Set<string>();
  for (const criterion of failureCriteria) {
    const { looksAt, overlooks, formula, source } = explainCriterion(criterion);
    assert(looksAt !== "" && overlooks !== "" && source.includes("from memory"), criterion);
    // KaTeX throws where TeX cannot be set.
    assert(katex.renderToString(formula, { output: "mathml" }).includes("<math"), criterion);
    formulas.add(formula);
  }
  assert(formulas.size === failureCriteria.length);
});

Deno.test("an unknown criterion is refused", () => {
  assertThrows(() => explainCriterion("by eye" as never), InputError, "criterion");
});
