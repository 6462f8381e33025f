/** A workbook of an older version as one of today's template: what would come of it, then the new workbook. */
import { upgrade as upgraded, type Upgrade } from "../../upgrade/upgrade";
import { inWords } from "../../upgrade/words";
import { button, make, paragraph } from "../dom";
import type { PaneHost } from "../host";
import type { View } from "../view";

export const upgrade: View = {
  id: "upgrade",
  label: "Upgrade",
  title: "Upgrade an older workbook",
  build: ({ host, run }) => {
    const results = make("div", {});
    const read = (): void =>
      void run("Looking at what an upgrade does…", async () => {
        results.replaceChildren();
        const done = upgraded(await host.readFile(), host.compute);
        if ("sentence" in done) return done.sentence;
        results.replaceChildren(
          ...partsOf(done, host),
          button(
            "Upgrade",
            () => void run("Upgrading…", () => host.takeUpgrade(done.book, done.from, done.to)),
            "pane-button pane-first",
          ),
        );
        return `This workbook is of version ${done.from || "unknown"}; today's is ${done.to}. Read what an upgrade does, then press Upgrade.`;
      });
    return {
      body: [
        paragraph(
          "Inputs are carried over by their names into a workbook of today's template. What has no place is listed; the price is shown before and after.",
        ),
        button("Look again", read),
        results,
      ],
      shown: read,
    };
  },
};

function partsOf(done: Upgrade, { compute }: PaneHost): HTMLElement[] {
  const { head, figures, checks, notes, elsewhere, notCarried } = inWords(done);
  return [
    paragraph(head),
    make("h2", {}, compute ? "Before and after" : "Before"),
    make("ul", {}, ...figures.map((line) => make("li", {}, line))),
    ...(compute
      ? []
      : [
          paragraph(
            "What it comes to after is worked out where the new workbook opens: hold its Total to this one.",
          ),
        ]),
    ...notes.map((note) => paragraph(note)),
    ...listed("Checks that did not say so before", checks),
    ...listed("Stands elsewhere now", elsewhere),
    make("h2", {}, `Not carried over (${notCarried.length})`),
    notCarried.length > 0
      ? make("ul", {}, ...notCarried.map((line) => make("li", {}, line)))
      : paragraph("Nothing: all of it has its place."),
  ];
}

const listed = (heading: string, lines: readonly string[]): HTMLElement[] =>
  lines.length === 0
    ? []
    : [
        make("h2", {}, `${heading} (${lines.length})`),
        make("ul", {}, ...lines.map((line) => make("li", {}, line))),
      ];
