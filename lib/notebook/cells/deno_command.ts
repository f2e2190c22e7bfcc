/**
 * Runs Deno itself.
 *
 * @param args Its arguments.
 * @returns Exit code and what it wrote: `out` for results, `text` for its remarks.
 */
export async function deno(
  args: readonly string[],
): Promise<{ readonly code: number; readonly out: string; readonly text: string }> {
  const { code, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: [...args],
    env: { NO_COLOR: "1" },
    stdin: "null",
  }).output();
  const decoder = new TextDecoder();
  return { code, out: decoder.decode(stdout), text: decoder.decode(stderr) };
}
