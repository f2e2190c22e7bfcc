import { escapeHtml } from "../_html.ts";
import { PAGE_STYLE } from "./page_style.ts";

/** Nothing is fetched and nothing runs, whatever the body holds. */
const POLICY = "default-src 'none'; img-src data:; style-src 'unsafe-inline'; base-uri 'none'; " +
  "form-action 'none'";

/** One self-contained HTML file around a body that is clean already. */
export function pageFrame(title: string, body: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escapeHtml(title)}</title>
<link rel="icon" href="data:,">
<style>
${PAGE_STYLE}
</style>
</head>
<body>
${body}
</body>
</html>
`;
}
