import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { progress } from "../../lib/notebook/mod.ts";

interface Told {
  readonly message: string;
  readonly text: string;
  readonly id: string;
}

/** What a kernel would have been told. */
function listener(): {
  readonly told: Told[];
  readonly hear: NonNullable<Parameters<typeof progress>[1]>;
} {
  const told: Told[] = [];
  return {
    told,
    // deno-lint-ignore no-explicit-any
    hear: async (message, content: any) => {
      await Promise.resolve();
      told.push({
        message,
        text: content.data["text/plain"],
        id: content.transient.display_id,
      });
    },
  };
}

Deno.test("a line is shown once and changed from then on, the end never left out", async () => {
  const { told, hear } = listener();
  const tell = progress("panels tried", hear);
  for (let i = 0; i < 1000; i++) tell(i, 1000);
  await tell(1000, 1000);
  assertEquals(told[0], {
    message: "display_data",
    text: "0 of 1000 panels tried",
    id: told[0]!.id,
  });
  assertEquals(told.slice(1).map(({ message }) => message), ["update_display_data"]);
  assertEquals(told.at(-1)!.text, "1000 of 1000 panels tried");
  assertEquals(new Set(told.map(({ id }) => id)).size, 1);
});

Deno.test("two lines do not share an identity", async () => {
  const { told, hear } = listener();
  await progress("beams", hear)(1, 1);
  await progress("panels", hear)(1, 1);
  assertEquals(new Set(told.map(({ id }) => id)).size, 2);
});

Deno.test("outside a notebook nothing is said", async () => {
  await progress("panels tried")(1, 1);
});

Deno.test("counts that cannot be meant are refused", () => {
  assertThrows(() => progress(" "), InputError, "what is counted");
  const tell = progress("panels tried");
  assertThrows(() => void tell(3, 2), InputError, "count");
  assertThrows(() => void tell(0, NaN), InputError, "total");
});
