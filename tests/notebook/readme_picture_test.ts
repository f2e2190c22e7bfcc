import { assertEquals } from "@std/assert";
import { PICTURE, storedPicture } from "./readme_picture.ts";

Deno.test("the README's picture is the notebook's own", async () => {
  assertEquals(
    await Deno.readTextFile(PICTURE),
    await storedPicture(),
    "write it again with: deno run --allow-read --allow-write tests/notebook/readme_picture.ts",
  );
});
