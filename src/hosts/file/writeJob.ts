/** {@link jobFile} in Node. */
import type { Book } from "../../workbooks/book";
import { renderPng } from "../headless/renderPng";
import { jobFile } from "./jobFile";
import type { WriteXlsxOptions } from "./writeXlsx";

export const writeJob = (
  book: Book,
  options: Omit<WriteXlsxOptions, "renderPng"> = {},
): Promise<Uint8Array> => jobFile(book, renderPng, options);
