/** Words that begin a statement without a value, or one that says that none is meant. */
const NO_VALUE =
  /^(import|export|const|let|var|function|async function|class|abstract class|type|interface|enum|declare|if|for|while|do|switch|try|return|throw|void|namespace)\b(?!\s*\()|^(if|for|while|switch|import)\s*\(|^[{;/}]/;

/**
 * Whether a cell's last statement is a value that the kernel would show.
 *
 * Told by the layout that `deno fmt` gives a cell: its last statement begins with the last line
 * that is not indented and does not merely close what was opened above it.
 */
export function endsInValue(source: string): boolean {
  const lines = source.trimEnd().split("\n").filter((line) => !/^\s*(\/\/|$)/.test(line));
  const start = lines.findLast((line) => /^[^\s)\]}`.]/.test(line));
  return start !== undefined && !NO_VALUE.test(start) && !/^[\w.[\]]+ [-+*/]?= /.test(start);
}
