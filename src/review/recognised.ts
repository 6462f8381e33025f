/**
 * A workbook whose file no longer says from which template it was made: many
 * programs drop a document's own properties when they save. Its About sheet
 * still says it.
 */
import { parseRange, address } from "../formula/address";
import type { Book } from "../workbooks/book";
import { withTodaysNames } from "../workbooks/renamedNames";
import { templates } from "../workbooks/templates";
import { blankBook } from "./blankBook";

const SAYS = "about_template";

/** A template's name as About shows it, and its version. */
const NAME_AND_VERSION = /^"?(.*), version (\w+)"?$/;

/**
 * @returns the same book, marked with the template that its About sheet names where it is not marked, and with the
 *   names of today beside those of its version
 */
export const recognised = (book: Book): Book => withTodaysNames(marked(book));

function marked(book: Book): Book {
  if (book.template !== "") return book;
  const [, name, templateVersion] = NAME_AND_VERSION.exec(saidBy(book) ?? "") ?? [];
  if (name === undefined || templateVersion === undefined) return book;
  const found = templates.find(
    (one) => NAME_AND_VERSION.exec(saidBy(blankBook(one.definition)) ?? "")?.[1] === name,
  );
  return found ? { ...book, template: found.id, templateVersion } : book;
}

function saidBy(book: Book): string | undefined {
  const name = book.names.find((one) => one.name === SAYS);
  const zone = name && parseRange(name.range);
  const cell =
    zone && book.sheets.find((one) => one.name === name.sheet)?.cells[address(zone.top, zone.left)];
  return cell?.formula ?? cell?.value?.toString();
}
