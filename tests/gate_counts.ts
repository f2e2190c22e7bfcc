/** How many tests ended how. */
export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

/** No test at all. */
export const NONE: Counts = { passed: 0, failed: 0, skipped: 0 };

/** Both counts as one. */
export function addCounts(a: Counts, b: Counts): Counts {
  return {
    passed: a.passed + b.passed,
    failed: a.failed + b.failed,
    skipped: a.skipped + b.skipped,
  };
}

/** The tests in a junit report. */
export function countTests(junit: string): Counts {
  const [head = ""] = junit.match(/<testsuites [^>]*>/) ?? [];
  const number = (name: string): number => Number(head.match(` ${name}="(\\d+)"`)?.[1] ?? 0);
  // Deno leaves the disabled out of its head line.
  const skipped = junit.match(/<skipped\b/g)?.length ?? 0;
  const failed = number("failures") + number("errors");
  return { passed: number("tests") - failed - skipped, failed, skipped };
}

/** Names of the skipped tests in a junit report: no test is left out unseen. */
export function skippedTests(junit: string): string[] {
  return [...junit.matchAll(/<testcase name="([^"]*)"[^>]*>\s*<skipped\b/g)].map(([, name]) =>
    name!
  );
}

/** The line by which a run is judged. */
export function summaryLine({ passed, failed, skipped }: Counts): string {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`;
}
