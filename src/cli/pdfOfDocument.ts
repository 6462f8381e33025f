import { FileTrouble } from "../hosts/file/fileTrouble";
import type { WriteDocument } from "./proposalJob";

/** Stands where pages are laid out. */
export const pdfOfDocument: WriteDocument = async () => {
  throw new FileTrouble("This Rigsheet cannot lay a document out on pages yet, so nothing was written.");
};
