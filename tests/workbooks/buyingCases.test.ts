/**
 * Packs, spares, orders and open ports by somebody who had seen no code (fixtures/buying): each case typed into the
 * sheets, offers into the firm's standards, and what the sheets answer.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { isBookError, type Book, type BookResult } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { startingPoint } from "../../src/workbooks/multiRoom/startingPoint";
import { summarise } from "../../src/workbooks/multiRoom/summarise";
import { namedColumn } from "../../src/workbooks/named";
import { standardsWorkbook } from "../../src/workbooks/standards/definition";
import { sampled } from "../support/tries";

type Value = number | string | null | boolean;
type Given = Readonly<Record<string, unknown>>;
interface Case {
  readonly id: string;
  readonly kind: "pack" | "spare" | "order" | "open port";
  readonly given: Given;
  readonly expect: Readonly<Record<string, unknown>>;
}
type Row = Record<string, number | string>;

const cases = JSON.parse(
  readFileSync(path.join(__dirname, "../fixtures/buying/buyingCases.json"), "utf8"),
) as Case[];

/** What stands in a row, without what is left blank. */
const row = (values: Readonly<Record<string, unknown>>): Row =>
  Object.fromEntries(
    Object.entries(values).filter(([, value]) => value !== null && value !== undefined),
  ) as Row;

const DAY = (iso: string): number => Math.round(Date.parse(`${iso}T00:00:00Z`) / 86_400_000) + 25_569;
const TODAY = DAY("2026-04-03");
const LONG = TODAY + 300;

const jobOf = (
  fields: Given,
  blocks: Readonly<Record<string, readonly Readonly<Record<string, unknown>>[]>>,
): Book =>
  recalculate(
    layOut(multiRoom, {
      fields: row({ ...startingPoint.fields, site_date: TODAY, site_until: TODAY + 30, ...fields }),
      blocks: {
        ...startingPoint.blocks,
        cables: [{ name: "A", like: "series 6", reel: 100, price: 1, until: LONG }],
        ...Object.fromEntries(Object.entries(blocks).map(([name, rows]) => [name, rows.map(row)])),
      },
    } as JobInputs),
  );

const failing = (book: Book): string[] =>
  summarise(book)
    .checks.filter(({ result }) => result !== "ok")
    .map(({ what }) => what);

const columnOf = (book: Book, name: string): BookResult[] =>
  namedColumn(book, name).map((cell) => cell ?? "");
const rowsShown = (book: Book, block: string, keys: readonly string[]): Record<string, BookResult>[] => {
  const columns = keys.map((key) => columnOf(book, `${block}_${key}`));
  return columns[0]!.flatMap((first, at) =>
    first === "" ? [] : [Object.fromEntries(keys.map((key, of) => [key, columns[of]![at]!]))],
  );
};

/** Any of several answers is right; null stands for none, or for an error. */
function isAmong(wanted: unknown, got: BookResult | undefined): boolean {
  return [wanted].flat().some((one) => {
    if (one === null) return got === undefined || got === "" || isBookError(got);
    if (typeof one === "number") return typeof got === "number" && Math.abs(got - one) < 5e-7;
    return got === one;
  });
}

const rooms = (count: number, plate: string, name = plate): Row[] =>
  Array.from({ length: count }, (_, at) => ({ outlet: `${name} ${at + 1}`, plate, cable: "A", run: 1 }));

/** What one part is bought as: by its outlets where it can be, else as so many of a job. */
function boughtAs(given: Given) {
  const { needed, pack } = given;
  const share = given["spare share"];
  const perHundred = given["price per 100"] as number | undefined;
  const price = given["price each"] ?? (perHundred === undefined ? 1 : perHundred / 100);
  const asPlate =
    given["price a pack"] === undefined &&
    Number.isInteger(needed) &&
    (needed as number) >= 0 &&
    (needed as number) <= 200;
  const book = asPlate
    ? jobOf(
        { site_spare_plates: share },
        {
          plates: [{ name: "part", loss_low: 1, loss_high: 1, price, until: LONG, pack }],
          rooms: rooms(needed as number, "part"),
        },
      )
    : jobOf(
        { site_spare_fittings: share },
        {
          fittings: [
            { name: "part", fixed: needed ?? 0, pack, price: given["price a pack"] ?? price, until: LONG },
          ],
        },
      );
  const block = asPlate ? "plates_bought" : "fittings_bought";
  const [found] = rowsShown(book, block, ["name", "needed", "spares", "quantity", "sum"]);
  const quantity = found!.quantity!;
  const size = typeof pack === "number" ? pack : 1;
  const known = typeof quantity === "number";
  const pieces = known ? (asPlate ? quantity : quantity * size) : undefined;
  return {
    failing: failing(book),
    spares: found!.spares!,
    packs: pieces === undefined ? undefined : pieces / size,
    bought: pieces,
    over: pieces === undefined ? undefined : pieces - Number(found!.needed) - Number(found!.spares),
    cost: found!.sum!,
  };
}

function packsOtherwise({ given, expect: wanted }: Case): string[] {
  const got = boughtAs(given);
  const sound = boughtAs({ ...given, pack: 1, "spare share": undefined, needed: 12 });
  const wrong = Object.entries(wanted).flatMap(([key, value]): string[] => {
    if (key === "said") return [];
    const found = got[key as "packs"] as BookResult | undefined;
    return isAmong(value, found) ? [] : [`${key} ${JSON.stringify(found)}, not ${JSON.stringify(value)}`];
  });
  const said = got.failing.some((one) => !sound.failing.includes(one) && !/outlets to price/i.test(one));
  const isSaid = [wanted.said].flat();
  if (wanted.said !== undefined && !isSaid.includes(said))
    wrong.push(said ? "said something" : "said nothing");
  return wrong;
}

interface OfferGiven {
  readonly part: string;
  readonly article: string | null;
  readonly price: number | null;
  readonly pack?: number;
  readonly "valid until"?: string;
}
interface OrderGiven {
  readonly parts: readonly Readonly<Record<string, Value>>[];
  readonly suppliers: readonly {
    readonly supplier: string;
    readonly currency: string;
    readonly offers: readonly OfferGiven[];
  }[];
}

/** The firm chooses among the offers; the job takes the part with the terms of the one in use. */
function ordersOf({ parts, suppliers }: OrderGiven) {
  const names = [...new Set(parts.map(({ part }) => String(part)))];
  const of = (part: string) => parts.filter((one) => one.part === part);
  const offers = suppliers.flatMap(({ supplier, currency, offers }) =>
    offers.map((offer) => ({
      ...{ part: offer.part.trim(), supplier, article: offer.article, each: offer.price, currency },
      ...{ priced: TODAY - 20, until: offer["valid until"] ? DAY(offer["valid until"]) : LONG },
      pinned: of(offer.part)[0]?.pinned === supplier ? "yes" : undefined,
      pack: offer.pack,
    })),
  );
  const standards = recalculate(
    layOut(standardsWorkbook, {
      fields: { site_currency: "EUR", standards_date: TODAY, site_unit: "m" },
      blocks: {
        suppliers: suppliers.map(({ supplier, currency }) => row({ name: supplier, currency })),
        plates: names.map((name) => row({ name, loss_low: 1, loss_high: 1, price: 1 })),
        offers: offers.map(({ pack: _, ...offer }) => row(offer)),
      },
    } as JobInputs),
  );
  const words = columnOf(standards, "offers_word").slice(1);
  const prices = columnOf(standards, "offers_price").slice(1);
  const terms = (part: string): Readonly<Record<string, unknown>> => {
    const own = offers
      .map((offer, at) => ({ offer, at }))
      .filter(({ offer }) => offer.part.toLowerCase() === part.toLowerCase());
    const used = own.find(({ at }) => words[at] === "in use");
    // Where none is in use the job keeps what it has: the only one that was ever offered, or its own price.
    const kept = used ?? (own.length === 1 ? own[0] : undefined);
    if (!kept) return { price: of(part)[0]!["list price"] ?? 1, until: LONG };
    const { supplier, article, priced, until, pack } = kept.offer;
    return { supplier, article, priced, until, pack, price: used ? prices[kept.at] : kept.offer.each };
  };
  const job = jobOf(
    { site_spare_plates: parts[0]!["spare share"], site_currency: "EUR" },
    {
      plates: names.map((name) => ({ name, loss_low: 1, loss_high: 1, ...terms(name) })),
      rooms: names.flatMap((name) =>
        rooms(
          of(name).reduce((sum, { needed }) => sum + Number(needed), 0),
          name,
        ),
      ),
    },
  );
  const lines = rowsShown(job, "orders", [
    "supplier",
    "article",
    "part",
    "quantity",
    "price",
    "note",
    "sum",
    "together",
  ]);
  return {
    words,
    lines: lines.filter(({ part }) => part !== "A"),
    packs: Object.fromEntries(offers.map(({ part, pack }) => [part, pack ?? 1])),
  };
}

interface Line {
  readonly part: string;
  readonly [key: string]: unknown;
}

function ordersOtherwise({ given, expect: wanted }: Case): string[] {
  const { lines, words, packs } = ordersOf(given as unknown as OrderGiven);
  const wrong: string[] = [];
  const said =
    lines.some(({ note }) => note !== "") ||
    words.some((word) => word === "expired" || word === "look") ||
    lines.some(({ supplier }) => supplier === "no supplier");
  const orders = [wanted.orders ?? {}].flat() as unknown as readonly Readonly<
    Record<string, readonly Line[]>
  >[];
  const misfits = orders.map((order) =>
    Object.entries(order).flatMap(([supplier, wantedLines]) => {
      const own = lines.filter((line) => line.supplier === supplier);
      const shortOf = wantedLines.flatMap((line) => {
        const found = own.find(({ part }) => part === line.part);
        if (!found) return [`${supplier} has no ${line.part}`];
        const full = { ...found, packs: Number(found.quantity) / Number(packs[line.part] ?? 1) };
        return Object.entries(line).flatMap(([key, value]) =>
          isAmong(value, (full as Record<string, BookResult>)[key])
            ? []
            : [
                `${line.part} ${key} ${JSON.stringify((full as Record<string, BookResult>)[key])}, not ${JSON.stringify(value)}`,
              ],
        );
      });
      return own.length > wantedLines.length ? [...shortOf, `${supplier} has more`] : shortOf;
    }),
  );
  wrong.push(...misfits.sort((a, b) => a.length - b.length)[0]!);
  for (const part of (wanted.nobody as string[] | undefined) ?? [])
    if (!lines.some((line) => line.part === part && line.supplier === "no supplier"))
      wrong.push(`${part} is not listed under no supplier`);
  if (typeof wanted.totals === "object" && wanted.totals)
    for (const [supplier, total] of Object.entries(wanted.totals)) {
      const together = lines.find((line) => line.supplier === supplier && line.together !== "")?.together;
      if (!isAmong(total, together))
        wrong.push(`${supplier}: ${JSON.stringify(together)} in all, not ${JSON.stringify(total)}`);
    }
  if (wanted.said !== undefined && ![wanted.said].flat().includes(said))
    wrong.push(said ? "said something" : "said nothing");
  return wrong;
}

interface DeviceGiven {
  readonly device: string;
  readonly kind: string;
  readonly ports: number | null;
  readonly used: number;
  readonly through?: string | null;
  readonly "port numbers"?: readonly number[];
}

/** Devices under head units of their own, a loop-through chain under one. */
function portsOtherwise({ given, expect: wanted }: Case): string[] {
  const devices = given.devices as readonly DeviceGiven[];
  const closes = given["open ports are closed with"];
  const below = new Map(devices.flatMap((one) => (one.through ? [[one.through, one.device] as const] : [])));
  const loops = devices.filter(({ kind }) => kind === "loop plate");
  const others = devices.filter(({ kind }) => kind !== "loop plate");
  const tops = devices.filter(({ device }) => !below.has(device));
  const headOf = (device: string): string => `H ${device}`;
  const job = jobOf(
    { site_closes: closes, site_usual_cable: "A", site_spare_fittings: given["spare share"] },
    {
      slots: [{ slot: "19E", obstacle: 5 }],
      passives: others.map(({ device, kind, ports }) => ({
        ...{ name: `part ${device}`, kind, ways: ports, price: 1, until: LONG, power: "all ports" },
        ...{ port_low: 8, port_high: 9 },
        ...(kind === "tap" && { through_low: 1, through_high: 1.5 }),
      })),
      units: [
        ...[{ name: "unit", bands: 8, out_low: 90, out_high: 88, least: 10, load: 0.1, kind: "A" }].map(
          (unit) => ({ ...unit, price: 1, until: LONG, standard: "EN 50494" }),
        ),
      ],
      plates: [
        { name: "plate", loss_low: 1, loss_high: 1, price: 1, until: LONG },
        ...[{ name: "loop", loss_low: 10, loss_high: 11, price: 1, until: LONG }].map((plate) => ({
          ...plate,
          ...{ through_low: 1, through_high: 1.5, power: "all ports" },
        })),
      ],
      resistors: [
        { name: "end resistor", blocks: "yes", price: 1, until: LONG, pack: given.pack },
        { name: "resistor, no block", blocks: "no", price: 1, until: LONG },
      ],
      dishes: tops.map(({ device }) => ({ name: `D ${device}`, size: 0.9 })),
      heads: tops.map(({ device }) => ({ id: headOf(device), type: "unit", dish: `D ${device}`, length: 5 })),
      branches: others.map(({ device }) => ({
        id: device,
        from: below.get(device) ?? headOf(device),
        device: `part ${device}`,
        length: 2,
      })),
      rooms: [
        ...loops.map(({ device }) => ({
          ...{ outlet: device, from: below.get(device) ?? headOf(device), run: 3, plate: "loop" },
          ...{ receiver: "receiver", quantity: 1 },
        })),
        ...others.flatMap((one) => {
          const hung = one.used;
          return Array.from({ length: hung }, (_, at) => ({
            ...{ outlet: `${one.device} ${at + 1}`, from: one.device, run: 4, plate: "plate" },
            ...{ receiver: "receiver", quantity: 1, port: one["port numbers"]?.[at] },
          }));
        }),
      ],
    },
  );
  const [found] = rowsShown(job, "resistors_bought", ["name", "needed", "spares", "quantity"]);
  const listed = rowsShown(job, "resistors_bought", ["name", "needed", "spares", "quantity"]);
  const loads = listed.map(({ needed }) => Number(needed)).reduce((a, b) => a + b, 0);
  const wrong: string[] = [];
  if (!isAmong(wanted.loads, loads)) wrong.push(`${loads} loads, not ${JSON.stringify(wanted.loads)}`);
  if (wanted.spares !== undefined && found!.spares !== wanted.spares)
    wrong.push(`${JSON.stringify(found!.spares)} spares`);
  if (wanted.bought !== undefined && found!.quantity !== wanted.bought)
    wrong.push(`${JSON.stringify(found!.quantity)} bought`);
  const troubles = [...columnOf(job, "branches_check_row"), ...columnOf(job, "rooms_check_row")].includes(
    "bad",
  );
  const ports = [...columnOf(job, "branches_check_port"), ...columnOf(job, "rooms_check_port")].some(
    (word) => word !== "" && word !== "ok" && word !== "closed",
  );
  if (wanted.said !== undefined && ![wanted.said].flat().includes(troubles || ports))
    wrong.push(troubles || ports ? "said something" : "said nothing");
  return wrong;
}

/** What the sheets do not know, so that the case cannot be typed in. */
const NOT_ASKED: Readonly<Record<string, string>> = {
  "pack-least-25": "offers have no least quantity",
  "spare-least": "a least count of spare parts is not asked for; only of spare runs",
  "order-least-quantity": "offers have no least quantity",
  "order-least-other-cheaper": "offers have no least quantity",
  "order-cable-reels": "held by hostel-60-equal of the cutting cases: REELS, plan and order have one count",
  "order-pinned-not-offered": "a pin stands on an offer: none can be put where there is no offer",
  "port-last-switch":
    "switches need dishes and feeders that the case does not tell; job 2 of the jobs as built has its four",
  "order-by-others": "mains sockets are counted as by others and stand on no list of parts",
};
/** Where we judge otherwise, and why. */
const JUDGED: Readonly<Record<string, string>> = {
  "order-cheaper-after-packs":
    "offers are compared by the price of one, as the case calls common; the order shows what the packs cost, 10.00",
  "order-same-part-twice":
    "a list that has a part twice is told of when it is read (workbooks/prices/twice.ts); of two offers on the sheet the cheaper is used, once",
};

test.each(
  sampled(cases, 2)
    .filter(({ id }) => !(id in NOT_ASKED))
    .map((one) => [one.id, one] as const),
)("%s", (id, one) => {
  const wrong =
    one.kind === "order"
      ? ordersOtherwise(one)
      : one.kind === "open port"
        ? portsOtherwise(one)
        : packsOtherwise(one);
  if (id in JUDGED) expect(wrong).not.toEqual([]);
  else expect(wrong).toEqual([]);
});
