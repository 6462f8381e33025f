/**
 * What a workbook file may measure. An .xlsx is a ZIP archive of XML that can
 * declare far more than it weighs, so every size is checked before anything is
 * unpacked. The caps lie well above the largest job (10,000 outlets: about
 * 4 MiB, 40 MiB unpacked).
 */
const MEBI = 1024 * 1024;

export const MAX_FILE_BYTES = 64 * MEBI;
/** All parts of the archive together, unpacked, as it declares them. */
export const MAX_UNPACKED_BYTES = 512 * MEBI;
export const MAX_PART_BYTES = 128 * MEBI;
export const MAX_ENTRIES = 2_000;
/** Unpacked over packed size of one part; sheets of equal rows reach about 60. */
export const MAX_RATIO = 200;
/** Small parts may be packed tighter than that without harm. */
export const RATIO_FREE_BYTES = 4 * MEBI;

/** A part beside the sheets that is looked into for what it tells: names, links, notes, drawings. */
export const MAX_FACT_BYTES = 8 * MEBI;
/** What stands in a sheet's part before its cells, or behind them. */
export const MAX_AROUND_CELLS = 2 * MEBI;
/** Things of one kind on a sheet, or in the file, that are told apart: notes, drawings, links, rules. */
export const MAX_FACTS = 2_000;
/** Of a note or another text beside the cells. */
export const MAX_FACT_TEXT = 2_000;

/** Different texts of one workbook, which lie in one part; a job of 10,000 outlets has some 30,000. */
export const MAX_STRINGS = 250_000;

export const MAX_SHEETS = 250;
/** Defined names; our templates have about 500. */
export const MAX_NAMES = 20_000;
/** Cell formats; Excel itself stops at 65,490 (Excel specifications and limits, from memory). */
export const MAX_STYLES = 65_490;
export const MAX_SHEET_ROWS = 200_000;
export const MAX_SHEET_COLUMNS = 2_000;
/** Cells of one workbook that hold or show something. */
export const MAX_CELLS = 5_000_000;
/** Rows times columns up to the last cell, in all sheets together. */
export const MAX_SLOTS = 20_000_000;

/** The format's own limits on one cell (ECMA-376 part 1; Excel specifications and limits). */
export const MAX_CELL_TEXT = 32_767;
export const MAX_FORMULA = 8_192;
/** As stored, with the prefixes of its functions, a formula may be longer. */
export const MAX_STORED_FORMULA = 4 * MAX_FORMULA;
export const MAX_SHEET_NAME = 31;
/** Texts of a data validation (ECMA-376 part 1, 18.3.1.32). */
export const MAX_PROMPT = 255;
export const MAX_PROMPT_TITLE = 32;
/** Choices written into the validation itself, with their commas. */
export const MAX_CHOICES_TEXT = 255;
/** A page's foot with all its codes may hold 255 characters; so much is left for each side. */
export const MAX_FOOT_SIDE = 110;

/** An export of jobs, with all of their revisions; it needs no ZIP64 below these. */
export const MAX_JOBS_FILE_BYTES = 512 * MEBI;
export const MAX_JOBS_PARTS = 60_000;
/** What lists the parts of such an export. */
export const MAX_JOBS_LIST_BYTES = 32 * MEBI;

/** A survey or a price list: a list of a supplier's whole stock has some 50,000 lines. */
export const MAX_TABLE_BYTES = 20 * MEBI;
export const MAX_TABLE_LINES = 100_000;
