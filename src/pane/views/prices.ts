/** A supplier's price list into the firm's standards, or into a job's parts: chosen, looked at, then taken in one step. */
import { entriesOf } from "../../standards/entries";
import { jobInputsOf } from "../../workbooks/jobInputsOf";
import { priceBook, type PriceBook } from "../../workbooks/prices/priceBook";
import { priceTables } from "../../workbooks/prices/priceTable";
import { takesPrices, type TakesPrices } from "../../workbooks/prices/takesPrices";
import { sheetDateOf } from "../../workbooks/sheetDate";
import { button, make, paragraph } from "../dom";
import { HostTrouble, type PaneHost } from "../host";
import { pricesPreview } from "../pricesPreview";
import type { View } from "../view";

export const prices: View = {
  id: "prices",
  label: "Price list",
  title: "Take a supplier's price list",
  build: ({ host, run }) => {
    const file = make("input", {
      id: "pane-prices",
      className: "pane-input",
      type: "file",
      accept: ".csv,.txt,.tsv,.xlsx",
    });
    const results = make("div", {});
    const show = async (chosen: File): Promise<string> => {
      const today = sheetDateOf(new Date());
      const { book, definition } = await bookOf(host, today);
      const tables = priceTables(await host.readTables(new Uint8Array(await chosen.arrayBuffer())));
      const take = button("", () => undefined, "pane-button pane-first");
      const preview = pricesPreview({
        file: tables,
        name: chosen.name,
        book,
        today,
        heading: "h2",
        changed: (words) => {
          take.hidden = words === undefined;
          take.textContent = words ?? "";
        },
      });
      take.onclick = (): void =>
        void run("Taking the prices…", async () => {
          const plan = preview.plan();
          if (!plan) return "No price of the list is taken.";
          const now = await bookOf(host, today);
          if (JSON.stringify(now.book.inputs) !== JSON.stringify(book.inputs))
            throw new HostTrouble("The workbook was changed since the list was read. Choose the list again.");
          const done = await host.enterAll(entriesOf(definition, book.inputs, plan.inputs), plan.said);
          results.replaceChildren();
          return done;
        });
      results.replaceChildren(preview.element, take);
      return "The preview shows what was understood. Nothing is written yet.";
    };
    file.addEventListener("change", () => {
      const chosen = file.files?.[0];
      if (!chosen) return;
      void run("Reading the price list…", async () => {
        results.replaceChildren();
        try {
          return await show(chosen);
        } finally {
          // The same file may be chosen again, put right.
          file.value = "";
        }
      });
    });
    return {
      body: [
        paragraph(
          "A price list is a table of articles with a head row: text or a workbook, with prices for one, for a hundred or for a pack. What it changes is shown first; what is not sure is asked and left out until it is answered. Into the firm's standards it goes as offers, of which the pinned or the cheapest sets the price of a part; into a job, to its own parts.",
        ),
        make("label", { htmlFor: file.id }, "Price list, .csv, .txt or .xlsx"),
        file,
        results,
      ],
      focus: file,
    };
  },
};

async function bookOf(host: PaneHost, today: number): Promise<TakesPrices & { readonly book: PriceBook }> {
  const stored = await host.readBook();
  const taking = takesPrices(stored.template);
  if (!taking)
    throw new HostTrouble(
      "This workbook is neither a firm's standards nor a multi-room job, so it takes no price list. Start one of these under Start.",
    );
  return { ...taking, book: priceBook(jobInputsOf(taking.definition, stored), taking.hasOffers, today) };
}
