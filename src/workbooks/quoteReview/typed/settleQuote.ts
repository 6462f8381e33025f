/** What the lines and labels of a typed quote come to together: which sum is the net, which lines are work, what stands in the price. */
import { isoDate } from "../../sheetDate";
import type { Figure } from "./quoteNumbers";
import * as says from "./quoteWords";
import {
  NUMBER_KEYS,
  type LinesAre,
  type NumberKey,
  type Remark,
  type TextKey,
  type TypedLine,
  type TypedQuote,
} from "./typedQuote";

export interface DraftLine extends TypedLine {
  readonly percent?: number;
  readonly isDiscount?: true;
  readonly currency?: string;
  /** Of two figures the second may be the price of one. */
  readonly perhapsEach?: true;
}

export interface DraftFigure {
  readonly key: NumberKey | "subtotal" | "taxes" | "rounding";
  readonly figures: readonly Figure[];
  readonly label: string;
  readonly line: number;
  readonly text: string;
  readonly section: string | undefined;
}

export interface Draft {
  readonly source: string;
  readonly lines: readonly DraftLine[];
  readonly figures: readonly DraftFigure[];
  readonly facts: Readonly<Record<string, number>>;
  readonly words: Readonly<Partial<Record<TextKey, string>>>;
  readonly until: number | undefined;
  /** The day of the quote. */
  readonly dateOf: number | undefined;
  /** Plain words of its sentences and headings. */
  readonly prose: readonly string[];
  readonly remarks: readonly Remark[];
}

const CENTS = 100;
const cents = (value: number): number => Math.round(value * CENTS) / CENTS;
/** Sums of many lines, each rounded by itself. */
const SAME = 0.051;
const same = (one: number | undefined, other: number | undefined): boolean =>
  one !== undefined && other !== undefined && Math.abs(one - other) <= SAME;
/** What a line comes to when it is worked again; undefined for a lump sum. */
const workedOut = ({ quantity, each, per = 1, discount = 0 }: TypedLine): number | undefined =>
  quantity === undefined || each === undefined
    ? undefined
    : cents(((quantity * each) / per) * (1 - discount));
const valueOf = (line: TypedLine): number => line.sum ?? workedOut(line) ?? 0;
const sumOf = (lines: readonly TypedLine[]): number =>
  cents(lines.reduce((all, line) => all + valueOf(line), 0));
const moneyIn = (figures: readonly Figure[]): number | undefined => {
  const plain = figures.filter(({ isPercent }) => !isPercent);
  return (plain.findLast(({ isMoney }) => isMoney) ?? plain.at(-1))?.value;
};
const percentIn = (figures: readonly Figure[]): number | undefined =>
  figures.find(({ isPercent }) => isPercent)?.value;
const share = (percent: number): number => Number((percent / 100).toPrecision(12));

export function settled(draft: Draft): TypedQuote {
  return new Settling(draft).quote();
}

class Settling {
  private readonly figures: Partial<Record<NumberKey, number>> = {};
  private readonly remarks: Remark[] = [];
  private readonly lumps: { key: NumberKey; line: TypedLine }[] = [];
  private lines: DraftLine[];
  /** Told as a line of its own, behind the tax. */
  private rounding = 0;
  private taxesAgain: number | undefined;
  private severalRates = false;
  private insideTax: number | undefined;

  constructor(private readonly draft: Draft) {
    this.lines = [...draft.lines];
  }

  quote(): TypedQuote {
    const { draft, figures } = this;
    for (const one of draft.figures) this.take(one);
    this.sumsByArithmetic();
    this.taxes();
    this.percents();
    this.sums();
    this.work();
    const linesAre = this.linesAre();
    if (linesAre === "the whole price") this.takeLumps();
    this.taxInside();
    this.facts();
    this.contradictions();
    const sections = new Set(this.lines.map(({ section }) => section));
    const headings = draft.remarks.filter(
      ({ text, kind }) => kind !== "words" || !sections.has(text.replace(/[:\s]+$/, "")),
    );
    return {
      source: draft.source,
      lines: this.lines.map(
        ({ percent: _p, isDiscount: _d, perhapsEach: _e, currency: _c, ...line }) => line,
      ),
      linesAre,
      figures: Object.fromEntries(
        NUMBER_KEYS.flatMap((key) => (figures[key] === undefined ? [] : [[key, figures[key]]])),
      ),
      words: draft.words,
      ...(draft.until !== undefined && { until: draft.until }),
      inFeet: this.lines.some(
        ({ unit = "", part }) => /^(?:ft|feet|foot)\.?$/.test(unit) && says.IS_CABLE.test(says.wordsOf(part)),
      ),
      ...this.prices(),
      ...(this.currency() !== undefined && { currency: this.currency() }),
      ...(this.insideTax !== undefined && { taxInside: this.insideTax }),
      ...(this.rounding !== 0 && { rounding: this.rounding }),
      remarks: [...headings, ...this.remarks].sort((a, b) => a.line - b.line),
    };
  }

  private put(key: NumberKey, value: number | undefined): void {
    if (value !== undefined) this.figures[key] ??= value;
  }

  private off({ line, text }: DraftFigure, why: string): void {
    this.remarks.push({ line, text, why, kind: "off" });
  }

  private take(one: DraftFigure): void {
    const { key, figures, label, line, section } = one;
    const percent = percentIn(figures);
    const plain = figures.filter(({ isPercent }) => !isPercent);
    const value = moneyIn(figures);
    const lump = (): void => {
      if (value !== undefined)
        this.lumps.push({
          key: key as NumberKey,
          line: {
            line,
            part: label.replace(/[:=\s]+$/, ""),
            sum: value,
            ...(section !== undefined && { section }),
          },
        });
    };
    switch (key) {
      case "outlets":
      case "tuners":
      case "bands":
      case "heads":
      case "cable":
        return this.put(key, (plain.find(({ isMoney }) => !isMoney) ?? plain[0])?.value);
      case "margin":
      case "overhead":
      case "contingency": {
        const bare = plain.find(({ isMoney, value: own }) => !isMoney && own > 0 && own < 100)?.value;
        const alone = plain.length === 1 ? bare : undefined;
        this.put(
          key,
          percent !== undefined
            ? share(percent)
            : alone === undefined
              ? undefined
              : alone < 1
                ? alone
                : share(alone),
        );
        if (plain.length > 0 && (percent !== undefined || alone === undefined)) lump();
        return;
      }
      case "hours":
      case "labour":
        return this.takeWork(one);
      case "rate":
        return this.put(key, value);
      case "materials":
      case "extras":
        this.put(key, value);
        return lump();
      case "cost":
      case "price":
      case "taxed":
        return this.put(key, value);
      case "net":
      case "tax":
      case "total":
      case "subtotal":
      case "taxRate":
      case "taxes":
        return;
      case "rounding":
        this.rounding = value ?? 0;
        return;
    }
  }

  private takeWork({ key, figures, label, line, section }: DraftFigure): void {
    const plain = figures.filter(({ isPercent }) => !isPercent);
    const hours =
      plain.find(({ unit = "" }) => says.HOUR_UNIT.test(unit)) ?? (key === "hours" ? plain[0] : undefined);
    const rest = plain.filter((one) => one !== hours);
    const [each, sum] =
      rest.length > 1
        ? [rest[0], rest.at(-1)]
        : hours && rest[0] && !/\d/.test(label)
          ? [undefined, rest[0]]
          : [undefined, rest.at(-1)];
    if (key === "hours" && rest.length === 1) {
      this.put("hours", hours?.value);
      return this.put("rate", sum?.value);
    }
    const part = label.replace(/[:=\s]+$/, "");
    const more = { line, part, labour: true as const, ...(section !== undefined && { section }) };
    if (hours && each && sum) {
      this.insert({ ...more, quantity: hours.value, unit: "h", each: each.value, sum: sum.value });
      return;
    }
    this.put("hours", hours?.value);
    if (!sum || (!sum.isMoney && key === "hours")) return;
    this.put("labour", sum.value);
    this.lumps.push({
      key: "labour",
      line: { ...more, sum: sum.value, ...(hours && { quantity: hours.value, unit: "h" }) },
    });
  }

  private insert(line: DraftLine): void {
    const at = this.lines.findIndex((one) => one.line > line.line);
    if (at < 0) this.lines.push(line);
    else this.lines.splice(at, 0, line);
  }

  /** One rate, or several with a sum each. */
  private taxes(): void {
    const seen = new Set<string>();
    const rates = new Set<number>();
    let all: number | undefined;
    for (const one of this.draft.figures.filter(({ key }) => key === "tax")) {
      const plain = one.figures.filter(({ isPercent }) => !isPercent);
      const bare = plain.length > 1 && !plain[0]!.isMoney && plain[0]!.value <= 30 ? plain[0] : undefined;
      const percent = percentIn(one.figures) ?? bare?.value;
      const sums = plain.filter((figure) => figure !== bare);
      const amount =
        sums.length === 2 && percent !== undefined && same(sums[1]!.value * share(percent), sums[0]!.value)
          ? sums[0]
          : sums.at(-1);
      const base = sums.length > 1 ? sums.find((figure) => figure !== amount) : undefined;
      const key = `${percent} ${amount?.value}`;
      if (seen.has(key)) continue;
      seen.add(key);
      if (percent !== undefined) rates.add(share(percent));
      if (!amount) continue;
      all = cents((all ?? 0) + amount.value);
      if (base && percent !== undefined && !same(base.value * share(percent), amount.value))
        this.off(
          one,
          `${percent} % of ${base.value} is ${cents(base.value * share(percent))}, not ${amount.value}.`,
        );
    }
    const told = this.draft.figures.find(({ key }) => key === "taxes");
    const inAll = told && moneyIn(told.figures);
    if (told && inAll !== undefined && all !== undefined && !same(inAll, all))
      this.off(told, `The taxes above it come to ${all.toFixed(2)}, not ${inAll.toFixed(2)}.`);
    this.put("tax", inAll ?? all);
    this.taxesAgain = all;
    const only = this.draft.figures.find(
      ({ key, label }) => key === "tax" && /materials?|goods|parts|material|ware/.test(says.wordsOf(label)),
    );
    const materials = this.figures.materials;
    if (only && rates.size === 1 && materials !== undefined) this.put("taxed", materials);
    if (rates.size === 1) this.put("taxRate", [...rates][0]);
    // Of several rates the one that all of it bears together, by the taxes that make the sum.
    this.severalRates = rates.size > 1;
  }

  /** Behind the lines, under words that nobody here knows: what is the sum of all above it, its tax, and both together. */
  private sumsByArithmetic(): void {
    if (this.draft.figures.some(({ key }) => key === "net" || key === "total" || key === "subtotal")) return;
    const isLump = ({ quantity, each, sum }: DraftLine): boolean =>
      quantity === undefined && each === undefined && sum !== undefined;
    const at = this.lines.findIndex(
      (line, index) => index >= FEWEST && isLump(line) && same(sumOf(this.lines.slice(0, index)), line.sum),
    );
    if (at < 0) return;
    const [net, ...rest] = this.lines.slice(at);
    const tax = rest.find(
      (line) =>
        isLump(line) &&
        percentOf(line.part) !== undefined &&
        same(net!.sum! * share(percentOf(line.part)!), line.sum),
    );
    const total = rest.find((line) => isLump(line) && same(net!.sum! + (tax?.sum ?? 0), line.sum));
    this.put(tax || total ? "net" : "total", net!.sum);
    if (tax) {
      this.put("tax", tax.sum);
      this.put("taxRate", share(percentOf(tax.part)!));
    }
    if (total) this.put("total", total.sum);
    this.lines = this.lines.filter((line) => line !== net && line !== tax && line !== total);
  }

  /** A share of what stands above it: "Discount 5 %", with its sum or without. */
  private percents(): void {
    this.lines = this.lines.map((line, index) => {
      const percent = line.percent ?? (line.isDiscount ? percentOf(line.part) : undefined);
      if (percent === undefined || line.quantity !== undefined) return line;
      const of = sumOf(this.lines.slice(0, index).filter(({ optional }) => !optional));
      const own = cents((line.isDiscount ? -1 : 1) * of * share(Math.abs(percent)));
      if (line.sum === undefined) return { ...line, sum: own };
      // As quantity and price, so that the sheet holds it to its sum.
      return same(line.sum, own) || !line.isDiscount || of <= 0 ? line : { ...line, quantity: 1, each: own };
    });
  }

  private get priced(): DraftLine[] {
    return this.lines.filter(({ optional }) => !optional);
  }

  /** Which of the sums is the net, and which the total. */
  private sums(): void {
    const { figures, draft } = this;
    const of = (key: DraftFigure["key"]): DraftFigure[] =>
      draft.figures.filter((one) => one.key === key && moneyIn(one.figures) !== undefined);
    const amount = (one: DraftFigure | undefined): number | undefined => one && moneyIn(one.figures);
    const nets = of("net");
    const totals = of("total");
    const tax = figures.tax;
    const lastLine = this.lines.at(-1)?.line ?? 0;
    this.put("net", amount(nets.at(-1)));
    const strong = totals.filter(({ label }) => !BARE.test(says.labelWords(label)));
    const adds = (one: DraftFigure): boolean =>
      totals
        .concat(nets, of("subtotal"))
        .some((other) => other !== one && tax !== undefined && same(amount(other)! + tax, amount(one)));
    const total = strong.find(adds) ?? totals.find(adds) ?? strong.at(-1) ?? totals.at(-1);
    const withTax = draft.figures.findLastIndex(({ key }) => key === "tax");
    const isBeforeTax =
      total !== undefined &&
      strong.length === 0 &&
      totals.length === 1 &&
      withTax > draft.figures.indexOf(total);
    if (
      total &&
      !(
        isBeforeTax &&
        tax !== undefined &&
        figures.net === undefined &&
        same(amount(total), sumOf(this.priced))
      )
    )
      this.put("total", amount(total));
    const rest = totals.filter((one) => one !== total || figures.total === undefined);
    const all = sumOf(this.priced);
    const candidates = [
      ...of("subtotal").filter(({ line }) => line > lastLine),
      ...rest.filter(({ line }) => line > lastLine || rest.length === 1),
    ];
    if (
      figures.net === undefined &&
      candidates.length > 0 &&
      (figures.total !== undefined || tax !== undefined)
    ) {
      const value =
        [...candidates].find((one) => tax !== undefined && same(amount(one)! + tax, figures.total)) ??
        candidates.find((one) => same(amount(one), all)) ??
        candidates
          .filter(
            ({ label }) => SUBTOTAL_ALONE.test(says.labelWords(label)) || BARE.test(says.labelWords(label)),
          )
          .at(-1);
      this.put("net", amount(value));
    }
    const bears = figures.net;
    if (this.severalRates && bears && this.taxesAgain !== undefined)
      this.put("taxRate", this.taxesAgain / bears);
    this.flip();
    const others = strong
      .concat(totals.filter((one) => !strong.includes(one)))
      .filter((one) => one !== total);
    for (const one of others)
      if (
        figures.total !== undefined &&
        figures.net !== undefined &&
        !this.isSumSomewhere(amount(one)!) &&
        one.line < (this.lines[0]?.line ?? 0)
      )
        this.off(
          one,
          `The total at the foot is ${figures.total.toFixed(2)}, and here it is ${amount(one)!.toFixed(2)}.`,
        );
    for (const one of [...of("subtotal"), ...rest])
      if (amount(one) !== figures.net || one.line < lastLine) this.hold(one);
  }

  private isSumSomewhere(value: number): boolean {
    const { net, total, tax = 0 } = this.figures;
    return [net, total, total === undefined ? undefined : total - tax, tax].some((one) => same(one, value));
  }

  /** Of lines with two figures the second is the price of one where the net only comes out so. */
  private flip(): void {
    const net = this.figures.net ?? this.figures.total;
    if (
      net === undefined ||
      same(sumOf(this.priced), net) ||
      !this.lines.some(({ perhapsEach }) => perhapsEach)
    )
      return;
    const flipped = this.lines.map((line): DraftLine => {
      const { sum, ...rest } = line;
      return line.perhapsEach && sum !== undefined ? { ...rest, each: sum } : line;
    });
    if (same(sumOf(flipped.filter(({ optional }) => !optional)), net)) this.lines = flipped;
  }

  /** A sum of a part of the lines. */
  private hold(one: DraftFigure): void {
    const value = moneyIn(one.figures)!;
    const before = this.lines.filter(({ line }) => line < one.line);
    if (before.length === 0) return;
    const last =
      this.draft.figures.findLast(
        ({ key, line }) => (key === "subtotal" || key === "total") && line < one.line,
      )?.line ?? 0;
    const sinceLast = before.filter(({ line }) => line > last);
    const inSection = before.filter(({ section }) => section === before.at(-1)!.section);
    const anew = (lines: readonly DraftLine[]): number =>
      cents(lines.reduce((all, line) => all + (workedOut(line) ?? valueOf(line)), 0));
    const ways = [sinceLast, inSection, before].flatMap((lines) => [
      sumOf(lines),
      sumOf(lines.filter(({ optional }) => !optional)),
      anew(lines),
    ]);
    if (ways.some((way) => same(way, value))) return;
    const group = sinceLast.length > 0 ? sinceLast : before;
    this.off(one, `The lines above it come to ${sumOf(group).toFixed(2)}, not ${value.toFixed(2)}.`);
  }

  /** Hours, rate and cost of labour from its lines. */
  private work(): void {
    const lines = this.priced.filter(
      ({ labour, unit = "", quantity, part }) =>
        quantity !== undefined &&
        (says.HOUR_UNIT.test(unit) ||
          (labour &&
            /(?:^|\s|\()(?:h|hrs?|hours?|std|stunden|heures|horas|uren)(?:\s|$|\)|\.)/.test(
              says.wordsOf(part),
            )) ||
          (labour && unit === "" && LABOUR_ALONE.test(says.labelWords(part)))),
    );
    if (lines.length > 0) {
      this.put(
        "hours",
        lines.reduce((all, { quantity }) => all + quantity!, 0),
      );
      const rates = new Set(lines.map(({ each }) => each));
      const [rate] = rates;
      if (rates.size === 1) this.put("rate", rate);
      this.put("labour", sumOf(lines));
    } else {
      const lumps = this.priced.filter(
        ({ labour, quantity, part }) =>
          labour && quantity === undefined && LABOUR_ALONE.test(says.labelWords(part)),
      );
      if (lumps.length > 0) this.put("labour", sumOf(lumps));
    }
  }

  /** Prices with the tax in them: it is taken out again as a line, so that they come to the net. */
  private taxInside(): void {
    const { net, tax, total } = this.figures;
    if (net === undefined || tax === undefined || tax <= 0) return;
    const all = sumOf(this.priced);
    if (same(all, net) || !same(all, total) || !same(net + tax, total)) return;
    this.insideTax = tax;
  }

  private linesAre(): LinesAre {
    const { cost, margin, price, overhead, contingency, materials } = this.figures;
    const isBuilt =
      cost !== undefined ||
      price !== undefined ||
      margin !== undefined ||
      overhead !== undefined ||
      contingency !== undefined;
    if (!isBuilt || (cost === undefined && price === undefined && this.isWholeWithLumps()))
      return "the whole price";
    const parts = this.priced.filter(({ labour }) => !labour);
    // A page that was not added is a slip; a few of the lines are a sample.
    return parts.length > 0 && (materials === undefined || sumOf(parts) >= MUCH * materials)
      ? "all materials"
      : "a part";
  }

  /** Overhead and the like as lines with their own sums. */
  private isWholeWithLumps(): boolean {
    const all = sumOf(this.priced);
    const { net, total } = this.figures;
    return [all, ...this.lumpsTaken().map(({ sum }) => cents(all + sum))].some((sum) =>
      same(sum, net ?? total),
    );
  }

  private lumpsTaken(): { lines: TypedLine[]; sum: number }[] {
    const taken = this.lumps.filter(({ key, line }) => !this.isSumOfLines(key, line.sum!));
    return taken.length === 0
      ? []
      : [{ lines: taken.map(({ line }) => line), sum: taken.reduce((all, { line }) => all + line.sum!, 0) }];
  }

  private isSumOfLines(key: NumberKey, sum: number): boolean {
    if (key !== "materials" && key !== "labour") return false;
    const own = this.priced.filter(({ labour }) => Boolean(labour) === (key === "labour"));
    return own.length > 0 && (key === "materials" || same(sumOf(own), sum));
  }

  private takeLumps(): void {
    const before = sumOf(this.priced);
    const net = this.figures.net ?? this.figures.total;
    const [lumps] = this.lumpsTaken();
    if (!lumps || same(before, net)) return;
    for (const line of lumps.lines) this.insert(line);
    // In the lines now; the sheet would add them once more.
    if (this.lumps.some(({ key }) => key === "extras")) delete this.figures.extras;
  }

  private facts(): void {
    const { facts } = this.draft;
    for (const key of ["outlets", "tuners", "bands", "heads"] as const) this.put(key, facts[key]);
    const counted = (pattern: RegExp, isOther?: RegExp): DraftLine[] =>
      this.priced.filter(
        ({ part, quantity }) =>
          quantity !== undefined && pattern.test(says.wordsOf(part)) && !isOther?.test(says.wordsOf(part)),
      );
    const heads = counted(says.IS_HEAD_UNIT, ACCESSORY);
    if (heads.length > 0) {
      this.put(
        "heads",
        heads.reduce((all, { quantity }) => all + quantity!, 0),
      );
      const kinds = heads.flatMap(({ part, quantity }) => {
        const bands = bandsOf(part);
        return bands === undefined ? [] : [{ bands, quantity: quantity! }];
      });
      const many = kinds.reduce((all, { quantity }) => all + quantity, 0);
      // Of several kinds what one serves on average.
      if (many > 0)
        this.put("bands", Math.floor(kinds.reduce((all, one) => all + one.bands * one.quantity, 0) / many));
    }
    const outlets = counted(says.IS_OUTLET, /cover|frame|screw|box\b|install|montage|labour|test|measur/);
    if (outlets.length > 0 && this.figures.heads !== undefined && this.figures.labour !== undefined)
      this.put(
        "outlets",
        outlets.reduce((all, { quantity }) => all + quantity!, 0),
      );
    const cables = this.cables();
    if (cables.length > 0 && cables.every(({ metres }) => metres !== undefined))
      this.put(
        "cable",
        cables.reduce((all, { metres }) => all + metres!, 0),
      );
  }

  /** What the list says against itself, beside its sums. */
  private contradictions(): void {
    const { figures, draft } = this;
    this.built();
    const say = (line: { readonly line: number; readonly part: string }, why: string): void => {
      this.remarks.push({ line: line.line, text: line.part, why, kind: "off" });
    };
    for (const line of this.lines) {
      const { quantity, unit = "", each, part } = line;
      if (quantity !== undefined && quantity < 0 && (each ?? 0) > 0)
        say(line, `Its quantity is ${quantity}: was the minus meant?`);
      else if (
        quantity !== undefined &&
        !Number.isInteger(quantity) &&
        (PIECES.test(unit) || (unit === "" && !line.labour && !TIME.test(says.wordsOf(part)))) &&
        Number.isInteger(each) &&
        !says.IS_CABLE.test(says.wordsOf(part))
      )
        say(line, `${quantity} pieces at ${each ?? "no price"}: have quantity and price changed places?`);
    }
    const usual = this.currency();
    for (const line of this.lines)
      if (line.currency && line.currency !== usual)
        say(line, `It is in ${line.currency}, and the other lines are in ${usual}.`);
    const options = sumOf(this.lines.filter(({ optional }) => optional));
    const priced = sumOf(this.priced);
    if (
      options > 0 &&
      figures.net !== undefined &&
      !same(figures.net, priced) &&
      same(figures.net, priced + options)
    )
      this.remarks.push({
        line: this.lines.find(({ optional }) => optional)!.line,
        text: this.lines.find(({ optional }) => optional)!.part,
        why: `The price without tax has the options of ${options.toFixed(2)} in it, which are said not to be in the total: without them it is ${priced.toFixed(2)}.`,
        kind: "off",
      });
    if (draft.until !== undefined && draft.dateOf !== undefined && draft.until < draft.dateOf)
      this.remarks.push({
        line: 1,
        text: "Valid until",
        why: `It holds until ${isoDate(draft.until)}, before the day of the quote, ${isoDate(draft.dateOf)}.`,
        kind: "off",
      });
    const plates = this.priced.filter(
      ({ part, quantity }) => quantity !== undefined && IS_PLATE.test(says.wordsOf(part)),
    );
    const pieces = plates.reduce((all, { quantity }) => all + quantity!, 0);
    if (plates.length > 0 && figures.outlets !== undefined && pieces !== figures.outlets && pieces > 0)
      say(plates[0]!, `There are ${pieces} of them for ${figures.outlets} outlets.`);
    const isWork =
      this.priced.some(({ labour }) => labour) || figures.labour !== undefined || figures.hours !== undefined;
    if (!isWork && this.priced.length > 3 && draft.prose.some((text) => PROMISED.test(text)))
      this.remarks.push({
        line: 1,
        text: "Labour",
        why: "Work is promised in words, and no line has labour in it.",
        kind: "off",
      });
  }

  private currency(): string | undefined {
    const counts = new Map<string, number>();
    for (const { currency } of this.lines)
      if (currency) counts.set(currency, (counts.get(currency) ?? 0) + 1);
    const [usual] = [...counts].sort(([, a], [, b]) => b - a).map(([currency]) => currency);
    return usual;
  }

  /** Shares of a cost with their sums beside them. */
  private built(): void {
    const { materials, labour, contingency, overhead } = this.figures;
    if (materials === undefined || labour === undefined) return;
    let base = materials + labour;
    for (const [key, part] of [
      ["contingency", contingency],
      ["overhead", overhead],
    ] as const) {
      const lump = this.lumps.find((one) => one.key === key);
      if (part === undefined) continue;
      const sum = cents(base * part);
      if (lump && !same(lump.line.sum, sum) && this.linesAre() !== "the whole price")
        this.remarks.push({
          line: lump.line.line,
          text: lump.line.part,
          why: `${Number((part * 100).toPrecision(6))} % of ${base.toFixed(2)} is ${sum.toFixed(2)}, not ${lump.line.sum!.toFixed(2)}.`,
          kind: "off",
        });
      base += sum;
    }
  }

  private cables(): { line: DraftLine; metres: number | undefined; each: number | undefined }[] {
    return this.priced
      .filter(
        ({ part, quantity, labour }) =>
          quantity !== undefined &&
          !labour &&
          says.IS_CABLE.test(says.wordsOf(part)) &&
          !says.IS_BESIDE_CABLE.test(says.wordsOf(part)),
      )
      .map((line) => {
        const { unit = "", part, quantity, each } = line;
        if (says.METRE_UNIT.test(unit) && !line.per) return { line, metres: quantity!, each };
        if (line.per && each !== undefined && says.METRE_UNIT.test(unit))
          return { line, metres: quantity!, each: each / line.per };
        const reel = Number(/(\d{2,4}) ?(?:m|mtr|metres?|meters?|ft)(?![a-z])/.exec(says.wordsOf(part))?.[1]);
        return reel > 0
          ? { line, metres: quantity! * reel, each: each === undefined ? undefined : each / reel }
          : { line, metres: undefined, each: undefined };
      });
  }

  private prices(): Pick<TypedQuote, "headPrice" | "cablePrice"> {
    const head = this.priced.find(
      ({ part, each }) =>
        each !== undefined &&
        says.IS_HEAD_UNIT.test(says.wordsOf(part)) &&
        !ACCESSORY.test(says.wordsOf(part)),
    );
    const each = this.cables().find((one) => one.each !== undefined)?.each;
    return {
      ...(head?.each !== undefined && { headPrice: head.each }),
      ...(each !== undefined && { cablePrice: Number(each.toPrecision(6)) }),
    };
  }
}

const MUCH = 0.5;
const FEWEST = 2;
const BARE =
  /^(?:total|totals|sum|summe|gesamt|gesamtsumme|gesamtbetrag|gesamtpreis|totaal|totale|somme|suma|total general|montant total)$/;
const SUBTOTAL_ALONE = /^(?:sub ?totals?|zwischensumme|sous totale?|subtotaal|tussentotaal)$/;
const LABOUR_ALONE =
  /^(?:labou?r|crew|installation|fitting|workmanship|arbeit\w*|montage|lohn\w*|main d ?oeuvre|pose|mano de obra|montaje|instalacion|arbeid\w*|loon)(?:\s.{0,30})?$/;
const percentOf = (text: string): number | undefined => {
  const found = /(\d{1,2}(?:[.,]\d{1,2})?) ?%/.exec(text)?.[1];
  return found === undefined ? undefined : Number(found.replace(",", "."));
};

const BANDS = "(?:user[ -]?)?(?:bands?|banden|bander|bandes|bandas|ub|teilnehmer\\w*)(?![a-z])";
const OUTPUTS = new RegExp(
  `(\\d{1,2}) (?:outputs?|ausgange|sorties|salidas|uitgangen)\\D{1,12}(\\d{1,2})[ -]?${BANDS}`,
);
const ONE_CABLE = new RegExp(`(\\d{1,2})[ -]?${BANDS}`);

/** How many tuners one serves, by its name. */
function bandsOf(part: string): number | undefined {
  const plain = says.wordsOf(part);
  const outputs = OUTPUTS.exec(plain);
  if (outputs) return Number(outputs[1]) * Number(outputs[2]);
  const bands = ONE_CABLE.exec(plain)?.[1];
  return bands === undefined ? undefined : Number(bands);
}

const PIECES = /^(?:pcs?|pieces?|ea|each|no|nos|off|stk|stck|st|stuck|u|uds?|stuks?)\.?$/;
const TIME = /day|tag|jour|dia|dag|hour|stunde|heure|hora|uur/;
const IS_PLATE =
  /(?<![a-z])(?:wall ?plates?|antennen(?:steck)?dosen?|prises? murales?|tomas? de pared|(?:wand)?contactdozen|aansluitdozen|wandplaten)(?![a-z])/;
const PROMISED =
  /(?<![a-z])(?:fit|fitted|fitting|install(?:ed|ing|ation)?|labour|labor|montage|montieren|montiert|einbau|pose|poser|installation|montaje|instalar|montage|monteren)(?![a-z])/;

/** Beside a head unit, not one. */
const ACCESSORY =
  /mount|bracket|holder|cover|box|supply|power|plug|cable|halter|netzteil|install|fitting of|montage|support|alimentation|soporte|fuente|houder|voeding/;
