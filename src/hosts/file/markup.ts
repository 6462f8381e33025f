/** Looks for elements in the XML of a part that was found to declare nothing, whatever their prefix. */

const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };
const LAST_CODE_POINT = 0x10ffff;

export const fromXml = (text: string): string =>
  text.replace(
    /&(?:#x([0-9a-f]{1,6})|#(\d{1,7})|(\w{1,8}));/gi,
    (whole, hex?: string, decimal?: string, name?: string) => {
      if (name) return ENTITIES[name] ?? whole;
      const code = parseInt(hex ?? decimal!, hex ? 16 : 10);
      return code <= LAST_CODE_POINT ? String.fromCodePoint(code) : whole;
    },
  );

export interface Element {
  /** Its attributes as they are written. */
  readonly attributes: string;
  /** What stands between its tags; empty for one without. */
  readonly inside: string;
}

const patterns = new Map<string, RegExp>();
const openingOf = (tag: string): RegExp => {
  let known = patterns.get(tag);
  if (!known) patterns.set(tag, (known = new RegExp(`<((?:[\\w.-]+:)?)${tag}(?=[\\s/>])([^<>]*)>`, "g")));
  known.lastIndex = 0;
  return known;
};

/** @returns the elements of a name, in their order; none of them inside another of the same name */
export function elementsOf(xml: string, tag: string): Element[] {
  const opening = openingOf(tag);
  const found: Element[] = [];
  for (let match = opening.exec(xml); match; match = opening.exec(xml)) {
    const [whole, prefix, attributes] = match as unknown as [string, string, string];
    if (whole.endsWith("/>")) {
      found.push({ attributes: attributes.slice(0, -1), inside: "" });
      continue;
    }
    const from = match.index + whole.length;
    const close = `</${prefix}${tag}>`;
    const to = xml.indexOf(close, from);
    if (to < 0) break;
    found.push({ attributes, inside: xml.slice(from, to) });
    opening.lastIndex = to + close.length;
  }
  return found;
}

export const firstOf = (xml: string, tag: string): Element | undefined => {
  const match = openingOf(tag).exec(xml);
  return match ? elementsOf(xml.slice(match.index), tag)[0] : undefined;
};

/** An attribute's value, whatever its prefix. */
export function attribute({ attributes }: Element, name: string): string | undefined {
  const found = new RegExp(`(?:^|\\s)(?:[\\w.-]+:)?${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)')`).exec(attributes);
  const value = found?.[1] ?? found?.[2];
  return value === undefined ? undefined : fromXml(value);
}

export const isOn = (element: Element | undefined, name: string): boolean => {
  const value = element && attribute(element, name)?.toLowerCase();
  return value === "1" || value === "true";
};

export const isOff = (element: Element | undefined, name: string): boolean => {
  const value = element && attribute(element, name)?.toLowerCase();
  return value === "0" || value === "false";
};

export const numberOf = (element: Element | undefined, name: string): number | undefined => {
  const value = element && attribute(element, name);
  const number = value === undefined || value.trim() === "" ? NaN : Number(value);
  return Number.isFinite(number) ? number : undefined;
};

/** The text of all elements of a name, one after the other. */
export const textOf = (xml: string, tag: string): string =>
  elementsOf(xml, tag)
    .map(({ inside }) => fromXml(inside))
    .join("");
