/** Starting a workbook. */
import { templates } from "../../workbooks/templates";
import { drawnBook } from "../../standards/drawOn";
import { button, make, paragraph } from "../dom";
import { HostTrouble, type StartedBook } from "../host";
import { EXAMPLE_LIST, LIST_FILES, PASTE_LIST, quoteFromList } from "../listedQuote";
import { startedBook, type Start } from "../startedBook";
import type { View } from "../view";

export const start: View = {
  id: "start",
  label: "New workbook",
  title: "Start a workbook",
  build: ({ host, run, preferences }) => {
    const choice = make(
      "select",
      { id: "pane-template", className: "pane-input" },
      ...templates.map(({ id, title }) => make("option", { value: id }, title)),
    );
    const here = make("input", { type: "checkbox", id: "pane-start-here" });
    const opened = (started: StartedBook): Promise<string> =>
      host.startHere && here.checked ? host.startHere(started) : host.startWorkbook(started);
    const begin = (kind: Start): void =>
      void run("Starting the workbook…", async () => {
        const template = templates[choice.selectedIndex]!;
        const started = startedBook(template, kind, await preferences());
        const note = await opened(started);
        const ready =
          kind === "empty"
            ? "The empty workbook is ready. Begin on the sheet Site."
            : "The demonstration is ready. Its job and its prices are invented.";
        return [ready, note].filter((sentence) => sentence !== "").join(" ");
      });
    const firm = make("input", {
      id: "pane-start-standards",
      className: "pane-input",
      type: "file",
      accept: ".xlsx",
    });
    firm.addEventListener("change", () => {
      const chosen = firm.files?.[0];
      if (!chosen) return;
      void run("Starting from the standards…", async () => {
        try {
          const book = drawnBook(
            await host.openFile(new Uint8Array(await chosen.arrayBuffer())),
            chosen.name,
            new Date(),
          );
          if (typeof book === "string") throw new HostTrouble(book);
          const note = await opened({ book });
          return ["The job is ready, with the firm's parts, rates and terms. Begin on the sheet Site.", note]
            .filter((sentence) => sentence !== "")
            .join(" ");
        } finally {
          // The same file may be chosen again, put right.
          firm.value = "";
        }
      });
    });
    const list = make("textarea", { id: "pane-start-list", className: "pane-input", rows: 4, dir: "auto" });
    const quote = make("input", {
      id: "pane-start-quote",
      className: "pane-input",
      type: "file",
      accept: LIST_FILES,
    });
    const take = (bytes: Uint8Array, name: string): void =>
      void run("Reading the quote…", async () => {
        const { book, said } = await quoteFromList({ bytes, name }, host);
        return [said, await opened({ book })].filter((sentence) => sentence !== "").join(" ");
      });
    quote.addEventListener("change", () => {
      const chosen = quote.files?.[0];
      if (chosen)
        void chosen.arrayBuffer().then((buffer) => {
          take(new Uint8Array(buffer), chosen.name);
          quote.value = "";
        });
    });
    return {
      body: [
        make("label", { htmlFor: choice.id }, "Template"),
        choice,
        ...(host.startHere
          ? [
              make(
                "label",
                { htmlFor: here.id, className: "pane-choice" },
                here,
                " As sheets of this workbook, not as a new one",
              ),
            ]
          : []),
        make(
          "div",
          { className: "pane-row" },
          button("Empty", () => begin("empty"), "pane-button pane-first"),
          button("Demonstration", () => begin("demonstration")),
        ),
        make("label", { htmlFor: firm.id }, "Or a multi-room estimate from the firm's standards, .xlsx"),
        firm,
        make(
          "details",
          {},
          make("summary", {}, "Or a review of somebody else's quote"),
          make("label", { htmlFor: list.id }, PASTE_LIST),
          list,
          make(
            "div",
            { className: "pane-row" },
            button("Take the text", () => take(new TextEncoder().encode(list.value), "")),
            button("Show an invented one", () => (list.value = EXAMPLE_LIST)),
          ),
          make("label", { htmlFor: quote.id }, "Or as a file: .csv, .txt, .tsv or .xlsx"),
          quote,
        ),
        make(
          "dl",
          { className: "pane-facts" },
          make("dt", {}, "Empty"),
          make("dd", {}, "Your job: unit and currency from Settings, usual figures, no prices."),
          make("dt", {}, "Demonstration"),
          make("dd", {}, "An invented job with its prices, and faults in it to find."),
        ),
        paragraph("Fill the boxed cells, sheet by sheet. Then press Check.", "pane-quiet"),
      ],
    };
  },
};
