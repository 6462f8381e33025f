/** What stands on the pages of a PDF, and where (pdftotext of poppler). */
import { spawnSync } from "node:child_process";

interface Word {
  readonly text: string;
  readonly left: number;
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

function pdfText(...words: string[]): string {
  const { stdout, status } = spawnSync("pdftotext", words, { encoding: "utf8", maxBuffer: 1 << 28 });
  if (status !== 0) throw new Error("pdftotext is missing: install poppler's tools (poppler-utils)");
  return stdout;
}

export function pagesOf(pdf: string): PaperPage[] {
  const texts = pdfText("-layout", pdf, "-").split("\f");
  const boxed = pdfText("-bbox", pdf, "-").split("<page ").slice(1);
  return boxed.map((text, index) => {
    const size = /width="([\d.]+)" height="([\d.]+)"/.exec(text)!;
    return {
      width: Number(size[1]),
      height: Number(size[2]),
      words: [
        ...text.matchAll(/xMin="([-\d.]+)" yMin="[-\d.]+" xMax="([-\d.]+)" yMax="([-\d.]+)">([^<]*)</g),
      ].map((found) => ({
        text: found[4]!,
        left: Number(found[1]),
        right: Number(found[2]),
        bottom: Number(found[3]),
      })),
      lines: texts[index]!.split("\n")
        .map((line) => line.replace(/\s+/g, " ").trim())
        .filter((line) => line !== ""),
    };
  });
}
