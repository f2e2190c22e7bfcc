import * as Plot from "@observablehq/plot";
import { checksFor } from "../check/mod.ts";
import { figureDocument } from "./_document.ts";
import { checkShape } from "./_shape.ts";

const check = checksFor("draw the figure");

/** What a figure says in words, for those who see it and those who do not. */
export interface Finding {
  /** The finding, as a sentence; drawn above the plot. */
  readonly title: string;
  /** The text alternative: what is plotted, and the figures that matter. */
  readonly description: string;
}

/** The unit in which an axis is shown. The library's display units have this shape. */
export interface AxisUnit {
  /** What stands in the brackets after the axis label, such as `mm`. */
  readonly symbol: string;
  /** Shown value for one SI unit, such as 1000 for mm [1]. */
  readonly perSI: number;
}

/** The name of an axis, and the unit in which it is shown. */
export interface Axis {
  /** What is shown along it. */
  readonly name: string;
  /** Its unit; none for a plain number. */
  readonly unit?: AxisUnit;
}

/** Width of every figure, so that pages line up [px]. */
export const WIDTH = 680;

/**
 * Two hues that keep 3:1 against a white and a near-black ground, and differ in lightness enough
 * to be told apart in grey; dash and symbol always repeat what a hue says.
 */
export const BLUE = "#2f7fc1";
/** See `BLUE`. */
export const ORANGE = "#c9641a";

const FONT = "system-ui, -apple-system, 'Segoe UI', Roboto, 'DejaVu Sans', sans-serif";
const TITLE_LINE = 20;
const TITLE_SIZE = 15;
/** Characters of the title that fit a line at `TITLE_SIZE`. */
const TITLE_CHARACTERS = 74;

/**
 * The figure brings its own ground, so that it is readable where a viewer shows it as an image
 * on a page of the other brightness. Paper is always white.
 */
const STYLE = `.laminate-figure{color:#1a1a1a;background:#ffffff;--figure-ground:#ffffff}` +
  `@media screen and (prefers-color-scheme:dark){.laminate-figure{color:#e8e8e8;background:#1b1b1f;--figure-ground:#1b1b1f}}`;

/** Draws a plot with its finding on top, and makes it a picture that can stand alone. */
export function drawFigure(options: Plot.PlotOptions, text: Finding): SVGSVGElement {
  const { title, description } = checkShape(text, FINDING, "finding");
  if (title.trim() === "") check.refuse("title", title, "must state the finding");
  if (description.trim() === "") {
    check.refuse("description", description, "must say what the figure shows");
  }
  const document = figureDocument();
  const svg = plotted({
    width: WIDTH,
    marginLeft: 64,
    marginRight: 24,
    marginTop: 30,
    marginBottom: 46,
    height: 380,
    ...options,
    document,
    style: { fontFamily: FONT, fontSize: "13px" },
  });
  if (svg.tagName.toLowerCase() !== "svg") {
    throw new Error("a figure must be a single SVG: draw labels as marks, not as legends");
  }
  return finish(svg, document, text);
}

/** What each figure says in words. */
const FINDING = { title: "words", description: "words" } as const;

/** Attributes that hold places. */
const PLACES = ["d", "x", "y", "x1", "x2", "y1", "y2", "cx", "cy", "width", "height", "transform"];

/** Draws, and refuses figures that no scale can show. */
function plotted(options: Plot.PlotOptions): SVGSVGElement {
  const refuse = (): never =>
    check.refuse("set of figures", "too far apart", "must lie in a range that a scale can show");
  try {
    const svg = Plot.plot(options) as SVGSVGElement;
    for (const mark of svg.querySelectorAll("*")) {
      const lost = PLACES.some((name) => /NaN|Infinity/.test(mark.getAttribute(name) ?? ""));
      if (lost) refuse();
    }
    return svg;
  } catch (error) {
    // A scale with more ticks than a list can hold.
    if (error instanceof RangeError) refuse();
    throw error;
  }
}

function finish(
  svg: SVGSVGElement,
  document: Document,
  { title, description }: Finding,
): SVGSVGElement {
  const titleLines = wrap(title, TITLE_CHARACTERS);
  // Plot sets the y label at the very top, so the title gets room above the plot's own frame.
  const extra = titleLines.length * TITLE_LINE + 8;
  const [width, height] = [svg.getAttribute("width"), Number(svg.getAttribute("height"))];
  svg.setAttribute("viewBox", `0 ${-extra} ${width} ${height + extra}`);
  svg.setAttribute("height", String(height + extra));
  svg.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", `${title} ${description}`);
  svg.setAttribute("class", `laminate-figure ${svg.getAttribute("class") ?? ""}`.trim());
  const make = (tag: string, content: string, attributes: Record<string, string> = {}): Element => {
    const element = document.createElementNS("http://www.w3.org/2000/svg", tag);
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    element.textContent = content;
    return element;
  };
  titleLines.forEach((line, i) =>
    svg.appendChild(make("text", line, {
      x: "8",
      y: String(TITLE_SIZE + 3 + i * TITLE_LINE - extra),
      fill: "currentColor",
      "font-size": String(TITLE_SIZE),
      class: "finding",
      "font-weight": "600",
      "text-anchor": "start",
    }))
  );
  svg.insertBefore(make("style", STYLE), svg.firstChild);
  svg.insertBefore(make("desc", description), svg.firstChild);
  svg.insertBefore(make("title", title), svg.firstChild);
  renameIds(svg, `figure-${hash(svg.outerHTML.replaceAll(COUNTED_ID, "id"))}`);
  return svg;
}

/** Ids that Plot counts up through the life of the process. */
const COUNTED_ID = /plot-(?:clip|marker)-\d+/g;

/** The same figure must come out the same, and two figures on a page must not share an id. */
function renameIds(svg: SVGSVGElement, prefix: string): void {
  const names = new Map<string, string>();
  const rename = (text: string): string =>
    text.replaceAll(COUNTED_ID, (id) => {
      if (!names.has(id)) names.set(id, `${prefix}-${names.size + 1}`);
      return names.get(id)!;
    });
  for (const element of svg.querySelectorAll("*")) {
    for (const { name, value } of Array.from(element.attributes)) {
      if (COUNTED_ID.test(value)) element.setAttribute(name, rename(value));
      COUNTED_ID.lastIndex = 0;
    }
  }
}

/** FNV-1a, enough to keep the ids of a page apart. */
function hash(text: string): string {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return (h >>> 0).toString(36);
}

/**
 * Breaks a sentence at its spaces into as few lines of at most `width` characters as it takes, and
 * these as even as can be: no word stands alone.
 */
function wrap(sentence: string, width: number): readonly string[] {
  const fewest = filled(sentence, width).length;
  for (let even = Math.ceil(sentence.length / fewest); even < width; even++) {
    const lines = filled(sentence, even);
    if (lines.length === fewest) return lines;
  }
  return filled(sentence, width);
}

function filled(sentence: string, width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of sentence.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else lines.push(word);
  }
  return lines;
}

/** An axis label with its unit. */
export function axisLabel(name: string, unit: AxisUnit | undefined): string {
  return unit === undefined || unit.symbol === "" ? name : `${name} [${unit.symbol}]`;
}

/** Points of a list that is to be drawn: refuses none and too few. */
export function checkPoints<T>(argument: string, points: readonly T[], min = 1): readonly T[] {
  return check.list(argument, points, min);
}

/** A list whose entries are told apart by dash or symbol, of which there are only so many. */
export function checkAtMost<T>(argument: string, entries: readonly T[], most: number): void {
  if (entries.length > most) {
    check.refuse(argument, entries, `must be ${most} or fewer to be told apart without colour`);
  }
}

/** A coordinate that is to be drawn: a NaN would leave a gap that nobody sees. */
export function checkCoordinate(argument: string, value: number): number {
  return check.finite(argument, value);
}

/** Keeps a text readable that crosses lines: an outline in the colour of the ground. */
export const HALO = {
  stroke: "var(--figure-ground, white)",
  strokeWidth: 4,
  fill: "currentColor",
} as const;

/** Dash of each line in turn, so that lines are told apart without colour. */
export const DASHES: readonly string[] = ["none", "7,4", "2,3", "9,3,2,3"];

/** Plot does not measure its tick labels: room for the longest, at some 7 px a letter. */
export function labelMargin(labels: readonly string[]): number {
  return Math.min(230, 24 + 7 * Math.max(...labels.map((label) => label.length)));
}

/** Width of a letter, about, as nothing measures a text before it is drawn [px]. */
export const LETTER = 7;

/**
 * Where words beside a point start: at the point, or behind an upright line that they would run
 * over. The axis is not known before it is drawn, so it is taken a quarter longer than its values.
 */
export function clearOfLine(
  words: string,
  { from, line, span, pixels }: {
    /** The point [axis]. */
    readonly from: number;
    /** The line, if there is one [axis]. */
    readonly line: number | undefined;
    /** What the values span [axis], on how many [px]. */
    readonly span: number;
    readonly pixels: number;
  },
): number {
  if (line === undefined || from > line || words === "") return from;
  const end = from + (LETTER * words.length + 12) * 1.25 * span / pixels;
  return end > line ? line : from;
}
