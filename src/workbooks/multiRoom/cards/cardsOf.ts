/** A printable card for each outlet and each head unit, from a computed multi-room workbook. */
import type { Book } from "../../book";
import { cardSheet } from "./cardSheet";
import { headCards, HEAD_CARD } from "./headCard";
import { outletCards, OUTLET_CARD } from "./outletCard";

/**
 * @returns a workbook of values to print, four by two outlets and two head units to a page;
 *   undefined where there is nothing to make cards of
 */
export function cardsOf(book: Book): Book | undefined {
  const outlets = outletCards(book);
  const heads = headCards(book);
  if (outlets.length + heads.length === 0) return undefined;
  const cards: Book = {
    template: "",
    templateVersion: "",
    title: "Cards for the crew",
    looks: [],
    sheets: [],
    names: [],
  };
  if (heads.length > 0) cards.sheets.push(cardSheet(cards, "Head unit cards", heads, HEAD_CARD));
  if (outlets.length > 0) cards.sheets.push(cardSheet(cards, "Outlet cards", outlets, OUTLET_CARD));
  return cards;
}
