/**
 * The spreadsheet library, as the hosts that use it need to know it. It is
 * loaded from outside (a script of its own on the page, a module in Node) and
 * handed in, so that it stays a separate, unmodified, replaceable part.
 */
import type * as OSpreadsheet from "@odoo/o-spreadsheet";

export type GridLibrary = typeof OSpreadsheet;
export type GridModel = OSpreadsheet.Model;
/** The library's own document, as its model loads and exports it. */
export type GridDocument = ReturnType<GridModel["exportData"]>;

/** The version of the document format that we write; the library migrates older ones. */
export const DOCUMENT_VERSION = "19.3.2";
