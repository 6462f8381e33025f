/** One thing that happens to a workbook in an office, and what a reviewer of the file must be told about it. */
export interface ExcelSave {
  id: string;
  /** What happened in the office. */
  what: string;
  /** Section of excel.md with its mark, or "from memory". */
  source: string;
  transform(bytes: Uint8Array): Uint8Array;
  /** True: the review must find exactly what it finds in the untouched file. */
  harmless: boolean;
  /** Short words for the one state to be named. */
  state?: string;
  /** What a person must learn, in plain words. */
  mustSay?: string;
  /** Whether the figures in the file can be trusted. */
  figures: "right" | "old" | "wrong" | "partly missing";
}
