/** A computed job as an .xlsx with its pictures drawn, on every host. */
import { withPictures } from "../../pictures/withPictures";
import type { Book } from "../../workbooks/book";
import { withPrintFoot } from "../../workbooks/printFoot";
import type { RenderPng } from "./sheetImages";
import { writeXlsx, type WriteXlsxOptions } from "./writeXlsx";

/** Parameters as for {@link writeXlsx}. */
export const jobFile = (
  book: Book,
  renderPng: RenderPng,
  options: Omit<WriteXlsxOptions, "renderPng"> = {},
): Promise<Uint8Array> => writeXlsx(withPictures(withPrintFoot(book)), { ...options, renderPng });
