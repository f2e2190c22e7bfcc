/**
 * A picture whose ids are its own: Plot counts its ids up through the process, so that two stored
 * pictures on one page clash and a second run differs. Each id becomes the picture's hash and its
 * place in the picture, and so does each reference to it.
 */
export function ownIds(svg: string): string {
  const ids = [...svg.matchAll(/\sid=(?:"([^"]+)"|'([^']+)')/g)].map((m) => m[1] ?? m[2]!);
  if (ids.length === 0) return svg;
  const order = new Map([...new Set(ids)].map((id, i) => [id, i + 1]));
  const renamed = (prefix: string): string =>
    svg.replace(
      /(\sid=["']|url\(["']?#|(?:\sxlink:|\s)href=["']#|\saria-(?:labelledby|describedby)=["'])([^"')]+)/g,
      (whole, before: string, id: string) =>
        order.has(id) ? `${before}${prefix}${order.get(id)}` : whole,
    );
  return renamed(`f${hash(renamed("f"))}-`);
}

/** 32-bit FNV-1a, in base 36: short, and the same on every machine. */
function hash(text: string): string {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return (h >>> 0).toString(36);
}

/** One opening tag; a ">" inside quotes does not end it. */
const TAG = /<[a-z](?:"[^"]*"|'[^']*'|[^>"'])*>/gi;

/** Whether a picture carries what could run: a script, an event handler, a foreign page. */
export function canRun(svg: string): boolean {
  return [...svg.matchAll(TAG)].some(([tag]) =>
    /^<(script|foreignobject|iframe|object|embed|animate|set)\b/i.test(tag) ||
    /[\s:]href\s*=\s*["']?(?!["'#])/i.test(tag) ||
    /[\s/]on\w+/i.test(tag.replace(/"[^"]*"|'[^']*'/g, " "))
  );
}
