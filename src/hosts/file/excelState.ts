/**
 * What a file tells of the Excel that saved it, beside its cells: how it was
 * set to calculate, and the kinds of errors for which the format has no text.
 *
 * Sources: ECMA-376 part 1, 18.2.2 (calcPr); [MS-XLSX] 2.3.8 (rich values); the
 * numbers of the kinds of errors as others have seen them in files.
 */
import type { SavedState } from "../../workbooks/book";
import { unpacked, type ArchiveEntry } from "./archive";

/** `errorType` of a rich value that is an error. */
const KINDS: Readonly<Record<string, string>> = {
  8: "#SPILL!",
  9: "#CONNECT!",
  10: "#BLOCKED!",
  11: "#UNKNOWN!",
  12: "#FIELD!",
  13: "#CALC!",
  14: "#BUSY!",
};

export interface ExcelState {
  readonly saved: SavedState;
  /** The error of a cell by its `vm`; undefined for what is none. */
  readonly errorOf: (valueMetadata: number) => string | undefined;
}

/** @param entries as checked by checkedEntries */
export function excelState(bytes: Uint8Array, entries: readonly ArchiveEntry[]): ExcelState {
  const textOf = (name: string): string => {
    const entry = entries.find((one) => one.name.toLowerCase() === name.toLowerCase());
    return entry ? new TextDecoder().decode(unpacked(bytes, entry)) : "";
  };
  const codes = richErrors(textOf);
  return { saved: savedState(textOf("xl/workbook.xml")), errorOf: (number) => codes[number - 1] };
}

function savedState(workbook: string): SavedState {
  const attributes = /<(?:\w+:)?calcPr\b([^>]*)>/.exec(workbook)?.[1] ?? "";
  const value = (name: string): string | undefined =>
    new RegExp(`\\b${name}=["']([^"']*)["']`).exec(attributes)?.[1]?.toLowerCase();
  const isOn = (name: string): boolean => value(name) === "1" || value(name) === "true";
  const isOff = (name: string): boolean => value(name) === "0" || value(name) === "false";
  return {
    ...(value("calcMode") === "manual" && { manual: true }),
    ...(isOff("calcCompleted") && { unfinished: true }),
    ...(isOff("fullPrecision") && { asDisplayed: true }),
    ...(isOn("iterate") && { iterates: true }),
  };
}

/** @returns by value metadata, from the first, the code of the error that it is */
function richErrors(textOf: (name: string) => string): (string | undefined)[] {
  const metadata = textOf("xl/metadata.xml");
  const inside = (xml: string, tag: string): string =>
    new RegExp(`<(?:\\w+:)?${tag}\\b[^>]*>(.*?)</(?:\\w+:)?${tag}>`, "s").exec(xml)?.[1] ?? "";
  const values = inside(metadata, "valueMetadata");
  if (values === "") return [];
  const future = /<(?:\w+:)?futureMetadata\b[^>]*name="XLRICHVALUE".*?<\/(?:\w+:)?futureMetadata>/s.exec(
    metadata,
  );
  const valueAt = [...(future?.[0] ?? "").matchAll(/\brvb\b[^>]*\bi="(\d+)"/g)].map(([, at]) => Number(at));
  const structures = [
    ...textOf("xl/richData/rdrichvaluestructure.xml").matchAll(/<s\b[^>]*\bt="([^"]*)"[^>]*>(.*?)<\/s>/gs),
  ].map(([, kind, keys]) => ({
    kind,
    keys: [...keys!.matchAll(/<k\b[^>]*\bn="([^"]*)"/g)].map(([, key]) => key),
  }));
  const rich = [
    ...textOf("xl/richData/rdrichvalue.xml").matchAll(/<rv\b[^>]*\bs="(\d+)"[^>]*>(.*?)<\/rv>/gs),
  ].map(([, structure, held]) => {
    const { kind, keys } = structures[Number(structure)] ?? { kind: undefined, keys: [] };
    const fields = [...held!.matchAll(/<v\b[^>]*>([^<]*)<\/v>/g)].map(([, field]) => field!);
    const type = kind === "_error" ? fields[keys.indexOf("errorType")] : undefined;
    return type === undefined ? undefined : KINDS[type];
  });
  return [...values.matchAll(/<(?:\w+:)?rc\b[^>]*\bv="(\d+)"/g)].map(([, at]) => rich[valueAt[Number(at)]!]);
}

/** A sheet with the errors that have no text of their own written out, as the library reads others. */
export function withErrorsWrittenOut(xml: string, { errorOf }: ExcelState): string {
  // Few files have any, and a sheet may be tens of megabytes.
  if (!xml.includes("vm=")) return xml;
  return xml.replace(
    /(<(?:\w+:)?c\b[^>]*\bvm=["'](\d+)["'][^>]*>(?:(?!<\/(?:\w+:)?c>).)*?<(?:\w+:)?v>)#VALUE!(?=<)/gs,
    (whole, before: string, number: string) => {
      const code = errorOf(Number(number));
      return code === undefined ? whole : before + code;
    },
  );
}
