import { join } from "node:path";
import { deno } from "../cells/deno_command.ts";
import { CONFIG, ROOT } from "../cli/project.ts";
import { bundlerInPlace } from "./bundler.ts";

/** The scripts of live figures, or why there are none. */
type LiveScript = { readonly code: string } | { readonly missing: string };

let bundled: Promise<LiveScript> | undefined;

/**
 * The program that moves live figures, with all of the library that it needs, for a page that has
 * to work from a file on disk. It is made once for a run.
 */
function liveScript(): Promise<LiveScript> {
  return bundled ??= bundle();
}

/**
 * A page with the scripts of its live figures inside, and a policy that lets those run and no
 * others. A page without live figures or exercises stays as it is.
 *
 * @param page The page, clean and whole.
 * @param warn Takes the reason if there can be no scripts: then the figures stand still.
 * @returns The page.
 */
export async function enlivened(page: string, warn: (reason: string) => void): Promise<string> {
  if (!/<div [^>]*data-(live|exercise)="/.test(page)) return page;
  const script = await liveScript();
  if ("missing" in script) {
    warn(script.missing);
    return page;
  }
  const policy = `default-src 'none'; script-src '${await scriptHash(script.code)}';`;
  return page
    .replace("default-src 'none';", () => policy)
    .replace(/<\/body>(?![^]*<\/body>)/, () => `<script>${script.code}</script>\n</body>`);
}

async function bundle(): Promise<LiveScript> {
  const folder = await Deno.makeTempDir({ prefix: "laminate-live-" });
  try {
    const live = join(ROOT, "lib/notebook/live");
    const { imports } = JSON.parse(await Deno.readTextFile(CONFIG));
    const map = join(folder, "imports.json");
    // The browser has a document of its own, and the algebra of units is too heavy for a page.
    const instead = {
      ...imports,
      linkedom: join(live, "_no_document.ts"),
      mathjs: join(live, "_no_algebra.ts"),
    };
    await Deno.writeTextFile(map, JSON.stringify({ imports: instead }));
    const file = join(folder, "live.js");
    await bundlerInPlace();
    const { code, text } = await deno([
      ...["bundle", "--quiet", "--platform=browser", "--format=iife", "--minify"],
      ...[`--import-map=${map}`, "--output", file, join(live, "app.ts")],
    ]);
    if (code !== 0) return { missing: text.trim() };
    // What looks like the end of the script would end it.
    return { code: (await Deno.readTextFile(file)).replaceAll("</script", "<\\/script") };
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

/** The hash by which a page's policy lets one script run, and no other. */
async function scriptHash(code: string): Promise<string> {
  const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(code));
  return `sha256-${btoa(String.fromCharCode(...new Uint8Array(digest)))}`;
}
