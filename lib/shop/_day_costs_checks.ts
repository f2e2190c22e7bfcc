import { checksFor } from "../check/mod.ts";
import type { DayCostTask } from "./day_costs.ts";
import type { DayPlan } from "./day_plan.ts";

const check = checksFor("add up the day");

const PACES = ["cutting", "bagging", "trimming", "fairing", "sanding", "painting"] as const;

/** Refuses what no day can be. */
export function checkTask(task: DayCostTask): void {
  check.object("task", task);
  checkPlan(task.plan);
  check.count("parts", task.parts, 1);
  check.count("hands", task.hands, 1);
  check.fraction("share trimmed off", task.trimmedShare);
  check.nonNegative("area to be finished", task.finishedArea, "m²");
  check.count("coats", task.coats, 1);
  check.object("skim", task.skim);
  check.object("paint", task.paint);
  const paces = check.object("paces", task.paces);
  for (const name of PACES) {
    const { low, likely, high } = check.object(`pace of ${name}`, paces[name]);
    check.nonNegative(`quickest ${name}`, low, "s");
    check.nonNegative(`likely ${name}`, likely, "s");
    check.nonNegative(`slowest ${name}`, high, "s");
  }
  const { low, high } = check.object("stray of the resin", task.resinStray);
  check.within("least resin over plan", low, { min: 0, max: 1 });
  if (!(high >= 1)) check.refuse("most resin over plan", high, "must be 1 or above");
  for (const [name, price] of Object.entries(check.object("prices", task.prices))) {
    check.nonNegative(`price ${name}`, price);
  }
}

/** A plan as `planDay` makes it: whole, so that no sum meets a hole. */
function checkPlan(plan: DayPlan): void {
  check.object("plan", plan);
  for (const name of ["cloths", "cores"] as const) {
    const entries: readonly object[] = plan[name];
    check.list(`${name} of the plan`, entries, 0).forEach((entry, i) =>
      check.object(`entry ${i + 1} of ${name}`, entry)
    );
  }
  for (const { rollWidth, rollLength, pieceMass, pieceArea } of plan.cloths) {
    check.positive("roll width", rollWidth, "m");
    check.nonNegative("length off the roll", rollLength, "m");
    check.nonNegative("mass of the pieces", pieceMass, "kg");
    check.nonNegative("area of the pieces", pieceArea, "m²");
  }
  for (const { footArea, waste } of plan.cores) {
    check.nonNegative("area of the core", footArea, "m²");
    check.within("waste of the core", waste, { min: 0, max: 0.999 });
  }
  const { inPart, total, lines } = check.object("resin of the plan", plan.resin);
  check.nonNegative("resin in the part", inPart, "kg");
  check.nonNegative("resin in all", total, "kg");
  check.list("lines of the resin", lines, 0).forEach((line, i) =>
    check.nonNegative(`mass of resin line ${i + 1}`, check.object("line", line).mass, "kg")
  );
  const { finishAt, spareMass, task } = check.object("batches of the plan", plan.batches);
  check.nonNegative("time to the last pot", finishAt, "s");
  check.nonNegative("spare resin", spareMass, "kg");
  check.within("spread of the rate", check.object("task of the batches", task).rateSpread, {
    min: 0,
    max: 0.999,
  });
  if (plan.bag !== undefined) {
    check.list("layers of the bag", check.object("bag", plan.bag).layers, 0).forEach((layer) =>
      check.nonNegative("area of a bag layer", check.object("bag layer", layer).area, "m²")
    );
    check.nonNegative("tape", plan.bag.tapeLength, "m");
  }
  if (plan.fillets !== undefined) {
    check.nonNegative("putty in fillets", check.object("fillets", plan.fillets).mass, "kg");
  }
}
