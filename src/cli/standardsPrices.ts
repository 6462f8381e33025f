/** A supplier's price list into the firm's standards, or into a job's own parts: shown, and written where --out says so. */
import { FileTrouble } from "../hosts/file/fileTrouble";
import { readTables } from "../hosts/file/readTables";
import { readXlsx } from "../hosts/file/readXlsx";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { writeJob } from "../hosts/file/writeJob";
import { recalculate } from "../hosts/headless/recalculate";
import { withEntries } from "../hosts/headless/withEntries";
import { entriesOf } from "../standards/entries";
import { choiceFrom } from "../workbooks/imported/columns";
import { jobInputsOf } from "../workbooks/jobInputsOf";
import type { ColumnKey } from "../workbooks/prices/headMeaning";
import { waits, type PriceAnswers } from "../workbooks/prices/list";
import { COLUMN_MEANINGS, mappedColumns } from "../workbooks/prices/mappedColumns";
import { othersInWords, partChangesInWords } from "../workbooks/prices/partChanges";
import { nearestParts } from "../workbooks/prices/nearestParts";
import { planPrices, type NewPlace } from "../workbooks/prices/planPrices";
import { PART_LISTS, priceBook, supplierNames, type PriceBook } from "../workbooks/prices/priceBook";
import { priceTables } from "../workbooks/prices/priceTable";
import { previewText } from "../workbooks/prices/priceWords";
import { pricesOf, type PricesFound } from "../workbooks/prices/pricesOf";
import { rememberedText } from "../workbooks/prices/remembered";
import { takesPrices } from "../workbooks/prices/takesPrices";
import { isoDate, sheetDateOf } from "../workbooks/sheetDate";
import { readDate } from "../workbooks/typed/readDate";
import { DATES } from "../workbooks/typed/typedKind";
import { EXIT, UsageTrouble, type Console } from "./console";
import { outFile } from "./copyJob";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";
import { plain } from "./plain";

export const PRICES_HELP = `rigsheet standards prices FIRM.xlsx LIST --supplier NAME [--out NEW.xlsx] …

Reads a supplier's price list (.csv, .txt or .xlsx) and shows what it changes:
new, changed and gone articles, prices five times off, and what has to be asked.
With --out the workbook is written with the prices taken. What is asked is left
out and named, never guessed. FIRM.xlsx may also be a job: then its own parts
take the prices. It is read, never written.

  --supplier NAME        whose list it is, as the workbook names the supplier
  --map "HEAD=MEANING"   what a column is, by its head or its letter, for example
                         "VPE=In a pack, or on a reel"; once for each column
  --sheet NAME           the sheet of a workbook that holds the list
  --currency EUR         the list's currency, where it names none
  --decimals , | .       the sign before decimals, where the list does not tell
  --days first | second  whether days or months come first in 03/04/2027
  --for unit | pack      what a price is for, where the list does not say
  --tax 19%              the tax that its prices hold (0% for none)
  --discount 15%         what comes off its prices (0% for none)
  --no-surcharge         prices are paid as they stand, whatever the list says
  --until 2027-03-31     the last day of prices for which the list names none;
                         otherwise a year from today
  --take 4,7 --leave 9   lines to take, or to leave, against what is shown
  --part "12=NAME"       put the new line 12 to this part; once for each line
  --new "13=passives:NAME"  make a new part of line 13, in this list of Parts:
                         ${PART_LISTS.join(", ")}
  --pin 4,12             use these lines' offers, whatever other suppliers ask
  --end NAME             end this part's offer, because the list has it no more
  -o, --out NEW.xlsx     where to write; without it nothing is written
  --force                replace NEW.xlsx if it exists

How a list is read is kept in the supplier's row of Suppliers, and used for its
next one.

Exit: 0 shown or written, and nothing was asked; 1 something is asked, or looks
wrong; 2 a file could not be used, and nothing was written.`;

export async function pricesCommand(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      supplier: { type: "string" },
      map: { type: "string", multiple: true, default: [] },
      sheet: { type: "string" },
      currency: { type: "string" },
      decimals: { type: "string" },
      days: { type: "string" },
      for: { type: "string" },
      tax: { type: "string" },
      discount: { type: "string" },
      "no-surcharge": { type: "boolean", default: false },
      until: { type: "string" },
      take: { type: "string" },
      leave: { type: "string" },
      part: { type: "string", multiple: true, default: [] },
      new: { type: "string", multiple: true, default: [] },
      pin: { type: "string" },
      end: { type: "string", multiple: true, default: [] },
      out: { type: "string", short: "o" },
      force: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
    "standards",
  );
  if (values.help) {
    console.out(PRICES_HELP);
    return EXIT.ok;
  }
  const [path, listPath, more] = positionals;
  if (path === undefined || listPath === undefined || more !== undefined)
    throw new UsageTrouble(
      "Name the workbook and the price list: rigsheet standards prices firm.xlsx list.csv --supplier NAME. See: rigsheet standards prices --help",
    );
  const out = values.out === undefined ? undefined : outFile(values.out, path, "xlsx", values.force);
  const today = sheetDateOf(new Date());
  const stored = recalculate(await readXlsx(await fileBytes(path)));
  const taking = takesPrices(stored.template);
  if (!taking)
    throw new FileTrouble(
      `${path} is neither a firm's standards nor a multi-room job, so it takes no price list. Give one of these.`,
    );
  const book = priceBook(jobInputsOf(taking.definition, stored), taking.hasOffers, today);
  const supplier = supplierOf(values.supplier, book);
  const file = priceTables(await readTables(await fileBytes(listPath)));
  const said = answersSaid(values);
  const guessed = pricesOf(file, book, supplier, said, today);
  const found =
    values.map.length === 0
      ? guessed
      : pricesOf(file, book, supplier, { ...said, columns: columnsSaid(values.map, guessed) }, today);
  const { list, comparison } = found;
  const text = previewText(found, book, supplier);
  console.out(text.split("\n").map(plain).join("\n"));

  const places = placesSaid(values.part, values.new, found, book);
  const taken = new Map([
    ...linesSaid(values.take, "--take", found).map((line) => [line, true] as const),
    ...linesSaid(values.leave, "--leave", found).map((line) => [line, false] as const),
    ...[...places.keys()].map((line) => [line, true] as const),
  ]);
  const until = values.until === undefined ? today + YEAR_DAYS : dateSaid(values.until);
  const plan = planPrices(
    book,
    comparison,
    {
      taken,
      placed: places,
      pinned: new Set(linesSaid(values.pin, "--pin", found)),
      ended: new Set(values.end),
      until,
    },
    {
      supplier,
      file: listPath.replace(/^.*[\\/]/, ""),
      today,
      columns: rememberedText(list.columns, found.answers),
      ...(list.currency !== undefined && { currency: list.currency }),
      ...(list.from !== undefined && { from: list.from }),
    },
  );
  for (const { line, said: why } of plan.refused) console.err(plain(`${listPath}, line ${line}: ${why}`));
  const asked = comparison.lines.some(({ kind }) => kind === "asked" || kind === "currency");
  const look = asked || plan.refused.length > 0 || comparison.lines.some(({ kind }) => kind === "suspicious");
  const open = waits(list.questions);
  console.out("");
  for (const line of [...partChangesInWords(plan.parts), ...othersInWords(plan.others)])
    console.out(plain(line));
  if (open) {
    console.out("Nothing was written: the list asks something first, see above.");
    return EXIT.look;
  }
  console.out(plain(plan.said));
  if (plan.edition !== undefined && out !== undefined)
    console.out(`The standards become edition ${plan.edition}, of today.`);
  if (until === today + YEAR_DAYS && comparison.lines.some(({ listed }) => listed.until === undefined))
    console.out(`Where the list names no last day, prices hold until ${isoDate(until)}: a year from today.`);
  if (out === undefined) {
    console.out("Nothing was written. Name a file to write: --out new.xlsx");
    return look ? EXIT.look : EXIT.ok;
  }
  if (plan.written + plan.ended === 0) {
    console.out("Nothing was written: no price of the list is taken.");
    return EXIT.look;
  }
  const written = withEntries(
    stored,
    taking.definition,
    entriesOf(taking.definition, book.inputs, plan.inputs),
  );
  if (typeof written === "string") throw new FileTrouble(`${path}: ${written}`);
  await saveAtomically(out, await writeJob(written));
  console.out(plain(`${out}: written. ${path} is as it was.`));
  return look ? EXIT.look : EXIT.ok;
}

const YEAR_DAYS = 365;

function supplierOf(name: string | undefined, book: PriceBook): string {
  if (name !== undefined && name.trim() !== "") return name.trim();
  const known = supplierNames(book);
  throw new UsageTrouble(
    `There is no --supplier. Say whose list it is${known.length > 0 ? `, for example --supplier "${known[0]}"` : ""}.`,
  );
}

interface Said {
  readonly sheet?: string | undefined;
  readonly currency?: string | undefined;
  readonly decimals?: string | undefined;
  readonly days?: string | undefined;
  readonly for?: string | undefined;
  readonly tax?: string | undefined;
  readonly discount?: string | undefined;
  readonly "no-surcharge": boolean;
}

function answersSaid(said: Said): PriceAnswers {
  const oneOf = (option: string, value: string | undefined, words: readonly string[]): string | undefined => {
    if (value !== undefined && !words.includes(value))
      throw new UsageTrouble(`--${option} is "${value}"; it is one of: ${words.join(" ")}`);
    return value;
  };
  const share = (option: string, value: string | undefined): number | undefined => {
    if (value === undefined) return undefined;
    const figure = Number(value.replace(/\s*%$/, "").replace(",", "."));
    if (!value.includes("%") || !(figure >= 0 && figure < 100))
      throw new UsageTrouble(`--${option} is "${value}"; give it with its sign, such as 19%`);
    return figure / 100;
  };
  const decimal = oneOf("decimals", said.decimals, [",", "."]) as "," | "." | undefined;
  const days = oneOf("days", said.days, ["first", "second"]);
  const basis = oneOf("for", said.for, ["unit", "pack"]) as "unit" | "pack" | undefined;
  const [tax, discount] = [share("tax", said.tax), share("discount", said.discount)];
  return {
    ...(said.sheet !== undefined && { sheet: said.sheet }),
    ...(said.currency !== undefined && { currency: said.currency }),
    ...(decimal && { decimal }),
    ...(days !== undefined && { order: days === "first" ? "dmy" : "mdy" }),
    ...(basis && { basis }),
    ...(tax !== undefined && { tax }),
    ...(discount !== undefined && { discount }),
    ...(said["no-surcharge"] && { surcharge: "none" as const }),
  };
}

function columnsSaid(maps: readonly string[], { list, table }: PricesFound): Map<number, ColumnKey | ""> {
  const columns = mappedColumns(list, table);
  const chosen = new Map<number, ColumnKey | "">();
  for (const text of maps) {
    const found = choiceFrom(text, columns, COLUMN_MEANINGS);
    if (typeof found === "string") throw new UsageTrouble(`--map ${text}: ${found}`);
    chosen.set(found.column, (found.choice.key ?? "") as ColumnKey | "");
  }
  // What is guessed of the others stays as it is.
  for (const { index, key } of list.columns) if (!chosen.has(index)) chosen.set(index, key ?? "");
  return chosen;
}

function linesSaid(text: string | undefined, option: string, { comparison }: PricesFound): number[] {
  const words = (text ?? "").split(/[\s,;]+/).filter((word) => word !== "");
  const known = new Set(comparison.lines.map(({ listed }) => listed.line));
  const bad = words.find((word) => !known.has(Number(word)));
  if (bad !== undefined)
    throw new UsageTrouble(`${option} names ${bad}; no line with a price has that number.`);
  return words.map(Number);
}

function placesSaid(
  parts: readonly string[],
  news: readonly string[],
  found: PricesFound,
  book: PriceBook,
): Map<number, NewPlace> {
  const places = new Map<number, NewPlace>();
  const cut = (text: string, option: string): [number, string] => {
    const at = text.indexOf("=");
    const [line] = linesSaid(at < 0 ? "" : text.slice(0, at), `--${option}`, found);
    if (line === undefined)
      throw new UsageTrouble(`--${option} is "${text}"; give a line and a name: --${option} "12=NAME"`);
    return [line, text.slice(at + 1).trim()];
  };
  const names = book.parts.map(({ name }) => name);
  for (const text of parts) {
    const [line, name] = cut(text, "part");
    const part = names.find((one) => one.toLowerCase() === name.toLowerCase());
    if (part === undefined) {
      const near = nearestParts(name, names);
      throw new UsageTrouble(
        `--part names “${name}”, which is no part of the workbook.${near.length > 0 ? ` Near it: ${near.map((one) => `“${one}”`).join(", ")}.` : ""}`,
      );
    }
    places.set(line, { part });
  }
  for (const text of news) {
    const [line, rest] = cut(text, "new");
    const at = rest.indexOf(":");
    const [list, name] = [rest.slice(0, Math.max(0, at)).trim(), rest.slice(at + 1).trim()];
    if (!PART_LISTS.includes(list) || name === "")
      throw new UsageTrouble(
        `--new is "${text}"; give a list and a name: --new "13=passives:8-way splitter". Lists: ${PART_LISTS.join(", ")}`,
      );
    places.set(line, { list, name });
  }
  return places;
}

function dateSaid(text: string): number {
  const read = readDate(text, DATES, {});
  if ("refused" in read) throw new UsageTrouble(`--until: ${read.refused}`);
  return read.value;
}
