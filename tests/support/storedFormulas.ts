/** The formulas of an .xlsx as its XML holds them, read without the product's reader. */
import { unzipSync } from "fflate";

export interface StoredFormula {
  readonly sheet: string;
  readonly at: string;
  /** As it is stored, without its equals sign. */
  readonly formula: string;
  /** Stored as an array, over these cells. */
  readonly array?: string;
  /** Marked as a dynamic array (the cell's `cm`). */
  readonly dynamic: boolean;
}

export interface StoredWorkbook {
  readonly formulas: readonly StoredFormula[];
  /** Names and the ranges that they stand for, without dollar signs and sheet. */
  readonly names: ReadonlyMap<string, string>;
  /** The file has the part that says what `cm` means. */
  readonly hasMetadata: boolean;
}

const plain = (text: string): string =>
  text
    .replace(/&lt;/g, "<")
    .replace(/&gt;/g, ">")
    .replace(/&quot;/g, '"')
    .replace(/&apos;/g, "'")
    .replace(/&amp;/g, "&");

export function storedFormulas(bytes: Uint8Array): StoredWorkbook {
  const parts = unzipSync(bytes);
  const text = (name: string): string => new TextDecoder().decode(parts[name]);
  const workbook = text("xl/workbook.xml");
  const sheets = [...workbook.matchAll(/<sheet [^>]*?name="([^"]*)"/g)].map(([, name]) => plain(name!));
  const formulas = sheets.flatMap((sheet, index) =>
    [
      ...text(`xl/worksheets/sheet${index + 1}.xml`).matchAll(
        /<c r="([A-Z]+\d+)"([^>]*)><f([^>]*)>([^<]*)<\/f>/g,
      ),
    ].map(([, at, cell, attributes, formula]): StoredFormula => {
      const array = / t="array"/.test(attributes!) ? / ref="([^"]*)"/.exec(attributes!)?.[1] : undefined;
      return {
        sheet,
        at: at!,
        formula: plain(formula!),
        ...(array !== undefined && { array }),
        dynamic: / cm="1"/.test(cell!),
      };
    }),
  );
  const names = new Map(
    [...workbook.matchAll(/<definedName name="([^"]*)"[^>]*>([^<]*)</g)].map(([, name, range]) => [
      name!.toUpperCase(),
      plain(range!).replace(/^.*!/, "").replaceAll("$", ""),
    ]),
  );
  return { formulas, names, hasMetadata: "xl/metadata.xml" in parts };
}
