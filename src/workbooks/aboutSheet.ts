/** The first sheet of every template: purpose, versions, how to fill it, key to the marks, what is left out, cautions. */
import { cautions, keyToTheMarks, madeAfter } from "./cautions";
import type { Field, SheetDefinition } from "./definition";

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
  const text = (heading: string, lines: readonly string[] | undefined) =>
    lines ? [{ kind: "text" as const, heading, lines }] : [];
  return {
    name: "About",
    kind: "about",
    intro: "What this workbook is for, how to fill it, what it leaves out, and the cautions.",
    print: { orientation: "portrait" },
    parts: [
      ...text("Purpose", words.purpose),
      {
        kind: "fields",
        heading: "Versions",
        fields: [
          { name: "about_template", label: "Template", formula: `"${words.template}"` },
          { name: "about_functions", label: "Functions", formula: "RIG.VERSION()" },
          ...(words.fields ?? []),
        ],
      },
      ...text("How to fill it", words.howToFill),
      keyToTheMarks,
      ...text("Conventions", words.conventions),
      ...text("What the model leaves out", words.leftOut),
      cautions,
      madeAfter,
    ],
  };
}
