/** A sheet's pictures as the library takes them. */
import type { SheetImage } from "hucre";
import { parseAddress } from "../../formula/address";
import type { BookPicture, BookSheet } from "../../workbooks/book";
import { stop, troubles } from "./fileTrouble";

export type RenderPng = (picture: BookPicture) => Promise<Uint8Array>;
export type SheetImages = { readonly images?: SheetImage[] };

/** An attribute holds no line ends, and XML no control characters or halves of characters. */
const attributeText = (text: string): string =>
  // eslint-disable-next-line no-control-regex -- control characters are what is looked for
  text.replace(/[\x00-\x1f]+/g, " ").replace(/\p{Surrogate}|[\uFFFE\uFFFF]/gu, "\uFFFD");

/** @returns nothing for a sheet without pictures */
export async function sheetImages(
  { name, pictures = [] }: BookSheet,
  renderPng: RenderPng | undefined,
): Promise<SheetImages> {
  if (pictures.length === 0) return {};
  if (!renderPng) throw new Error(`The pictures of sheet "${name}" need a renderer.`);
  const images: SheetImage[] = [];
  for (const picture of pictures) {
    const place =
      parseAddress(picture.at) ?? stop(troubles.badRange(`A picture of sheet "${name}"`, picture.at));
    images.push({
      data: await renderPng(picture),
      type: "png",
      anchor: { from: { row: place.row, col: place.column } },
      width: Math.round(picture.width),
      height: Math.round(picture.height),
      title: attributeText(picture.title),
      altText: attributeText(picture.description),
    });
  }
  return { images };
}
