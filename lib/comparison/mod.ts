/**
 * Did it do what we predicted, and what should we change?
 *
 * Start with {@link predictBending} for a beam cut from a lay-up schedule, {@link readBendingTest} for
 * its test, {@link besidePrediction} and {@link explainGap} to set one beside the other,
 * {@link weighedRecord} for a part on the scale, and {@link learnFromRecords} for what all tests
 * together say of the materials.
 *
 * @example A steady test, softer than predicted
 * ```ts
 * import { besidePrediction, readBendingTest } from "@laminate/notebooks/comparison";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const load = [0, 10, 20, 30, 40, 50];
 * const deflection = [0, 1e-3, 2.01e-3, 3e-3, 3.99e-3, 5e-3];
 * const { fit } = readBendingTest({ load, deflection, branch: load.map(() => "loading") });
 * assertAlmostEquals(fit.slope.value, 1e-4, 1e-6);
 *
 * const { verdict } = besidePrediction(fit.slope, { value: 0.8e-4, u: 0.02e-4 });
 * assertEquals(verdict, "disagrees");
 * ```
 *
 * @module
 */
export * from "./allowed_moduli.ts";
export * from "./beam_evidence.ts";
export * from "./beam_readings.ts";
export * from "./bending_test.ts";
export * from "./beside_prediction.ts";
export * from "./chord_slope.ts";
export * from "./coupon_verdict.ts";
export * from "./creep.ts";
export * from "./curved_panel.ts";
export * from "./explain_gap.ts";
export * from "./face_and_core.ts";
export * from "./fillet_member.ts";
export * from "./hysteresis.ts";
export * from "./input_names.ts";
export * from "./joint_region.ts";
export * from "./layup_code.ts";
export * from "./layup_day.ts";
export * from "./layup_design.ts";
export * from "./at_low_end.ts";
export * from "./layup_inputs.ts";
export * from "./layup_orders.ts";
export * from "./learn_from_records.ts";
export * from "./learn_materials.ts";
export * from "./learned_cloth.ts";
export * from "./machine_compliance.ts";
export * from "./mean_resin_content.ts";
export * from "./measured_moduli.ts";
export * from "./measured_region.ts";
export * from "./member_beams.ts";
export * from "./mount_check.ts";
export * from "./multi_span.ts";
export * from "./one_span.ts";
export * from "./own_materials.ts";
export * from "./planned_reading.ts";
export * from "./predicted_bending.ts";
export * from "./resized_panel.ts";
export * from "./rigidities.ts";
export * from "./section_moduli.ts";
export * from "./straightness.ts";
export * from "./strip_load.ts";
export * from "./supported_panel.ts";
export * from "./surplus_resin.ts";
export * from "./toe.ts";
export * from "./unweighed.ts";
export * from "./varied_layup.ts";
export * from "./ways_to_give.ts";
export * from "./with_materials.ts";
export * from "./weighed_parts.ts";
export type { LoadReadings } from "./_readings.ts";
