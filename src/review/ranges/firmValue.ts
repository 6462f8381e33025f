/** What the firm's standards have for one input of a job, as its row and its units ask for it. */
import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import { BY_THE_UNIT } from "../byTheUnit";
import type { Input, InputCell } from "../inputsIn";
import { namedCells, plainWord } from "../namedCells";
import type { FirmSays } from "./firm";

const { site, cables, fittings, crew } = estimate;

/** Prices are for as many as this column of their row says. */
const SIZE_OF: Readonly<Record<string, string>> = {
  [cables.price.name]: cables.reel.name,
  [fittings.price.name]: fittings.pack.name,
};

/** @returns undefined where they have none, or in another currency or unit of length */
export function firmValue(
  read: Book,
  firm: FirmSays,
  { name, block, unit = "" }: Input,
  { called, index }: InputCell,
): number | string | undefined {
  const isSame = (field: string): boolean =>
    plainWord(namedValue(read, field)) === plainWord(firm.fields[field]);
  const ofMoney = unit === "money" || name === crew.rate.name;
  const ofLength = unit === "m or ft" || BY_THE_UNIT.has(name);
  if ((ofMoney && !isSame(site.currency.name)) || (ofLength && !isSame(site.unit.name))) return undefined;
  if (block === undefined) return firm.fields[name];
  const list = firm.rows[block];
  const row = list && Object.hasOwn(list, called) ? list[called] : undefined;
  const value = row?.[name.slice(block.length + 1)];
  const sizes = SIZE_OF[name];
  if (sizes === undefined || typeof value !== "number") return value;
  const own = namedCells(read, sizes)[index]?.value;
  const usual = row?.[sizes.slice(block.length + 1)];
  return typeof own === "number" && typeof usual === "number"
    ? Number(((value / usual) * own).toFixed(2))
    : value;
}
