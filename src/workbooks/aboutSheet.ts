/** The first sheet of every template: purpose, versions, how to fill it, key to the marks, what is left out, cautions. */
import { f, text } from "../formula/build";
import { cautions, keyToTheMarks, madeAfter } from "./cautions";
import type { Field, SheetDefinition } from "./definition";
import { about, STATE_REMEDIES, stateFormula } from "./aboutNames";
import { leftBlank, worked } from "./parts";

export interface AboutWords {
  /** The template's name and version, as About shows it. */
  readonly template: string;
  readonly purpose: readonly string[];
  /** Shown beside the versions. */
  readonly fields?: readonly Field[];
  readonly howToFill?: readonly string[];
  readonly conventions?: readonly string[];
  readonly leftOut: readonly string[];
}

export function aboutSheet(words: AboutWords): SheetDefinition {
  const lines = (heading: string, of: readonly string[] | undefined) =>
    of ? [{ kind: "text" as const, heading, lines: of }] : [];
  return {
    name: "About",
    kind: "about",
    intro: "What this workbook is for, how to fill it, what it leaves out, and the cautions.",
    print: { orientation: "portrait" },
    parts: [
      ...lines("Purpose", words.purpose),
      {
        kind: "fields",
        heading: "Versions",
        fields: [
          worked(about.template, text(words.template)),
          worked(about.functions, f`RIG.VERSION(${about.blank})`),
          leftBlank(about.blank),
          worked(about.state, stateFormula, { verdict: true }),
          ...(words.fields ?? []),
        ],
      },
      ...lines("Where the functions do not answer", STATE_REMEDIES),
      ...lines("How to fill it", words.howToFill),
      keyToTheMarks,
      ...lines("Conventions", words.conventions),
      ...lines("What the model leaves out", words.leftOut),
      cautions,
      madeAfter,
    ],
  };
}
