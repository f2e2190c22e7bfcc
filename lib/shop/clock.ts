import { checksFor } from "../check/mod.ts";

const check = checksFor("tell the time");

const MINUTE = 60;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/**
 * Clock time some seconds after another, rounded to the minute.
 *
 * Range: start from 00:00 to 23:59; a later day is written behind, as in `07:30 (+1 day)`. Summer
 * time is not looked at.
 *
 * Source: definition.
 *
 * @param start Clock time of the start, hours and minutes.
 * @param seconds Time since then [s].
 * @returns Clock time as text.
 * @throws {InputError} If the start is no clock time or the seconds below 0.
 *
 * @example
 * ```ts
 * import { clockAfter } from "@laminate/notebooks/shop";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(clockAfter("18:00", 5430), "19:31");
 * assertEquals(clockAfter("18:00", 14 * 3600), "08:00 (+1 day)");
 * ```
 */
export function clockAfter(start: string, seconds: number): string {
  return written(Math.round(sinceMidnight(start, seconds) / MINUTE));
}

/**
 * Clock time some seconds after another, rounded up to the full hour: what must not come sooner.
 *
 * Range: as `clockAfter`.
 *
 * Source: definition.
 *
 * @param start Clock time of the start, hours and minutes.
 * @param seconds Time since then [s].
 * @returns Clock time as text.
 * @throws {InputError} If the start is no clock time or the seconds below 0.
 *
 * @example
 * ```ts
 * import { fullHourAfter } from "@laminate/notebooks/shop";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(fullHourAfter("18:00", 60), "19:00");
 * assertEquals(fullHourAfter("18:30", 5.5 * 3600), "00:00 (+1 day)");
 * ```
 */
export function fullHourAfter(start: string, seconds: number): string {
  // A hair above the full hour is rounding, not another hour.
  return written(60 * Math.ceil(sinceMidnight(start, seconds) / HOUR - 1e-9));
}

/** Seconds from the midnight before the start. */
function sinceMidnight(start: string, seconds: number): number {
  const parts = typeof start === "string" ? /^([01]?\d|2[0-3]):([0-5]\d)$/.exec(start) : null;
  if (parts === null) return check.refuse("start", start, "must be a time of day such as 18:30");
  check.nonNegative("time since the start", seconds, "s");
  return Number(parts[1]) * HOUR + Number(parts[2]) * MINUTE + seconds;
}

/** Minutes from the midnight before the start as a clock time. */
function written(minutes: number): string {
  const days = Math.floor(minutes * MINUTE / DAY);
  const inDay = minutes - days * DAY / MINUTE;
  const two = (value: number): string => String(value).padStart(2, "0");
  const time = `${two(Math.floor(inDay / 60))}:${two(inDay % 60)}`;
  return days === 0 ? time : `${time} (+${days} day${days === 1 ? "" : "s"})`;
}
