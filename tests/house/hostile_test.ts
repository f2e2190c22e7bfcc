import { assertEquals } from "@std/assert";
import { attackRoom, FUNCTIONS } from "./_room.ts";

/** How often each function is called; `deno task fuzz` calls more often. */
const RUNS = 100;

for (const room of FUNCTIONS.keys()) {
  Deno.test(`${room}: no input brings out NaN, Infinity or anything but an InputError`, async () => {
    const found = await attackRoom(room, { runs: RUNS });
    assertEquals(found.flatMap(({ offences }) => offences), []);
    assertEquals(found.filter(({ results }) => results === 0).map(({ name }) => name), []);
  });
}
