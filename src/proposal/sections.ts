/** The parts of a proposal that show the job: what is offered, the schedule of rooms, prices, options. */
import { QUOTE_LINES } from "../compare/order/quoteFigures";
import { estimate } from "../workbooks/multiRoom/names";
import { NO_RECEIVER } from "../workbooks/multiRoom/roomTypes";
import type { DocumentColumn, DocumentPart, DocumentRow } from "./document";
import type { Shown } from "./shown";

const { quote, rooms, types, slots, dishes, site, options, optionsQuoted, provisional, taxesQuoted, price } =
  estimate;

const heading = (text: string): DocumentPart => ({ kind: "heading", text });
/** What is looked up begins a page of its own. */
const annex = (text: string): DocumentPart => ({ kind: "heading", text, onNewPage: true });
/** With a head above them, where there are any. */
const under = (text: string, parts: readonly DocumentPart[]): readonly DocumentPart[] =>
  parts.length === 0 ? [] : [heading(text), ...parts];
const paragraph = (text: string, is?: "caution" | "note"): DocumentPart => ({
  kind: "paragraph",
  text,
  ...(is && { is }),
});
const listOf = (items: readonly string[]): readonly DocumentPart[] =>
  items.length === 0 ? [] : [{ kind: "list", items }];
const words = (label: string, share: number): DocumentColumn => ({ label, align: "left", share });
const money = (label: string, share: number): DocumentColumn => ({ label, align: "right", share });

export { heading, listOf, paragraph, under };

/** A room in a row of Rooms, with all its outlets. */
interface Room {
  readonly floor: string;
  readonly room: string;
  readonly types: readonly string[];
  readonly outlets: readonly string[];
  readonly receivers: readonly string[];
}

/** In the order of Rooms; what stands twice there, floor and name, is one room. */
function roomsIn({ down }: Shown): Room[] {
  const [floor, room, outlet, receiver, quantity, type] = [
    rooms.floor_used,
    rooms.room_used,
    rooms.outlet_used,
    rooms.receiver_used,
    rooms.quantity_used,
    rooms.type,
  ].map(down) as [
    readonly string[],
    readonly string[],
    readonly string[],
    readonly string[],
    readonly string[],
    readonly string[],
  ];
  const found = new Map<string, Room>();
  outlet.forEach((name, row) => {
    if (name === "") return;
    const key = JSON.stringify([floor[row], room[row]]);
    const { outlets = [], receivers = [], types: kinds = [] } = found.get(key) ?? {};
    const kind = type[row] ?? "";
    found.set(key, {
      floor: floor[row] ?? "",
      room: room[row] ?? "",
      outlets: [...outlets, name],
      receivers: [...receivers, connected(receiver[row] ?? "", quantity[row] ?? "")],
      types: kind === "" || kinds.includes(kind) ? kinds : [...kinds, kind],
    });
  });
  return [...found.values()];
}

const connected = (receiver: string, quantity: string): string =>
  receiver === "" || receiver === NO_RECEIVER || quantity === "0"
    ? "spare: nothing is connected yet"
    : quantity === "" || quantity === "1"
      ? receiver
      : `${quantity} × ${receiver}`;

function byFloor(all: readonly Room[]): Map<string, Room[]> {
  const floors = new Map<string, Room[]>();
  for (const room of all) floors.set(room.floor, [...(floors.get(room.floor) ?? []), room]);
  return floors;
}

/** What is offered in words; every figure stands in a cell. */
export function offer(shown: Shown): readonly DocumentPart[] {
  const { at, down } = shown;
  const scope = at(quote.scope);
  const [slot, service] = [down(slots.slot), down(slots.service)];
  const [dish, size, location, mounting] = [dishes.name, dishes.size, dishes.location, dishes.mounting].map(
    down,
  ) as [readonly string[], readonly string[], readonly string[], readonly string[]];
  return under("What is offered", [
    ...(scope === ""
      ? []
      : [
          paragraph(
            `Satellite reception over shared cables, from the ${dish.filter(Boolean).length > 1 ? "dishes" : "dish"} to each outlet. In all: ${scope}.`,
          ),
        ]),
    ...listOf([
      ...slot.flatMap((name, row) => (name === "" ? [] : [after(`Orbital slot ${name}`, service[row])])),
      ...dish.flatMap((name, row) =>
        name === ""
          ? []
          : [
              after(
                `Dish ${name}`,
                [metres(size[row] || at(site.dish)), location[row], mounting[row]].filter(Boolean).join(", "),
              ),
            ],
      ),
      ...ofTypesOrFloors(shown),
    ]),
  ]);
}

const metres = (size: string): string => (size === "" ? "" : `${size} m`);
const after = (what: string, more: string | undefined): string => (more ? `${what}: ${more}` : what);

function ofTypesOrFloors(shown: Shown): string[] {
  const { down } = shown;
  const [name, used, receiver] = [down(types.name), down(types.used), down(types.receiver)];
  const byType = name.flatMap((type, row) =>
    type === "" || used[row] === "" || used[row] === "0"
      ? []
      : [after(type, [outletsOf(used[row] ?? ""), forWhat(receiver[row] ?? "")].filter(Boolean).join(", "))],
  );
  const all = roomsIn(shown);
  const left = byType.length === 0 ? all : all.filter((room) => room.types.length === 0);
  const floors = [...byFloor(left)];
  // So many names are looked up in the schedule, not read.
  if (left.length > MOST_ROOMS_NAMED)
    return [...byType, `Floors: ${floors.map(([floor]) => floor || "without a name").join("; ")}`];
  return [
    ...byType,
    ...floors.map(([floor, own]) =>
      after(
        floor === "" ? "Rooms" : floor,
        own.map(({ room, outlets }) => room || outlets.join(", ")).join("; "),
      ),
    ),
  ];
}

const MOST_ROOMS_NAMED = 40;
const outletsOf = (count: string): string => `${count} ${count === "1" ? "outlet" : "outlets"}`;
const forWhat = (receiver: string): string =>
  receiver === "" || receiver === NO_RECEIVER ? "" : `for: ${receiver}`;

export function schedule(shown: Shown): readonly DocumentPart[] {
  const all = roomsIn(shown);
  if (all.length === 0) return [];
  const hasTypes = all.some((room) => room.types.length > 0);
  const columns = [
    words(rooms.room.words.head, 3),
    ...(hasTypes ? [words(rooms.type.words.head, 2)] : []),
    words("Outlet", 2),
    words("Connected", 3),
  ];
  const rows = [...byFloor(all)].flatMap(([floor, own]): DocumentRow[] => [
    ...(floor === ""
      ? []
      : [{ cells: columns.map((_, at) => (at === 0 ? floor : "")), is: "group" as const }]),
    ...own.map(({ room, types: kinds, outlets, receivers }) => ({
      cells: [
        room,
        ...(hasTypes ? [kinds.join(", ")] : []),
        outlets.join(", "),
        // Said once where it is the same at each outlet.
        (new Set(receivers).size === 1 ? receivers.slice(0, 1) : receivers).join("; "),
      ],
    })),
  ]);
  return [annex("Room schedule"), { kind: "table", columns, rows }];
}

/** @param lines whether each line of the price is shown, or only the sums */
export function prices({ at, down }: Shown, lines: boolean): readonly DocumentPart[] {
  const currency = at(quote.currency);
  const row = (label: string, value: string, is?: DocumentRow["is"]): readonly DocumentRow[] =>
    value === "" ? [] : [{ cells: [label, value], ...(is && { is }) }];
  const classes = down(taxesQuoted.name).flatMap((name, at) => (name === "" ? [] : [at]));
  const rate = at(site.tax);
  /** The discount is taken off what the lines come to. */
  const before = (key: (typeof QUOTE_LINES)[number]): readonly DocumentRow[] =>
    key === "discount" && at(quote.discount) !== ""
      ? row(price.before.words.label, at(price.before), "sum")
      : [];
  const reasons = [...(lines ? [quote.discount_reason] : []), quote.tax_reason].flatMap((of) =>
    at(of) === "" ? [] : [paragraph(`${of.words.label}: ${at(of)}`, "note")],
  );
  return under("Price", [
    {
      kind: "table",
      columns: [words("What", 3), money(currency, 1)],
      rows: [
        ...(lines
          ? QUOTE_LINES.flatMap((key) => [...before(key), ...row(quote[key].words.label, at(quote[key]))])
          : []),
        ...row(quote.net.words.label, at(quote.net), "sum"),
        ...row(
          classes.length > 0
            ? quote.tax.words.label
            : `${quote.tax.words.label}, ${rate} of ${at(price.taxable)}`,
          at(quote.tax),
        ),
        ...row(quote.total.words.label, at(quote.total), "total"),
      ],
    },
    ...reasons,
    ...(classes.length === 0
      ? []
      : [
          heading("Tax by class"),
          {
            kind: "table" as const,
            columns: [
              words(taxesQuoted.name.words.head, 3),
              money(taxesQuoted.taxable.words.head, 2),
              money(taxesQuoted.rate.words.head, 1),
              money(taxesQuoted.tax.words.head, 2),
            ],
            rows: [
              ...classes.map((at) => ({
                cells: [taxesQuoted.name, taxesQuoted.taxable, taxesQuoted.rate, taxesQuoted.tax].map(
                  (of) => down(of)[at] ?? "",
                ),
              })),
              ...(at(quote.tax_usual) === ""
                ? []
                : [{ cells: ["usual", at(price.taxable), rate, at(quote.tax_usual)] }]),
            ],
          },
        ]),
  ]);
}

export function provisionalSums({ at, down }: Shown): readonly DocumentPart[] {
  const [name, sum] = [down(provisional.name), down(provisional.sum)];
  const rows = name.flatMap((work, row) => (work === "" ? [] : [{ cells: [work, sum[row] ?? ""] }]));
  if (rows.length === 0) return [];
  return under("Provisional sums", [
    paragraph("For work that cannot be priced yet. They are in the price above, without tax."),
    { kind: "table", columns: [words(provisional.name.words.head, 3), money(at(quote.currency), 1)], rows },
  ]);
}

export interface Offered {
  readonly parts: readonly DocumentPart[];
  /** Something may be ticked. */
  readonly open: boolean;
  /** Options whose sum is not known. */
  readonly unpriced: readonly string[];
}

/**
 * Options and alternates, those that are not in the price with a box to tick.
 *
 * @param lines whether the lines of the price are shown, and a discount among them
 */
export function optionsOffered({ at, down }: Shown, lines: boolean): Offered {
  const [name, sum, total, word] = [
    optionsQuoted.name,
    optionsQuoted.sum,
    optionsQuoted.total,
    optionsQuoted.word,
  ].map(down) as [readonly string[], readonly string[], readonly string[], readonly string[]];
  const [instead, quantity] = [down(options.instead), down(options.quantity)];
  const given = name.flatMap((option, row) => (option === "" ? [] : [row]));
  const chosen = (row: number): boolean => word[row] === "yes";
  const hasAlternates = instead.some((one) => one !== "");
  const group = (head: string, own: readonly number[]): DocumentRow[] =>
    own.length === 0
      ? []
      : [
          // Under a heading of the same word.
          ...(head === OPTIONS && !hasAlternates ? [] : [{ cells: [head, "", ""], is: "group" as const }]),
          ...own.map((row): DocumentRow => ({
            cells: [
              counted(name[row]!, quantity[row] ?? ""),
              sum[row] ?? "",
              chosen(row) ? "in the total" : (total[row] ?? ""),
            ],
            ...(!chosen(row) && { box: true as const }),
          })),
        ];
  const open = given.filter((row) => !chosen(row));
  const rows = [
    ...group(
      OPTIONS,
      open.filter((row) => !instead[row]),
    ),
    ...group(
      "Alternates",
      open.filter((row) => instead[row]),
    ),
    ...group("In the price already", given.filter(chosen)),
  ];
  return {
    parts: under(
      hasAlternates ? "Options and alternates" : OPTIONS,
      rows.length === 0
        ? []
        : [
            ...(open.length === 0
              ? []
              : [
                  paragraph(
                    `Tick what is wanted. Each total has its tax, and is with that one alone; for several, add up what each adds to the total.${!lines || at(quote.discount) === "" ? "" : " The discount is taken off them as well, where the total is with them."}`,
                  ),
                ]),
            {
              kind: "table",
              columns: [
                words(optionsQuoted.name.words.head, 3),
                money(`${optionsQuoted.sum.words.head}, ${at(quote.currency)}`, 1),
                money(optionsQuoted.total.words.head, 1),
              ],
              rows,
            },
          ],
    ),
    open: open.length > 0,
    unpriced: given.filter((row) => sum[row] === "" || sum[row] === "open").map((row) => name[row]!),
  };
}

const OPTIONS = "Options";
const counted = (name: string, quantity: string): string =>
  quantity === "" || quantity === "1" ? name : `${quantity} × ${name}`;
