/** A job brought up to date with the firm's standards: what differs, what that does to the total, then all that is ticked in one step. */
import type { Difference } from "../../standards/differences";
import { firmsStandards } from "../../standards/firmsStandards";
import { inWords, totalInWords } from "../../standards/inWords";
import { bringing } from "../../standards/bringing";
import { totalWith, upToDate, type UpToDate } from "../../standards/upToDate";
import type { Book } from "../../workbooks/book";
import { sheetDateOf } from "../../workbooks/sheetDate";
import { button, make, paragraph } from "../dom";
import { HostTrouble, type PaneHost } from "../host";
import type { View } from "../view";

export const standards: View = {
  id: "standards",
  label: "Standards",
  title: "Bring up to date with the firm's standards",
  build: ({ host, run }) => {
    const results = make("div", {});
    const look = (called: string, read: () => Promise<Book>): void =>
      void run("Looking at what differs…", async () => {
        results.replaceChildren();
        const firm = firmsStandards(await read(), called);
        if (typeof firm === "string") throw new HostTrouble(firm);
        const found = upToDate(await host.readBook(), firm);
        if (typeof found === "string") throw new HostTrouble(found);
        show(found);
        return inWords(found).summary;
      });
    const show = (found: UpToDate): void => {
      const chosen = new Map<number, HTMLInputElement>();
      const total = make("p", { role: "status" });
      const ticked = (): Difference[] =>
        found.differences.filter(({ number }) => chosen.get(number)?.checked === true);
      const tell = (): void => {
        total.textContent = totalOf(found, ticked(), host).words;
      };
      const bring = (): void =>
        void run("Bringing up to date…", async () => {
          await mustBeAsSeen(found, host);
          const all = ticked();
          const { after } = totalOf(found, all, host);
          const done = await host.bringUpToDate(
            bringing(found, all, { today: sheetDateOf(new Date()), after }),
          );
          results.replaceChildren();
          return done;
        });
      results.replaceChildren(
        ...partsOf(found, chosen, tell),
        total,
        button("Bring up to date", bring, "pane-button pane-first"),
      );
      tell();
    };
    const file = make("input", {
      id: "pane-standards",
      className: "pane-input",
      type: "file",
      accept: ".xlsx",
    });
    file.addEventListener("change", () => {
      const chosen = file.files?.[0];
      if (!chosen) return;
      look(chosen.name, async () => host.openFile(new Uint8Array(await chosen.arrayBuffer())));
      // The same file may be chosen again, put right.
      file.value = "";
    });
    const here = make("div", {});
    return {
      body: [
        paragraph(
          "What differs is shown first, line by line, and each can be left out. What was changed in this job by hand is kept unless you tick it; a part that the standards have no more stays.",
        ),
        here,
        make("label", { htmlFor: file.id }, "The firm's standards, .xlsx"),
        file,
        results,
      ],
      shown: () =>
        void host
          .standardsHere?.()
          .then((all) =>
            here.replaceChildren(
              ...all.map(({ label, read }) => button(`With ${label}`, () => look(label, read))),
            ),
          ),
      focus: file,
    };
  },
};

/** A cell that was typed meanwhile would make the list wrong. */
async function mustBeAsSeen(found: UpToDate, host: PaneHost): Promise<void> {
  const now = upToDate(await host.readBook(), found.standards);
  if (typeof now !== "string" && JSON.stringify(now.job) === JSON.stringify(found.job)) return;
  throw new HostTrouble("The job was changed since the standards were read. Choose them again.");
}

function totalOf(
  found: UpToDate,
  chosen: readonly Difference[],
  { compute }: PaneHost,
): { words: string; after?: number } {
  if (!compute)
    return {
      words:
        found.total === undefined
          ? "The job has no total yet."
          : `Total now ${totalInWords(found.total, undefined, found.currency).replace(/^Total | →.*$/g, "")}; what it is then is on Quote once it is done, and Undo takes it back.`,
    };
  const after = totalWith(found, chosen, compute);
  return { words: totalInWords(found.total, after, found.currency), ...(after !== undefined && { after }) };
}

function partsOf(found: UpToDate, chosen: Map<number, HTMLInputElement>, changed: () => void): HTMLElement[] {
  const { head, summary, notes, lists } = inWords(found);
  return [
    paragraph(head),
    paragraph(summary),
    ...notes.map((note) => paragraph(note)),
    ...lists.flatMap(({ heading, lines }) => [
      make("h2", {}, heading),
      make(
        "ul",
        { className: "pane-choices" },
        ...lines.map(({ number, words, canBeTaken, taken }) => {
          if (!canBeTaken) return make("li", {}, words);
          const tick = make("input", { type: "checkbox", id: `pane-difference-${number}`, checked: taken });
          tick.addEventListener("change", changed);
          chosen.set(number, tick);
          return make(
            "li",
            {},
            make("label", { htmlFor: tick.id, className: "pane-choice" }, tick, ` ${words}`),
          );
        }),
      ),
    ]),
  ];
}
