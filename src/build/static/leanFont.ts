/**
 * A TrueType font without the names of its glyphs and without hinting: nearly a fifth
 * of what the desk's two fonts weigh packed, and nothing that draws characters by
 * their outlines alone asks for them. Outlines, metrics and kerning stay.
 *
 * Source: OpenType 1.9, "post": version 3.0 has a header of 32 bytes and no names.
 */
import { fontTables, writtenFont } from "./fontTables";
import { viewOf } from "./viewOf";
import { withoutInstructions } from "./withoutInstructions";

const POST_HEADER_BYTES = 32;
const POST_VERSION_3 = 0x0003_0000;
/** In "head". */
const LOCA_FORMAT_AT = 50;
/** What instructions call and read, when they are followed, and times that the font's editor keeps for itself. */
const LEFT_OUT: ReadonlySet<string> = new Set(["fpgm", "prep", "cvt ", "gasp", "FFTM"]);

/** @throws Error when the font is not a TrueType one */
export function leanFont(font: Uint8Array): Uint8Array {
  const tables = fontTables(font);
  const [head, loca, glyf] = ["head", "loca", "glyf"].map((tag) => tables.get(tag));
  if (head === undefined || loca === undefined || glyf === undefined)
    throw new Error("Only a TrueType font can go without hinting; this file is none.");
  const isLong = viewOf(head).getUint16(LOCA_FORMAT_AT) === 1;
  const outlines = withoutInstructions({ loca, glyf }, isLong);
  tables.set("loca", outlines.loca).set("glyf", outlines.glyf);
  const post = tables.get("post");
  if (post !== undefined) tables.set("post", withoutNames(post));
  for (const tag of LEFT_OUT) tables.delete(tag);
  return writtenFont(tables);
}

function withoutNames(post: Uint8Array): Uint8Array {
  const header = post.slice(0, POST_HEADER_BYTES);
  viewOf(header).setUint32(0, POST_VERSION_3);
  return header;
}
