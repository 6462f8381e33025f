/** A printable card for each outlet, each head unit and each dish with a feed of its own, from a computed multi-room workbook. */
import type { Book } from "../../book";
import { cardSheet } from "./cardSheet";
import { dishCards, DISH_CARD } from "./dishCard";
import { headCards, HEAD_CARD } from "./headCard";
import { outletCards, OUTLET_CARD } from "./outletCard";

/**
 * @returns a workbook of values to print, four by two outlets, two head units or dishes to a page;
 *   undefined where there is nothing to make cards of
 */
export function cardsOf(book: Book): Book | undefined {
  const outlets = outletCards(book);
  const heads = headCards(book);
  const dishes = outlets.length + heads.length === 0 ? [] : dishCards(book);
  if (outlets.length + heads.length === 0) return undefined;
  const cards: Book = {
    template: "",
    templateVersion: "",
    title: "Cards for the crew",
    looks: [],
    sheets: [],
    names: [],
  };
  if (dishes.length > 0) cards.sheets.push(cardSheet(cards, "Dish cards", dishes, DISH_CARD));
  if (heads.length > 0) cards.sheets.push(cardSheet(cards, "Head unit cards", heads, HEAD_CARD));
  if (outlets.length > 0) cards.sheets.push(cardSheet(cards, "Outlet cards", outlets, OUTLET_CARD));
  return cards;
}
