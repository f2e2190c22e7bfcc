import sanitize from "sanitize-html";

const HTML_TAGS = [
  ...["h1", "h2", "h3", "h4", "h5", "h6", "p", "div", "span", "section", "aside", "blockquote"],
  ...["ul", "ol", "li", "dl", "dt", "dd", "table", "caption", "thead", "tbody", "tfoot", "tr"],
  ...["th", "td", "colgroup", "col", "figure", "figcaption", "pre", "code", "kbd", "samp", "var"],
  ...["strong", "em", "b", "i", "u", "s", "del", "ins", "small", "sub", "sup", "mark", "abbr"],
  ...["br", "hr", "a", "img", "details", "summary", "q", "cite", "time"],
];

const SVG_TAGS = [
  ...["svg", "g", "path", "line", "rect", "circle", "ellipse", "polygon", "polyline", "text"],
  ...["tspan", "title", "desc", "defs", "clipPath", "marker", "use", "symbol", "mask", "pattern"],
  ...["linearGradient", "radialGradient", "stop"],
];

const MATH_TAGS = [
  ...["math", "semantics", "annotation", "mrow", "mi", "mn", "mo", "ms", "mtext", "mspace"],
  ...["mfrac", "msqrt", "mroot", "msub", "msup", "msubsup", "munder", "mover", "munderover"],
  ...["mtable", "mtr", "mtd", "mstyle", "mpadded", "mphantom", "menclose", "mmultiscripts"],
  ...["mprescripts"],
];

const SVG_ATTRIBUTES = [
  ...["viewBox", "preserveAspectRatio", "x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "rx"],
  ...["ry", "d", "dx", "dy", "points", "width", "height", "transform", "fill", "fill-opacity"],
  ...["fill-rule", "stroke", "stroke-width", "stroke-opacity", "stroke-dasharray", "offset"],
  ...["stroke-linecap", "stroke-linejoin", "stroke-miterlimit", "stroke-dashoffset", "opacity"],
  ...["clip-path", "clip-rule", "mask", "marker-start", "marker-mid", "marker-end", "markerWidth"],
  ...["markerHeight", "markerUnits", "refX", "refY", "orient", "font-family", "font-size"],
  ...["font-weight", "font-style", "font-variant", "text-anchor", "dominant-baseline"],
  ...["letter-spacing", "color", "paint-order", "gradientUnits", "gradientTransform", "fx", "fy"],
  ...[
    "stop-color",
    "stop-opacity",
    "patternUnits",
    "clipPathUnits",
    "maskUnits",
    "shape-rendering",
  ],
  ...["vector-effect", "style", "xmlns", "rotate", "textLength", "lengthAdjust", "visibility"],
];

const MATH_ATTRIBUTES = [
  ...["display", "encoding", "mathvariant", "stretchy", "fence", "separator", "lspace", "rspace"],
  ...["minsize", "maxsize", "accent", "accentunder", "scriptlevel", "displaystyle", "columnalign"],
  ...[
    "rowspacing",
    "columnspacing",
    "rowlines",
    "columnlines",
    "frame",
    "width",
    "height",
    "depth",
  ],
  ...[
    "voffset",
    "linethickness",
    "movablelimits",
    "form",
    "symmetric",
    "notation",
    "side",
    "xmlns",
  ],
  ...["columnspan", "rowspan", "largeop", "mathcolor"],
];

/** Values of an SVG's own style that only draw: no address is fetched. */
const DRAWING_VALUE = /^(?!.*url\s*\()[\w\s#.,%()'"+-]+$/i;

const DRAWING_STYLES = Object.fromEntries(
  [
    ...["fill", "stroke", "color", "background", "background-color", "opacity", "stroke-width"],
    ...["font", "font-family", "font-size", "font-weight", "font-style", "font-variant"],
    ...["text-anchor", "paint-order", "mix-blend-mode", "overflow", "stroke-dasharray"],
    ...["font-feature-settings", "font-variant-numeric", "white-space"],
  ].map((property) => [property, [DRAWING_VALUE]]),
);

const forTags = (
  tags: readonly string[],
  attributes: readonly string[],
): Record<string, string[]> => Object.fromEntries(tags.map((tag) => [tag, [...attributes]]));

/**
 * HTML, SVG and MathML with all that could run, fetch or restyle the page taken out. Names are
 * compared as they stand, since SVG's have capitals: what is not on the list is dropped.
 */
export function cleanHtml(html: string): string {
  return sanitize(html, {
    allowedTags: [...HTML_TAGS, ...SVG_TAGS, ...MATH_TAGS],
    allowedAttributes: {
      ...forTags(SVG_TAGS, SVG_ATTRIBUTES),
      ...forTags(MATH_TAGS, MATH_ATTRIBUTES),
      "*": ["class", "id", "role", "aria-*", "title", "lang", "dir"],
      a: ["href"],
      div: ["data-live", "data-settings", "data-values", "data-exercise", "data-verdicts"],
      use: [...SVG_ATTRIBUTES, "href"],
      img: ["src", "alt", "width", "height"],
      th: ["scope", "colspan", "rowspan", "headers"],
      td: ["colspan", "rowspan", "headers"],
      col: ["span"],
      ol: ["start", "reversed", "type"],
      details: ["open"],
      time: ["datetime"],
    },
    allowedStyles: { "*": DRAWING_STYLES },
    allowedSchemes: ["https", "http", "mailto"],
    allowedSchemesByTag: { img: ["data"] },
    allowProtocolRelative: false,
    parser: { lowerCaseTags: false, lowerCaseAttributeNames: false },
    selfClosing: ["img", "br", "hr", "col"],
    transformTags: { a: pageLink, use: inside },
  });
}

/** A link from one notebook to another leads from page to page. */
function pageLink(tagName: string, attribs: sanitize.Attributes): sanitize.Tag {
  const href = attribs.href?.replace(/^(?:\.\/)?([\w-]+)\.ipynb(?=#|$)/, "$1.html");
  return { tagName, attribs: href === undefined ? attribs : { ...attribs, href } };
}

/** A picture draws its own pieces only. */
function inside(tagName: string, { href, ...attribs }: sanitize.Attributes): sanitize.Tag {
  return { tagName, attribs: href?.startsWith("#") ? { ...attribs, href } : attribs };
}
