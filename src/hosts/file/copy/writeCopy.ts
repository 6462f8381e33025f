/** A copy as the bytes of an .xlsx. */
import { withPictures } from "../../../pictures/withPictures";
import type { Book } from "../../../workbooks/book";
import type { RenderPng } from "../sheetImages";
import { writeXlsx } from "../writeXlsx";
import { copyOf, type CopyFacts, type CopyKind } from "./copyOf";

/**
 * @param book a computed workbook
 * @param renderPng where it is given, the copy has the job's pictures
 */
export function writeCopy(
  book: Book,
  kind: CopyKind,
  facts: CopyFacts,
  renderPng?: RenderPng,
): Promise<Uint8Array> {
  const copy = copyOf(renderPng && kind !== "cards" ? withPictures(book) : book, kind, facts);
  return writeXlsx(copy, { ...(kind === "office" ? { frozen: true } : { sealed: true }), renderPng });
}
