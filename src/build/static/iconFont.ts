/** The icons of the page without a server: those alone that somebody names. */
import subsetFont from "subset-font";

/** Copyright, trademark, licence and its address (OpenType 1.9, "name"): they stay with what they are about. */
const SAID_OF_RIGHTS = [0, 7, 13, 14];
/** A rule of the font's style: the classes that it is for, and the character in its private area. */
const RULE = /((?:\.fa-[a-z0-9-]+:before,?)+)\{content:"\\([0-9a-f]+)"\}/g;
const NAME = /\bfa-[a-z0-9-]+/g;
const HEX = 16;

/**
 * @param font in WOFF2
 * @param style which class draws which character
 * @param users everything that may name a class
 */
export function withIconsOf(font: Uint8Array, style: string, users: readonly string[]): Promise<Uint8Array> {
  const named = new Set(users.flatMap((text) => text.match(NAME) ?? []));
  const characters = [...style.matchAll(RULE)]
    .filter(([, classes]) => classes!.match(NAME)!.some((name) => named.has(name)))
    .map(([, , code]) => String.fromCodePoint(Number.parseInt(code!, HEX)));
  return subsetFont(Buffer.from(font), characters.join(""), {
    targetFormat: "woff2",
    preserveNameIds: SAID_OF_RIGHTS,
  });
}
