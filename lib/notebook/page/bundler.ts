import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import process from "node:process";
import { deno } from "../cells/deno_command.ts";

/**
 * Puts the bundler that `deno install` brought where `deno bundle` looks for it. Deno would fetch it
 * at its first use, and by then the machine may have no network.
 *
 * Where that cannot be done, on Windows or with another version of Deno, Deno fetches it as ever.
 */
export async function bundlerInPlace(): Promise<void> {
  try {
    const require = createRequire(import.meta.resolve("esbuild"));
    const { version } = require("../package.json") as { readonly version: string };
    const platform = `${process.platform}-${process.arch}`;
    const brought = require.resolve(`@esbuild/${platform}/bin/esbuild`);
    const { out } = await deno(["info", "--json"]);
    const { denoDir } = JSON.parse(out) as { readonly denoDir: string };
    // As Deno 2.9 names it.
    const place = join(denoDir, "dl", `esbuild-${version}-1`, `esbuild-${platform}`);
    if (await Deno.stat(place).then(() => true, () => false)) return;
    await Deno.mkdir(dirname(place), { recursive: true });
    // It is there whole or not at all, whoever else is at it.
    const beside = `${place}-${crypto.randomUUID()}`;
    await Deno.copyFile(brought, beside);
    await Deno.rename(beside, place);
  } catch {
    // `deno bundle` says by itself what it lacks.
  }
}
