/** A number that was read, or what would do instead. */
export type NumberRead = { readonly value: number } | { readonly wanted: string };

const vulgar: Readonly<Record<string, string>> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
  "⅓": "1/3",
  "⅔": "2/3",
};

/** One spelling for signs, spaces and fraction characters. */
export function plainNumber(text: string): string {
  return text.replace(
    /(\d?)([½¼¾⅛⅜⅝⅞⅓⅔])/g,
    (_, whole: string, sign: string) => `${whole}${whole === "" ? "" : " "}${vulgar[sign]}`,
  )
    .replace(/[−–]/g, "-").replace(/[⁄∕]/g, "/").replace(/\s+/g, " ").trim();
}

/** Reads text that is all number, in the spelling of `plainNumber` or not yet in it. */
export function parseNumber(text: string): NumberRead {
  const plain = plainNumber(text);
  const sign = plain.startsWith("-") ? -1 : 1;
  const body = plain.replace(/^[+-] ?/, "");
  const read = fraction(body) ?? decimal(body) ?? {
    wanted: /^(nan|inf|infinity|∞)$/i.test(body)
      ? "must be a finite number"
      : "must be a number such as 12.5, 1 1/2 or 5.4e-6",
  };
  if ("wanted" in read) return read;
  if (!Number.isFinite(read.value)) return { wanted: "is beyond the range of numbers" };
  return { value: sign * read.value + 0 }; // + 0: no negative zero
}

function fraction(body: string): NumberRead | undefined {
  const match = /^(?:(\d+)(?: | ?- ?))?(\d+) ?\/ ?(\d+)$/.exec(body);
  if (match === null) return undefined;
  const [, whole, numerator, denominator] = match;
  const above = Number(numerator);
  const below = Number(denominator);
  if (below === 0) return { wanted: "must not divide by 0" };
  if (whole !== undefined && above >= below) {
    return { wanted: "must have a fraction below 1 behind its whole number, such as 1 1/2" };
  }
  return { value: (Number(whole ?? 0) * below + above) / below };
}

function decimal(body: string): NumberRead | undefined {
  if (/^(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(body)) return { value: Number(body) };
  if (/^[1-9]\d{0,2},\d{3}$/.test(body)) {
    const thousands = body.replace(",", "");
    const comma = Number(body.replace(",", "."));
    return { wanted: `could be ${thousands} or ${comma}: write the one that is meant` };
  }
  const commaGroups = /^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(body);
  if (commaGroups) return { value: Number(body.replaceAll(",", "")) };
  const pointGroups = /^[1-9]\d{0,2}(\.\d{3}){2,}$|^[1-9]\d{0,2}(\.\d{3})+,\d+$/.test(body);
  if (pointGroups) return { value: Number(body.replaceAll(".", "").replace(",", ".")) };
  if (/^\d*,\d+(e[+-]?\d+)?$/i.test(body)) return { value: Number(body.replace(",", ".")) };
  return undefined;
}
