/** A computed job as an .xlsx with its pictures drawn. Node's side: a browser has other means to make a PNG. */
import { withPictures } from "../../pictures/withPictures";
import type { Book } from "../../workbooks/book";
import { withPrintFoot } from "../../workbooks/printFoot";
import { renderPng } from "../headless/renderPng";
import { writeXlsx, type WriteXlsxOptions } from "./writeXlsx";

/** Parameters as for {@link writeXlsx}. */
export const writeJob = (
  book: Book,
  options: Omit<WriteXlsxOptions, "renderPng"> = {},
): Promise<Uint8Array> => writeXlsx(withPictures(withPrintFoot(book)), { ...options, renderPng });
