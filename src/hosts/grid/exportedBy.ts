/** A model's document as it stands, for keeping or for reading. */
import type { GridDocument, GridModel } from "./library";

/**
 * The library's public export packs the cells and opens a second model to prove
 * that they unpack, which takes four times as long; this one does not pack them.
 * Where a library has it no more, the public one stays (`gridContract.ts`).
 */
export const exportedBy = (model: GridModel): GridDocument =>
  (model as { _exportData?: GridModel["_exportData"] })._exportData === undefined
    ? model.exportData()
    : model._exportData(false);
