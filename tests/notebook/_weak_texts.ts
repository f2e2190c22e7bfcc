/**
 * Runs in a page: the texts that stand out too little from what lies behind them. Contrast as
 * WCAG 2.2 defines it, level AA: 4.5 to 1, or 3 to 1 for letters of 24 px, or of 18.66 px in bold.
 */
export function weakTexts(): string[] {
  type Colour = readonly [red: number, green: number, blue: number, alpha: number];
  const colourOf = (css: string): Colour => {
    const parts = css.match(/^rgba?\(([\d.]+), ([\d.]+), ([\d.]+)(?:, ([\d.]+))?\)$/);
    if (parts === null) return [0, 0, 0, 0];
    const [, red, green, blue, alpha = "1"] = parts;
    return [Number(red), Number(green), Number(blue), Number(alpha)];
  };
  const over = (top: Colour, [r, g, b]: Colour): Colour => {
    const mixed = (i: 0 | 1 | 2, under: number): number => top[3] * top[i] + (1 - top[3]) * under;
    return [mixed(0, r), mixed(1, g), mixed(2, b), 1];
  };
  const faded = ([r, g, b, alpha]: Colour, by: string): Colour => [r, g, b, alpha * Number(by)];
  const luminance = (colour: Colour): number =>
    [0.2126, 0.7152, 0.0722].reduce((sum, weight, i) => {
      const c = colour[i]! / 255;
      return sum + weight * (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
    }, 0);
  /** What an element itself paints; a text's halo hides what is behind it. */
  const paintOf = (element: Element, isText: boolean): Colour => {
    const style = getComputedStyle(element);
    if (!(element instanceof SVGElement) || element.tagName === "svg") {
      return colourOf(style.backgroundColor);
    }
    if (!isText) return faded(faded(colourOf(style.fill), style.fillOpacity), style.opacity);
    return parseFloat(style.strokeWidth) >= 3 && style.paintOrder.startsWith("stroke")
      ? colourOf(style.stroke)
      : [0, 0, 0, 0];
  };
  const white: Colour = [255, 255, 255, 1];
  const ground = (element: Element, box: DOMRect): Colour => {
    const behind: Element[] = [];
    for (let e: Element | null = element; e !== null; e = e.parentElement) {
      if (e === element || !(e instanceof SVGElement) || e.tagName === "svg") behind.push(e);
    }
    if (element instanceof SVGElement) {
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      for (const shape of element.closest("svg")!.querySelectorAll("rect, path, circle")) {
        const at = new DOMPoint(x, y).matrixTransform(
          (shape as SVGGeometryElement).getScreenCTM()!.inverse(),
        );
        const before = shape.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_FOLLOWING;
        if (before && (shape as SVGGeometryElement).isPointInFill(at)) behind.splice(1, 0, shape);
      }
    }
    return behind.reverse().reduce(
      (under, e) => over(paintOf(e, e === element), under),
      white,
    );
  };
  const weak: string[] = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const element = node.parentElement!;
    const text = node.textContent!.trim();
    const box = element.getBoundingClientRect();
    if (text === "" || box.width < 2 || element.closest("style, script, title, desc")) continue;
    const style = getComputedStyle(element);
    if (style.visibility !== "visible") continue;
    const back = ground(element, box);
    const svg = element instanceof SVGElement;
    const ink = svg
      ? faded(faded(colourOf(style.fill), style.fillOpacity), style.opacity)
      : colourOf(style.color);
    const [dark, light] = [luminance(over(ink, back)), luminance(back)].sort((a, b) => a - b) as [
      number,
      number,
    ];
    const contrast = (light + 0.05) / (dark + 0.05);
    const size = parseFloat(style.fontSize);
    const large = size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 700);
    if (contrast < (large ? 3 : 4.5)) {
      weak.push(`"${text.slice(0, 40)}": ${contrast.toFixed(2)} to 1`);
    }
  }
  return weak;
}
