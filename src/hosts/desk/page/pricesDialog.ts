/** A supplier's price list on the desk, shown before anything is written. */
import { pricesPreview, type PricesAsked } from "../../../pane/pricesPreview";
import type { PricePlan } from "../../../workbooks/prices/planPrices";
import { ask } from "./dialogs";

const TAKE = "Take the prices";

/** @returns undefined where nothing is to be taken */
export async function askForPrices(
  asked: Omit<PricesAsked, "heading" | "changed">,
): Promise<PricePlan | undefined> {
  let words: string | undefined;
  const button = (): HTMLButtonElement | null =>
    document.querySelector<HTMLButtonElement>(".prices-dialog button[value=take]");
  const show = (): void => {
    const take = button();
    if (!take) return;
    take.disabled = words === undefined;
    take.textContent = words ?? TAKE;
  };
  const preview = pricesPreview({
    ...asked,
    heading: "h3",
    changed: (now) => {
      words = now;
      show();
    },
  });
  const answer = ask(
    "Price list",
    [preview.element],
    [
      { label: TAKE, value: "take" },
      { label: "Cancel", value: "" },
    ],
    "desk-wide prices-dialog",
  );
  show();
  return (await answer) === "take" ? preview.plan() : undefined;
}
