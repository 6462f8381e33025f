import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import { SHARED_BLOCKS, SHARED_FIELDS } from "../../workbooks/standards/shared";
import { BY_THE_UNIT } from "../byTheUnit";
import type { Finding, Undoing } from "../finding";
import { undoingOf } from "../grouped";
import { inputsIn, type Input, type InputCell } from "../inputsIn";
import { figure, hasJob, isBlank, namedCells, plainWord, type NamedCell } from "../namedCells";
import { onPurpose } from "../onPurpose";
import { takenFrom, type FirmSays } from "../ranges/firm";
import type { Rule } from "../rule";

const { site, cables, fittings, labour, crew } = estimate;

/** So many times the standards' figure, or so small a part of it: less is a price of today, or a house of its own. */
const FAR = 1.5;
/** A small pack costs more a piece than a large one. */
const FAR_OF_A_PACK = 3;
/** A price rounded to its cents. */
const SAME_TAX = 0.002;
/** Shares of money are the firm's policy, and vary less. */
const FAR_SHARE = 1.2;
/** What a maker says of a part is one figure for all jobs, but for rounding. */
const FAR_OF_A_PART = 1.1;
const LEAST_DB = 0.3;
/** Where a whole column differs the standards are of another time, and that is told once. */
const MANY = 6;

/** Limits that the firm holds its work to, and which way is looser; how much is nothing. */
const LIMITS: Readonly<Record<string, { readonly looser: "lower" | "higher"; readonly beyond: number }>> = {
  [site.level_low.name]: { looser: "lower", beyond: 0 },
  [site.level_high.name]: { looser: "higher", beyond: 0 },
  [site.clearance.name]: { looser: "lower", beyond: 0 },
  [site.availability.name]: { looser: "lower", beyond: 0 },
  [site.noise_margin.name]: { looser: "lower", beyond: 0 },
  [site.cold.name]: { looser: "higher", beyond: 4 },
  [site.hot.name]: { looser: "lower", beyond: 4 },
  [estimate.commissioningLimits.tolerance.name]: { looser: "higher", beyond: 0 },
  [estimate.commissioningLimits.volts_tolerance.name]: { looser: "higher", beyond: 0 },
};
const SHARES: ReadonlySet<string> = new Set(
  [site.contingency, site.overhead, site.margin, site.tax, crew.rate].map(({ name }) => name),
);
/** The job's own in any case: its lengths' doubts and wishes, what it has in stock, its dates and its words. */
const OF_THE_JOB: ReadonlySet<string> = new Set([
  ...[site.run_tolerance, site.level_design, site.currency, site.cut_at, site.unit, site.decimals].map(
    ({ name }) => name,
  ),
  ...[site.usual_cable, site.usual_plate, site.usual_route].map(({ name }) => name),
]);
const OF_THE_OFFER = /_(?:supplier|priced|until|article)$/;
/** Choices of these lists are the maker's or the firm's, not the job's. */
const LISTS_OF_FACTS: ReadonlySet<string> = new Set([
  "passives",
  "units",
  "supplies",
  "plates",
  "feeds",
  "resistors",
  "receivers",
  "plans",
  "cables",
]);
const FACTS: ReadonlySet<string> = new Set(
  [labour.piece, fittings.piece, site.tax_on, site.rounding].map(({ name }) => name),
);
/** How many of it there are: each column counts it in a way of its own. */
const COUNTS: Readonly<Record<string, readonly string[]>> = {
  labour: [
    ...[labour.per_outlet, labour.per_branch, labour.per_head, labour.fixed, labour.per_floor],
    ...[labour.per_day, labour.piece],
  ].map(({ name }) => name),
  fittings: [fittings.per_outlet, fittings.per_branch, fittings.per_head, fittings.fixed, fittings.piece].map(
    ({ name }) => name,
  ),
};

export const unlikeStandards: Rule = {
  id: "unlike the firm's standards",
  reason:
    "A job that draws on the firm's standards and has another figure has it on purpose, or by a slip of a key; a limit looser than the firm's is nobody's purpose.",
  example:
    "A margin of 28.2 % where the firm has 22 %: its mark-up was typed; 47 dBµV set to 37 for one far outlet.",
  needs: {
    what: "a firm's standards",
    areThere: ({ read, options }) => (options.standards ?? takenFrom(read)) !== undefined,
  },
  find: ({ read, definition, options }) => {
    const firm = options.standards ?? takenFrom(read);
    if (!firm || !hasJob(read)) return [];
    const meant = onPurpose(read);
    const inputs = new Map(inputsIn(read, definition).map((input) => [input.name, input]));
    const sameMoney =
      plainWord(namedValue(read, site.currency.name)) === plainWord(firm.fields[site.currency.name]);
    const sameUnit = plainWord(namedValue(read, site.unit.name)) === plainWord(firm.fields[site.unit.name]);
    const at = (name: string): Input[] => (inputs.has(name) ? [inputs.get(name)!] : []);
    const names = [
      ...SHARED_FIELDS.map(({ name }) => name),
      ...SHARED_BLOCKS.flatMap(({ name, columns }) => columns.map(({ key }) => `${name}_${key}`)),
    ];
    return names
      .filter((name) => !OF_THE_JOB.has(name) && !OF_THE_OFFER.test(name))
      .flatMap(at)
      .filter(
        ({ unit, namesRows, name }) =>
          !namesRows &&
          (sameMoney || !(unit === "money" || name === crew.rate.name)) &&
          (sameUnit || !(unit === "m or ft" || BY_THE_UNIT.has(name))),
      )
      .flatMap((input) => {
        const slipped = oneRowOff(read, firm, input, meant);
        if (slipped) return [slipped];
        return together(
          input,
          input.cells
            .filter(({ called }) => !meant(called))
            .flatMap((cell) => unlike(read, firm, input, cell)),
        );
      });
  },
};

/** So many rows in a run that hold the figures of the row above or below were pasted one row off. */
const A_RUN = 3;

function oneRowOff(
  read: Book,
  firm: FirmSays,
  { name, block, label, cells }: Input,
  meant: (what: string) => boolean,
): Finding | undefined {
  if (block === undefined) return undefined;
  const rows = cells
    .filter(({ inRow, value }) => inRow && typeof value === "number")
    .map((cell) => ({ cell, theirs: rowOf(read, firm, block, cell)?.[name.slice(block.length + 1)] }));
  for (const by of [-1, 1]) {
    const run = rows.filter(({ cell, theirs }, at) => {
      const beside = rows[at + by]?.theirs;
      return (
        typeof theirs === "number" && cell.value === beside && cell.value !== theirs && !meant(cell.called)
      );
    });
    const [first] = run;
    // Two of one figure beside each other may leave a gap in it.
    if (!first || run.length < A_RUN || rows.indexOf(run.at(-1)!) - rows.indexOf(first) > run.length)
      continue;
    return {
      weight: "doubtful",
      place: first.cell.place,
      message: `${run.length} figures of “${label}” from ${first.cell.called} on are those that the firm's standards (${firm.called}) have one row ${by < 0 ? "above" : "below"}.`,
      expected: "The figures of their own rows: the column was pasted one row off.",
      undoing: run.map(({ cell, theirs }) => ({ place: cell.place, value: theirs! })),
      effect: "All that they count is priced by another row's figure.",
      remedy: "Paste the column again, or take the standards' figures.",
    };
  }
  return undefined;
}

function together(input: Input, found: readonly Finding[]): Finding[] {
  if (found.length < MANY) return [...found];
  const undone = found.map(undoingOf);
  return [
    {
      ...found[0]!,
      ...(undone.every((one) => one !== undefined) && { undoing: undone.flat() }),
      message: `${found[0]!.message.replace(/\.$/, "")}; so are ${found.length - 1} more of “${input.label}”.`,
      remedy: "Bring the job up to date with the standards, or look whether a column was moved.",
    },
  ];
}

function unlike(read: Book, firm: FirmSays, input: Input, cell: InputCell): Finding[] {
  const { name, block, label, unit = "" } = input;
  const row = block === undefined ? undefined : rowOf(read, firm, block, cell);
  if (block !== undefined && row === undefined) return [];
  const key = block === undefined ? "" : name.slice(block.length + 1);
  const theirs = block === undefined ? firm.fields[name] : row![key];
  const { value } = cell;
  const of = block === undefined ? label : `${label} of ${cell.called}`;
  const shown = (one: unknown): string =>
    typeof one !== "number"
      ? `“${String(one)}”`
      : unit.startsWith("share")
        ? `${figure(one * 100)} %`
        : figure(one);
  const say = (meant: number | string | undefined, expected: string, effect: string): Finding[] => [
    {
      weight: "doubtful",
      place: cell.place,
      message: `${of} is ${isBlank(value) ? "blank" : shown(value)}; the firm's standards (${firm.called}) have ${theirs === undefined ? "none" : shown(theirs)}.`,
      expected,
      ...(meant !== undefined && { meant }),
      effect,
      remedy: "Take the standards' figure, or say on Log why this job has its own.",
    },
  ];
  const counts = COUNTS[block ?? ""];
  if (counts?.includes(name)) {
    const other = otherCounts(counts);
    // A job may count a part otherwise than the standards, but hardly as they do and otherwise too; a figure may slide over.
    const lost = countsOfTheirs(counts);
    const theyCount = counts.some((one) => Boolean(row![one.slice(block!.length + 1)]));
    const isAnother =
      block === "labour" ||
      (lost.length === 0 ? other && theyCount : lost.length === 1 && lost[0]!.value === value);
    if (theirs === undefined && !isBlank(value) && value !== 0 && isAnother)
      return say(undefined, "Blank, as in the standards.", "It is counted in one more way.").map((one) => ({
        ...one,
        // What slid out of its column goes back into it.
        undoing: [{ place: cell.place }, ...lost],
      }));
    if (theirs !== undefined && theirs !== 0 && isBlank(value) && !other)
      return say(theirs, `${shown(theirs)}, as in the standards.`, "Nothing counts it.");
  }
  if (theirs === undefined) return [];
  if (typeof theirs === "string" || typeof value === "string") {
    const isFact =
      FACTS.has(name) ||
      (block !== undefined &&
        LISTS_OF_FACTS.has(block) &&
        ["choice", "named"].includes(input.input.rule.kind));
    return isFact &&
      !isBlank(value) &&
      typeof value === typeof theirs &&
      plainWord(value) !== plainWord(theirs)
      ? say(theirs, shown(theirs), "It is counted, taxed or worked out otherwise.")
      : [];
  }
  if (typeof value !== "number" || value === theirs) return [];
  const limit = LIMITS[name];
  if (limit) {
    const by = limit.looser === "lower" ? theirs - value : value - theirs;
    return by > limit.beyond
      ? say(theirs, `${shown(theirs)}, or a stricter one.`, "What the firm would not hand over passes.")
      : [];
  }
  if (SHARES.has(name)) {
    const markUp = theirs / (1 - theirs);
    const isMarkUp = name === site.margin.name && Math.abs(value - markUp) < 0.002;
    if (isMarkUp)
      return say(
        theirs,
        `${shown(theirs)}: ${shown(Number(markUp.toFixed(3)))} is the mark-up on cost that gives this margin of the price.`,
        "The whole price goes by it.",
      );
    return value === 0 || far(value, theirs, FAR_SHARE)
      ? say(theirs, shown(theirs), "The whole price goes by it.")
      : [];
  }
  if (name === cables.price.name || name === fittings.price.name) return [...ofPacks()];
  if (name === cables.reel.name || name === fittings.pack.name)
    return (far(value, theirs, FAR) && row![PRICE] === priceBeside(read, name, cell)) ||
      isForOne(value, theirs, Number(priceBeside(read, name, cell)), Number(row![PRICE]))
      ? say(theirs, shown(theirs), "The price beside it is that of the standards' size.")
      : [];
  const isOfPart = block !== undefined && LISTS_OF_FACTS.has(block) && unit !== "money";
  if (isOfPart)
    return far(value, theirs, FAR_OF_A_PART) &&
      Math.abs(value - theirs) > (unit === "dB" || unit === "dBµV" ? LEAST_DB : 0)
      ? say(theirs, shown(theirs), "What is predicted for everything behind it goes by it.")
      : [];
  const tax = namedValue(read, site.tax.name);
  if (unit === "money" && typeof tax === "number" && tax > 0 && Math.abs(value / theirs - 1 - tax) < SAME_TAX)
    return say(
      theirs,
      `${shown(theirs)}: this is the same with the tax, and prices are without.`,
      "Tax is paid on tax.",
    );
  if (unit === "money" && isOfNextRow())
    return say(
      theirs,
      shown(theirs),
      "It is the very price of the row beside it, which the standards have otherwise.",
    );
  return far(value, theirs, FAR) ? say(theirs, shown(theirs), "The price or the prediction goes by it.") : [];

  /** A price that was taken from the row above or below. */
  function isOfNextRow(): boolean {
    return [-1, 1].some((by) => {
      const next = input.cells.find(({ index }) => index === cell.index + by);
      const nextTheirs = next && block !== undefined ? rowOf(read, firm, block, next)?.[key] : undefined;
      return next?.value === value && nextTheirs === value && nextTheirs !== theirs;
    });
  }

  /** Whether something else counts the row. */
  function otherCounts(counts: readonly string[]): boolean {
    return counts.some((one) => {
      const beside = one === name ? undefined : columnOf(read, one, cell);
      return beside !== undefined && beside !== "" && beside !== 0;
    });
  }

  /** What the standards count it by, and the job does not. */
  function countsOfTheirs(counts: readonly string[]): Undoing[] {
    return counts.flatMap((one) => {
      const meant = row![one.slice(block!.length + 1)];
      const beside = namedCells(read, one)[cell.index];
      return beside && isBlank(beside.value) && meant !== undefined && meant !== 0
        ? [{ place: beside.place, value: meant }]
        : [];
    });
  }

  /** By the metre and by the piece, so that another reel or pack is none. */
  function ofPacks(): Finding[] {
    const size = name === cables.price.name ? "reel" : "pack";
    const [own, usual] = [sizeBeside(read, name, cell), Number(row![size] ?? 1)];
    const factor = own === usual ? FAR : FAR_OF_A_PACK;
    if (!own || !usual || !far((value as number) / own, (theirs as number) / usual, factor)) return [];
    const ofOwnSize = Number((((theirs as number) / usual) * own).toFixed(2));
    // A price for one, where that of the reel or pack is asked.
    const ofAll = Number(((value as number) * own).toFixed(2));
    const meant = own > 1 && !far(ofAll, ofOwnSize, FAR_OF_A_PACK) ? ofAll : ofOwnSize;
    // The size of the reel or pack is what is off where the price is the standards' own, or near it.
    if (value === theirs || isForOne(own, usual, value as number, theirs as number)) return [];
    if (own === theirs && value === usual) {
      const place = sizeCell(read, name, cell)!.place;
      return say(undefined, `${shown(theirs)} for ${figure(usual)}: the two are exchanged.`, EACH_BOUGHT).map(
        (one) => ({
          ...one,
          undoing: [
            { place: cell.place, value: theirs as number },
            { place, value: usual },
          ],
        }),
      );
    }
    return say(meant, own === usual ? shown(theirs) : `${figure(meant)} for ${figure(own)}.`, EACH_BOUGHT);
  }
}

const PRICE = "price";
/** Between one and a pack; other packs are smaller or larger by less. */
const FAR_OF_ONE = 10;
/** A size that is no size of such a pack, beside a price that is. */
const isForOne = (size: number, theirSize: number, price: number, theirPrice: number): boolean =>
  far(size, theirSize, FAR_OF_ONE) && !far(price, theirPrice, FAR);
/** What dividing leaves under the last digit. */
const SAME = 1e-9;
const far = (a: number, b: number, factor: number): boolean =>
  a <= 0 || b <= 0 ? a !== b : Math.max(a / b, b / a) >= factor - SAME;

const columnOf = (read: Book, name: string, { index }: InputCell): unknown =>
  namedCells(read, name)[index]?.value;
const EACH_BOUGHT = "Each that is bought carries it into the price.";
const sizeCell = (read: Book, name: string, { index }: InputCell): NamedCell | undefined =>
  namedCells(read, name === cables.price.name ? cables.reel.name : fittings.pack.name)[index];
const sizeBeside = (read: Book, name: string, cell: InputCell): number =>
  Number(sizeCell(read, name, cell)?.value ?? 1) || 0;
const priceBeside = (read: Book, name: string, cell: InputCell): unknown =>
  columnOf(read, name === cables.reel.name ? cables.price.name : fittings.price.name, cell);

/** A band plan's row is known by its plan and band. */
function rowOf(read: Book, { rows }: FirmSays, block: string, cell: InputCell) {
  const list = rows[block];
  if (!list || !cell.inRow) return undefined;
  const key =
    block === "plans"
      ? `${cell.called}, ${String(columnOf(read, estimate.plans.band.name, cell))}`
      : cell.called;
  return Object.hasOwn(list, key) ? list[key] : undefined;
}
