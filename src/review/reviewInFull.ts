/**
 * The review as an office reads it: by cause and by money. Each finding is undone in a copy, the job computed again, and
 * what that moves is its own amount; what is only there because of a named cause stands under it; the dearest comes first.
 */
import { parseAddress } from "../formula/address";
import type { Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { namedColumn, namedValue, placeOfName } from "../workbooks/named";
import { notedIn, type NotedOf } from "./again/noted";
import { amountInWords, headlineOf, type Headline } from "./amountInWords";
import { BESIDE_THE_CELLS } from "./besideTheCells";
import {
  differ,
  WEIGHTS,
  type Amount,
  type Counts,
  type Finding,
  type FindingPlace,
  type Sums,
  type Undoing,
} from "./finding";
import { factsOf, type Facts } from "./facts";
import { followersIn, type Follows } from "./followersOf";
import { grouped, undoingOf } from "./grouped";
import { countsOf, sumsOf, SUMS, VERDICTS } from "./measures";
import { figure, isBlank } from "./namedCells";
import { lookInto, review, saidOf, symptomsOf, type Look, type Trial, type Trials } from "./review";
import type { ReviewOptions } from "./rule";
import { earlierVersion } from "./rules/earlierVersion";
import { isQuoteReview, quoteSlips, totalsOf } from "./rules/quoteSlips";
import { likelyMeant } from "./likelyMeant";
import { sliced } from "./sliced";
import { likelyInputs } from "./withLikelyInputs";
import { SYMPTOMS, withoutConsequences } from "./withoutConsequences";

export interface FullReview {
  /** What moves the price by most first, then the weightiest. */
  readonly findings: readonly Finding[];
  /** Absent where the workbook has no total. */
  readonly headline?: Headline;
  readonly facts: Facts;
  /** What of each finding is kept for the next review. */
  readonly noted: NotedOf;
}

/** In a job of more outlets the levels and volts of the dearest only are computed again. */
const MANY_OUTLETS = 240;
const MOST_IN_LARGE_JOBS = 20;
/** Each costs a computing and a reading of the whole workbook. */
const MOST_SLIPS = 3;

/** A finding and the cells that undo it. */
interface Cause {
  readonly finding: Finding;
  readonly changes: readonly Undoing[];
  readonly isAbout: boolean;
}

/** What undoing a cause comes to. */
interface Undone {
  readonly before: Sums;
  readonly after: Sums;
  /** By how much of the total. */
  readonly moves: number;
  /** After it, where they were worked out along with the sums. */
  readonly counts?: Counts;
}

const SUMS_AND_COUNTS: readonly string[] = [...SUMS, ...VERDICTS];

/**
 * @param stored the workbook as it is stored
 * @param trials opens a book for trials; the first, with nothing changed, computes it
 */
export function reviewInFull(stored: Book, trials: Trials, options: Partial<ReviewOptions> = {}): FullReview {
  const opened = new Map<Book, Trial>();
  const trialOf = (book: Book): Trial => {
    const trial = opened.get(book) ?? trials(book);
    opened.set(book, trial);
    return trial;
  };
  const compute = (book: Book): Book => {
    const trial = trialOf(book);
    const computed = trial([]);
    // What is tried in it later is tried where it was computed: opening it again would compute all of it again.
    opened.set(computed, trial);
    return computed;
  };
  const look = lookInto(stored, compute, options);
  const isByCause = !look.isUnfilled && look.judged.definition !== undefined;
  const { leftOut, ...told } = isByCause
    ? new ByCause(look, trialOf).review()
    : { findings: review(stored, compute, options), leftOut: 0 };
  const { own } = look.judged;
  return {
    ...told,
    facts: { ...factsOf(stored, look.judged, told.findings), ...(leftOut > 0 && { leftOut }) },
    noted: notedIn(own, told.findings),
  };
}

class ByCause {
  private readonly found: readonly Finding[];
  private readonly causes: readonly Cause[];
  /** What stands under another finding of the same cell. */
  private readonly under = new Map<Finding, Finding[]>();
  private followers?: (from: readonly FindingPlace[]) => Follows;
  /** By what is wanted of them. */
  private readonly slices = new Map([SUMS, SUMS_AND_COUNTS].map((names) => [names, new Map<Book, Book>()]));
  private readonly isLarge: boolean;

  constructor(
    private readonly look: Look,
    private readonly trialOf: (book: Book) => Trial,
  ) {
    const outlets = namedColumn(this.own, estimate.rooms.outlet.name).filter((one) => !isBlank(one)).length;
    this.isLarge = outlets > MANY_OUTLETS;
    this.found = this.withoutWhatFollows(this.withSlips(this.oneOfEachCell(grouped(look.found))));
    this.causes = this.found.flatMap(causesOf);
  }

  /** Of a workbook with nothing to undo nobody asks. */
  private follows(from: readonly FindingPlace[]): Follows {
    return (this.followers ??= followersIn(this.own))(from);
  }

  /** With its own formulas. */
  private get own(): Book {
    return this.look.judged.own;
  }

  /** With the template's. */
  private get restored(): Book {
    return this.look.judged.expected ?? this.own;
  }

  /** @returns beside what is told, of how many findings levels and volts were not computed again */
  review(): Omit<FullReview, "facts" | "noted"> & { readonly leftOut: number } {
    const { judged } = this.look;
    const sums = new Map(this.causes.map((cause) => [cause, this.undone(cause)] as const));
    const dearest = [...sums].sort(([, a], [, b]) => b.moves - a.moves).map(([cause]) => cause);
    const amounts = new Map(
      dearest.map((cause, index) => [cause.finding, this.amountOf(cause, sums.get(cause)!, index)] as const),
    );
    this.foldUnder(dearest);
    const folded = new Set([...this.under.values()].flat());
    const left = this.found.filter((one) => !folded.has(one));
    const told = withoutConsequences(left, judged.read, judged.computed).map((finding): Finding => {
      const amount = amounts.get(finding) ?? finding.amount;
      const leadsTo = this.under.get(finding);
      return {
        ...finding,
        ...(amount && { amount, ...(amounts.has(finding) && { effect: effectOf(finding, amount) }) }),
        ...(leadsTo && { leadsTo }),
      };
    });
    const leftOut = this.isLarge ? Math.max(0, this.causes.length - MOST_IN_LARGE_JOBS) : 0;
    return { findings: told.sort(byMoney), ...this.headline(told), leftOut };
  }

  /** What is said of one cell twice is one finding: the weightiest, with what the others know of what was meant. */
  private oneOfEachCell(findings: readonly Finding[]): Finding[] {
    const ofCell = new Map<string, Finding[]>();
    for (const one of findings) {
      if (!one.place || SYMPTOMS.has(one.rule!) || BESIDE_THE_CELLS.has(one.rule!)) continue;
      const key = keyOf(one.place);
      ofCell.set(key, [...(ofCell.get(key) ?? []), one]);
    }
    const instead = new Map<Finding, Finding | undefined>();
    for (const several of ofCell.values()) {
      if (several.length < 2) continue;
      const [first, ...more] = [...several].sort(
        (a, b) => WEIGHTS.indexOf(a.weight) - WEIGHTS.indexOf(b.weight),
      ) as [Finding, ...Finding[]];
      const known = [first, ...more].find((one) => undoingOf(one) !== undefined);
      const usual = several.find((one) => one.usual !== undefined);
      const whole: Finding = {
        ...first,
        ...(known && { undoing: undoingOf(known), ...(known.isGuess && { isGuess: known.isGuess }) }),
        ...(usual && { usual: usual.usual }),
        expected: first.expected ?? known?.expected ?? usual?.expected,
      };
      for (const one of more) instead.set(one, undefined);
      instead.set(first, whole);
      this.under.set(whole, more);
    }
    return findings.flatMap((one) => (instead.has(one) ? (instead.get(one) ?? []) : [one]));
  }

  /** What was likely meant where no rule knows it. */
  private withSlips(findings: readonly Finding[]): Finding[] {
    const unknown = findings.filter(
      (one) => one.weight !== "worth knowing" && !SYMPTOMS.has(one.rule!) && undoingOf(one) === undefined,
    );
    const likely = likelyMeant(this.look.judged, unknown);
    return findings.map((one) => {
      const found = likely.get(one);
      if (found === undefined) return one;
      const told = { ...one, ...found, expected: withLikely(one.expected, found.meant) };
      const under = this.under.get(one);
      if (under) this.under.set(told, under);
      return told;
    });
  }

  /**
   * What is doubtful only because of something that is wrong, and is not said with that undone, stands under it; so does
   * what nobody knows how to undo, and is not said with the rest undone.
   */
  private withoutWhatFollows(findings: readonly Finding[]): Finding[] {
    const wrong = findings.filter(({ weight }) => weight === "wrong").flatMap(causesOf);
    const left = this.foldedUnder(
      findings,
      wrong,
      ({ weight, rule }) => weight === "doubtful" && !BESIDE_THE_CELLS.has(rule!),
    );
    const known = left
      .filter(({ weight }) => weight !== "worth knowing")
      .flatMap(causesOf)
      .filter(({ isAbout }) => !isAbout);
    return this.ofOneSlip(
      this.foldedUnder(left, known, (one) => isOfTheCells(one) && undoingOf(one) === undefined),
    );
  }

  /** What is said of the same row, or by the same rule, and not said with one of them undone, is one slip told twice. */
  private ofOneSlip(findings: readonly Finding[]): Finding[] {
    let left = [...findings];
    let tried = 0;
    for (const finding of findings) {
      const cause = causesOf(finding).find(({ isAbout }) => !isAbout);
      const isBeside = (one: Finding): boolean =>
        one !== finding &&
        isOfTheCells(one) &&
        (one.rule === finding.rule || rowOf(one.place) === rowOf(finding.place));
      if (!cause || !isOfTheCells(finding) || !left.includes(finding) || !left.some(isBeside)) continue;
      if (++tried > MOST_SLIPS) break;
      left = this.foldedUnder(left, [cause], isBeside);
    }
    return left;
  }

  /** @returns the findings without those that may follow and are not said with the causes undone */
  private foldedUnder(
    findings: readonly Finding[],
    causes: readonly Cause[],
    mayFollow: (finding: Finding) => boolean,
  ): Finding[] {
    const asked = findings.filter((one) => one.place && !SYMPTOMS.has(one.rule!) && mayFollow(one));
    if (causes.length === 0 || asked.length === 0 || this.look.judged.earlier) return [...findings];
    const changes = withoutConflicts(causes).flatMap((cause) => cause.changes);
    const said = new Set(saidOf(this.trialOf(this.own)(changes), this.look).map(ruleAndPlace));
    const following = new Set(asked.filter((one) => !said.has(ruleAndPlace(one))));
    for (const one of following) {
      const { sheet, cell } = one.place!;
      const at = parseAddress(cell)!;
      const cause =
        causes.find((other) => other.changes.some(({ place }) => keyOf(place) === keyOf(one.place!))) ??
        causes.find((other) => this.follows(other.changes.map(({ place }) => place))(sheet, at)) ??
        causes[0]!;
      const under = this.under.get(cause.finding) ?? [];
      this.under.set(cause.finding, [...under, one, ...(this.under.get(one) ?? [])]);
      this.under.delete(one);
    }
    return findings.filter((one) => !following.has(one));
  }

  /** Where formulas are not the template's, an input is undone in a copy in which they are: a typed total moves with nothing. */
  private undone({ changes }: Cause): Undone {
    const book = changes.some(({ formula }) => formula !== undefined) ? this.own : this.restored;
    const result = this.trialIn(book, changes);
    const [before, after] = [sumsOf(book), sumsOf(result)];
    return {
      before,
      after,
      moves: Math.abs((after.total ?? 0) - (before.total ?? 0)),
      ...(book === this.own && !this.isLarge && { counts: countsOf(result) }),
    };
  }

  /** In as much of the workbook as these names are worked out from. */
  private trialIn(
    book: Book,
    changes: readonly Undoing[],
    names = this.isLarge ? SUMS : SUMS_AND_COUNTS,
  ): Book {
    const slices = this.slices.get(names)!;
    const slice =
      slices.get(book) ??
      sliced(
        book,
        names,
        this.causes.flatMap((cause) => cause.changes),
      );
    slices.set(book, slice);
    return this.trialOf(slice)(changes);
  }

  private amountOf(cause: Cause, undone: Undone, index: number): Amount {
    const counts = this.countsUndone(cause, undone, index);
    return {
      before: { ...undone.before, ...counts?.before },
      after: { ...undone.after, ...counts?.after },
      isAbout: cause.isAbout,
    };
  }

  private countsUndone(
    { changes }: Cause,
    { counts }: Undone,
    index: number,
  ): { readonly before: Counts; readonly after: Counts } | undefined {
    if (this.isLarge && index >= MOST_IN_LARGE_JOBS) return undefined;
    const before = countsOf(this.own);
    const follows = this.follows(changes.map(({ place }) => place));
    const reached = VERDICTS.some((name) => {
      const place = placeOfName(this.own, name);
      return place !== undefined && follows(place.sheet, parseAddress(place.at)!);
    });
    return {
      before,
      after: reached ? (counts ?? countsOf(this.trialIn(this.own, changes, SUMS_AND_COUNTS))) : before,
    };
  }

  /** By its cause, what would not be said with every cause undone. */
  private foldUnder(dearest: readonly Cause[]): void {
    const { judged } = this.look;
    const symptoms = this.found.filter(({ rule, place }) => SYMPTOMS.has(rule!) && place);
    const known = new Set(dearest.map(({ finding }) => finding));
    const unknown = this.found.filter(
      (one) => one.weight === "wrong" && !SYMPTOMS.has(one.rule!) && !known.has(one),
    );
    const changes = [
      ...withoutConflicts(dearest).flatMap((cause) => cause.changes),
      ...likelyInputs(judged.read, judged.definition!, unknown),
    ];
    if (symptoms.length === 0 || changes.length === 0) return;
    const said = new Set(symptomsOf(this.trialOf(this.own)(changes), this.look).map(inFull));
    const reaches = [...known, ...unknown].flatMap((finding) => {
      const places = [...(undoingOf(finding) ?? []), finding].flatMap(({ place }) => place ?? []);
      return places.length > 0 ? [{ finding, follows: this.follows(places) }] : [];
    });
    for (const symptom of symptoms) {
      if (said.has(inFull(symptom))) continue;
      const { sheet, cell } = symptom.cause ?? symptom.place!;
      const place = parseAddress(cell)!;
      const reaching = reaches.filter(({ follows }) => follows(sheet, place)).map(({ finding }) => finding);
      const inItsRow = reaching.find(
        (one) => one.place?.sheet === sheet && parseAddress(one.place.cell)?.row === place.row,
      );
      const cause = inItsRow ?? reaching[0];
      if (cause) this.under.set(cause, [...(this.under.get(cause) ?? []), symptom]);
    }
  }

  private headline(told: readonly Finding[]): Pick<FullReview, "headline"> {
    if (isQuoteReview(this.own)) return quoteHeadline(this.own, told);
    const name = estimate.quote.total.name;
    if (!placeOfName(this.own, name)) return {};
    const quoted = [namedValue(this.look.stored, name), namedValue(this.own, name)].find(
      (one) => typeof one === "number",
    );
    const all = withoutConflicts(this.causes.filter(({ finding }) => finding.weight !== "worth knowing"));
    const total = (changesOf: (cause: Cause) => readonly Undoing[]): number | undefined =>
      all.length === 0
        ? sumsOf(this.own).total
        : sumsOf(this.trialIn(this.own, all.flatMap(changesOf))).total;
    const shouldBe = total(({ changes }) => changes);
    // One that is unsure may raise the total and another lower it.
    const ends = shouldBe === undefined ? [] : [shouldBe, shouldBe];
    for (const unsure of all) {
      const { place, usual } = unsure.finding;
      if (!usual || undoingOf(unsure.finding)) continue;
      const both = (["low", "high"] as const).flatMap(
        (end) =>
          total((cause) => (cause === unsure ? [{ place: place!, value: usual[end] }] : cause.changes)) ?? [],
      );
      if (shouldBe === undefined || both.length < 2) continue;
      ends[0] = ends[0]! + Math.min(0, ...both.map((one) => one - shouldBe));
      ends[1] = ends[1]! + Math.max(0, ...both.map((one) => one - shouldBe));
    }
    return {
      headline: headlineOf({
        quoted,
        shouldBe,
        ends,
        told: told.filter(({ weight, rule }) => weight !== "worth knowing" && !BESIDE_THE_CELLS.has(rule!)),
      }),
    };
  }
}

/** Of somebody else's quote, as its review has corrected it. */
function quoteHeadline(book: Book, told: readonly Finding[]): Pick<FullReview, "headline"> {
  const { quoted, shouldBe } = totalsOf(book);
  if (quoted === undefined) return {};
  const amount = { before: { total: quoted }, after: { total: shouldBe }, isAbout: false };
  const slips = told.filter(({ rule }) => rule === quoteSlips.id);
  return {
    headline: headlineOf({
      quoted,
      shouldBe,
      ends: [],
      told: slips.map((one) => (one.weight === "wrong" && shouldBe !== undefined ? { ...one, amount } : one)),
    }),
  };
}

/** Beside what the rule expects, the value that was likely meant. */
function withLikely(expected: string | undefined, meant: Finding["meant"]): string | undefined {
  if (meant === undefined) return expected;
  const shown = typeof meant === "number" ? figure(meant) : `“${meant}”`;
  if (expected === undefined) return `${shown}, likely.`;
  return expected.includes(shown) ? expected : `${expected.replace(/\.?$/, ".")} Likely ${shown}.`;
}

function causesOf(finding: Finding): Cause[] {
  if (SYMPTOMS.has(finding.rule!)) return [];
  const known = undoingOf(finding);
  if (known) return [{ finding, changes: known, isAbout: finding.isGuess === true }];
  const { usual, place } = finding;
  if (!usual || !place) return [];
  return [{ finding, changes: [{ place, value: middleOfRange(usual) }], isAbout: true }];
}

/** Of two that put other things into one cell the surer one counts, of two as sure the first. */
function withoutConflicts(causes: readonly Cause[]): Cause[] {
  const settled = new Map<string, string>();
  return [...causes]
    .sort((a, b) => Number(a.isAbout) - Number(b.isAbout))
    .filter(({ changes }) => {
      const cells = changes.map(
        ({ place, value, formula }) => [keyOf(place), JSON.stringify([value, formula])] as const,
      );
      if (cells.some(([key, held]) => (settled.get(key) ?? held) !== held)) return false;
      for (const [key, held] of cells) settled.set(key, held);
      return true;
    });
}

/** Ranges are wide, and mostly so many times as well as a part of what is usual. */
const middleOfRange = ({ low, high }: { readonly low: number; readonly high: number }): number =>
  low > 0 ? Math.sqrt(low * high) : (low + high) / 2;

/** What a rule says of the whole price by itself is less than the amount. */
function effectOf({ effect, rule }: Finding, amount: Amount): string | undefined {
  const own = rule?.startsWith("formula ") ? undefined : effect;
  return [amountInWords(amount), own].filter(Boolean).join(" ") || undefined;
}

const keyOf = ({ sheet, cell }: FindingPlace): string => `${sheet}!${cell}`;
const rowOf = (place: FindingPlace | undefined): string | undefined =>
  place && `${place.sheet}!${parseAddress(place.cell)?.row}`;
const isOfTheCells = ({ weight, rule }: Finding): boolean =>
  weight !== "worth knowing" && !BESIDE_THE_CELLS.has(rule!);
const ruleAndPlace = ({ rule, place }: Finding): string => JSON.stringify([rule, place?.sheet, place?.cell]);
const inFull = ({ rule, place, message }: Finding): string => JSON.stringify([rule, place, message]);

const moved = ({ amount }: Finding): number => {
  const { before, after } = amount ?? {};
  if (before?.total === undefined && after?.total !== undefined) return Infinity;
  return differ(before?.total, after?.total) ? Math.abs(after!.total! - before!.total!) : 0;
};

function byMoney(a: Finding, b: Finding): number {
  const first = Number(b.rule === earlierVersion.id) - Number(a.rule === earlierVersion.id);
  if (first !== 0) return first;
  const [one, other] = [moved(a), moved(b)];
  if (one !== other) return other > one ? 1 : -1;
  return WEIGHTS.indexOf(a.weight) - WEIGHTS.indexOf(b.weight);
}
