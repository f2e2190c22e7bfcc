import { assertEquals } from "@std/assert";
import { join } from "@std/path";
import {
  dataFolder,
  denoCommand,
  kernelspec,
  type Machine,
} from "../../lib/notebook/cli/install_kernel.ts";
import { withFolder } from "./_fixtures.ts";

const machine = (os: Machine["os"], env: Record<string, string>): Machine => ({
  os,
  version: "2.9.6",
  env: (name) => env[name],
});

Deno.test("the kernel goes where Jupyter looks for what a user installs", () => {
  // Folders as Jupyter's documentation gives them, "Common directories and file locations".
  assertEquals(dataFolder(machine("linux", { HOME: "/h" })), "/h/.local/share/jupyter");
  assertEquals(dataFolder(machine("linux", { HOME: "/h", XDG_DATA_HOME: "/x" })), "/x/jupyter");
  assertEquals(dataFolder(machine("darwin", { HOME: "/h" })), "/h/Library/Jupyter");
  assertEquals(dataFolder(machine("windows", { APPDATA: "/a" })), "/a/jupyter");
  assertEquals(dataFolder(machine("linux", { HOME: "/h", JUPYTER_DATA_DIR: "/j" })), "/j");
});

Deno.test("the kernel is interrupted by message and writes no colour codes", () => {
  assertEquals(JSON.parse(kernelspec(["deno"])), {
    argv: ["deno", "jupyter", "--kernel", "--conn", "{connection_file}"],
    display_name: "Laminate notebooks (Deno)",
    env: { NO_COLOR: "1" },
    interrupt_mode: "message",
    language: "typescript",
  });
});

Deno.test("deno starts the kernel where it is installed, npx where only a cache holds it", async () => {
  await withFolder(async (folder) => {
    const cache = join(folder, "_npx", "1", "node_modules", ".bin");
    const own = join(folder, "bin");
    for (const place of [cache, own]) {
      await Deno.mkdir(place, { recursive: true });
      await Deno.writeTextFile(join(place, "deno"), "");
    }
    assertEquals(await denoCommand(machine("linux", { PATH: cache })), ["npx", "-y", "deno@2.9.6"]);
    assertEquals(await denoCommand(machine("linux", { PATH: `${cache}:${own}` })), ["deno"]);
  });
});
