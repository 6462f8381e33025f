import { readdir } from "node:fs/promises";
import path from "node:path";

export interface OtherFile {
  readonly file: string;
  /** Why it isn't marked, and what to do. */
  readonly reason: string;
}

/** What systems and programs leave behind is nobody's sheet. */
export const isLeftBehind = (file: string): boolean => {
  const parts = file.split(/[\\/]/);
  return (
    parts.some((part) => part.startsWith(".") || part === "__MACOSX") ||
    /^(?:~\$.*|Thumbs\.db|desktop\.ini|.*\.tmp)$/i.test(parts.at(-1)!)
  );
};

const SAVE_AS = "Open it in a spreadsheet program and save it as an Excel workbook (.xlsx), then mark again.";

/** By the file's ending. */
const REASONS: readonly (readonly [RegExp, string])[] = [
  [/\.(?:zip|7z|rar|gz|tar)$/i, "It is a packed folder. Unpack it first, then mark again."],
  [
    /\.(?:jpe?g|png|heic|gif|webp|tiff?|bmp|pdf)$/i,
    "It is a picture or a print. Mark it by hand with the key, or ask for the sheet as .xlsx.",
  ],
  [
    /\.(?:docx?|odt|rtf|pages)$/i,
    "It is a document, no sheet. Ask for the sheet as .xlsx, or mark it by hand.",
  ],
  [/\.(?:ods|fods|csv|tsv|xls|xlsm|xlsb|xltx|xltm|numbers)$/i, `Only .xlsx is read. ${SAVE_AS}`],
];

/** @returns the files of a folder and below that are no .xlsx, with why they aren't marked */
export async function otherFiles(folder: string): Promise<OtherFile[]> {
  const inside = await readdir(folder, { recursive: true, withFileTypes: true });
  return inside
    .filter((entry) => entry.isFile() && !/\.xlsx$/i.test(entry.name))
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)))
    .filter((file) => !isLeftBehind(file))
    .sort()
    .map((file) => ({
      file,
      reason: REASONS.find(([ending]) => ending.test(file))?.[1] ?? `It is no .xlsx. ${SAVE_AS}`,
    }));
}
