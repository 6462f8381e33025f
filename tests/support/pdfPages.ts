/** What stands on the pages of a PDF, and where, read by poppler's tools. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";

export interface Word {
  readonly text: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
export interface PaperPage {
  readonly width: number;
  readonly height: number;
  readonly words: readonly Word[];
  /** Its lines, each blank of any length one. */
  readonly lines: readonly string[];
}

function said(program: string, ...words: string[]): string {
  const { stdout, status } = spawnSync(program, words, { encoding: "utf8", maxBuffer: 1 << 28 });
  if (status !== 0) throw new Error(`${program} is missing: install poppler's tools (poppler-utils)`);
  return stdout;
}

const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };
const plain = (text: string): string =>
  text.replace(/&(#39|amp|lt|gt|quot|apos);/g, (_, name: string) => (name === "#39" ? "'" : ENTITIES[name]!));

export function pagesOf(pdf: string): PaperPage[] {
  const texts = said("pdftotext", "-layout", pdf, "-").split("\f");
  const boxed = said("pdftotext", "-bbox", pdf, "-").split("<page ").slice(1);
  return boxed.map((text, index) => {
    const size = /width="([\d.]+)" height="([\d.]+)"/.exec(text)!;
    return {
      width: Number(size[1]),
      height: Number(size[2]),
      words: [
        ...text.matchAll(/xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">([^<]*)</g),
      ].map((found) => ({
        text: plain(found[5]!),
        left: Number(found[1]),
        top: Number(found[2]),
        right: Number(found[3]),
        bottom: Number(found[4]),
      })),
      lines: texts[index]!.split("\n")
        .map((line) => line.replace(/\s+/g, " ").trim())
        .filter((line) => line !== ""),
    };
  });
}

/** What is read of a PDF that is no file yet. */
export interface ReadPdf {
  readonly pages: readonly PaperPage[];
  /** `pdfinfo`: what it says of itself, a line each. */
  readonly info: string;
  /** Its structure with the texts in it, indented. */
  readonly structure: string;
  /** Of each font: is it embedded. */
  readonly fonts: readonly { readonly name: string; readonly isEmbedded: boolean }[];
}

/** Each part is read when it is asked for: of a table of many rows the structure alone takes poppler half a minute. */
export function readPdf(bytes: Uint8Array): ReadPdf {
  const reading = <T>(read: (file: string) => T): (() => T) => {
    let found: { readonly as: T } | undefined;
    return () => {
      found ??= { as: withFile(bytes, read) };
      return found.as;
    };
  };
  const pages = reading(pagesOf);
  const info = reading((file) => said("pdfinfo", file));
  const structure = reading((file) => said("pdfinfo", "-struct-text", file));
  const fonts = reading((file) =>
    said("pdffonts", file)
      .split("\n")
      .slice(2)
      .filter(Boolean)
      .map((line) => ({ name: line.split(" ")[0]!, isEmbedded: /Identity-H +yes/.test(line) })),
  );
  return {
    get pages() {
      return pages();
    },
    get info() {
      return info();
    },
    get structure() {
      return structure();
    },
    get fonts() {
      return fonts();
    },
  };
}

function withFile<T>(bytes: Uint8Array, read: (file: string) => T): T {
  const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-pdf-"));
  try {
    const file = path.join(folder, "read.pdf");
    writeFileSync(file, bytes);
    return read(file);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A reader gives a box the whole height of its type; letters that meet do so in the middle of it. */
const MIDDLE = 0.25;
/** What the last digits of a box may be out, in points. */
const TOUCH = 0.4;

/** @returns pairs of words of a page that stand over each other */
export function overlapping({ words }: PaperPage): string[] {
  const found: string[] = [];
  const sorted = [...words].sort((a, b) => a.left - b.left);
  const middle = ({ top, bottom }: Word): readonly [number, number] => {
    const cut = MIDDLE * (bottom - top);
    return [top + cut, bottom - cut];
  };
  sorted.forEach((one, index) => {
    const [top, bottom] = middle(one);
    for (const other of sorted.slice(index + 1)) {
      if (other.left > one.right - TOUCH) break;
      const [from, to] = middle(other);
      if (from < bottom && to > top) found.push(`${one.text} / ${other.text}`);
    }
  });
  return found;
}

/** @returns words of a page outside of its margins, in points */
export const outside = (
  { words, width, height }: PaperPage,
  margins: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number },
): string[] =>
  words
    .filter(
      (word) =>
        word.left < margins.left - TOUCH ||
        word.right > width - margins.right + TOUCH ||
        (word.top + word.bottom) / 2 < margins.top ||
        (word.top + word.bottom) / 2 > height - margins.bottom,
    )
    .map(({ text }) => text);
