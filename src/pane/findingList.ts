/**
 * The one list: what a review found, failing checks among it, each once. It stays while its cells are looked at, is
 * gone through with next and back, narrowed to what a person looks for, and a finding can be settled with a reason.
 */
import { timeInWords } from "../jobs/entryInWords";
import { LONGEST_REASON } from "../jobs/reviews";
import type { KeptReview } from "../review/again/keptReview";
import type { Noted } from "../review/again/noted";
import type { Again, Known, Settled } from "../review/again/knownAgain";
import { leftOutInWords, notLookedInWords } from "../review/facts";
import { afterSettling } from "../review/again/told";
import {
  isSamePlace,
  WEIGHTS,
  type Finding,
  type FindingPlace,
  type Mend,
  type Weight,
} from "../review/finding";
import { goesTo, likeliest } from "../review/mends";
import type { FullReview } from "../review/reviewInFull";
import { leadsToInWords } from "../review/leadsToInWords";
import { button, make, paragraph, setText } from "./dom";
import { placeInWords } from "./view";

const HEADS: Readonly<Record<Weight, string>> = {
  wrong: "Wrong",
  doubtful: "Doubtful",
  "worth knowing": "Worth knowing",
};

/** The findings of one workbook, to be listed. */
export interface Listed {
  /** Absent where there is one workbook only. */
  readonly heading?: string;
  /** Said before its findings. */
  readonly lines: readonly HTMLElement[];
  readonly findings: readonly Finding[];
  /** What is known of them from before; absent where nothing is kept. */
  readonly kept?: KeptReview;
  goTo(sheet: string, cell: string): void;
  /** Where a cell lies now that was noted in an earlier review; undefined where its row is gone. */
  placeNow(noted: Noted): FindingPlace | undefined;
  /** @param reason absent where it is to be settled no more */
  settle?(key: number, reason?: string): Promise<Settled | null>;
  /** Called when something was settled, or is no more. */
  changed?(kept: KeptReview): void;
}

interface Item {
  readonly of: Listed;
  readonly finding: Finding;
  again?: Again;
}

type Filter = "open" | Weight | "new" | "settled" | "gone";

/** So many are shown at first, and more when they are asked for. */
const SHOWN_AT_ONCE = 100;

export function countsOf(findings: readonly Finding[]): string {
  return WEIGHTS.map((weight) => [weight, findings.filter((one) => one.weight === weight).length])
    .filter(([, count]) => count !== 0)
    .map(([weight, count]) => `${count} ${weight}`)
    .join(", ");
}

/** What is said of a workbook before its findings. */
export function linesBefore({
  headline,
  facts,
  findings,
}: Pick<FullReview, "headline" | "facts" | "findings">): HTMLElement[] {
  const { checks } = facts;
  const failing = checks && checks.all - checks.ok;
  return [
    ...(headline && findings.length > 0 ? [paragraph(headline.sentence, "finding-headline")] : []),
    ...[leftOutInWords(facts), notLookedInWords(facts)].flatMap((text) =>
      text ? [paragraph(text, "pane-quiet")] : [],
    ),
    ...(failing
      ? [
          paragraph(
            `${failing} of the workbook's ${checks.all} checks ${failing === 1 ? "does" : "do"} not pass; each is in this list, under what brings it about where that is known.`,
            "pane-quiet",
          ),
        ]
      : []),
  ];
}

export class FindingList {
  readonly root = make("div", { className: "finding-list" });
  private readonly counts = paragraph("", "finding-counts");
  private readonly filter = make("select", { className: "pane-input", ariaLabel: "Show" });
  private readonly words = make("input", {
    className: "pane-input",
    type: "search",
    ariaLabel: "Only with these words",
    placeholder: "Words, or a cell",
  });
  private readonly back = button("Back", () => this.step(-1), "pane-button finding-back");
  private readonly next = button("Next", () => this.step(1), "pane-button finding-next");
  private readonly position = make("span", { className: "finding-position" });
  private readonly entries = make("div", {});
  private listed: readonly Listed[] = [];
  private items: Item[] = [];
  private current: Item | undefined;
  private most = SHOWN_AT_ONCE;

  /** @param level of the headings above its own */
  constructor(private readonly level: 1 | 2 = 1) {
    this.counts.tabIndex = -1;
    this.position.setAttribute("role", "status");
    this.filter.onchange = this.words.oninput = () => {
      this.most = SHOWN_AT_ONCE;
      this.draw();
    };
    this.root.append(
      this.counts,
      make(
        "div",
        { className: "finding-tools" },
        this.filter,
        this.words,
        make("div", { className: "pane-row finding-steps" }, this.back, this.next, this.position),
      ),
      this.entries,
    );
  }

  show(listed: readonly Listed[]): void {
    this.listed = listed;
    this.items = listed.flatMap((of) =>
      of.findings.map((finding, index): Item => ({ of, finding, again: of.kept?.now[index] })),
    );
    this.current = undefined;
    this.most = SHOWN_AT_ONCE;
    this.filter.value = "open";
    this.words.value = "";
    this.draw();
  }

  /** To the next finding shown, or the one before. */
  step(by: 1 | -1): void {
    const shown = this.shown;
    if (shown.length === 0) return;
    const at = this.current ? shown.indexOf(this.current) : -1;
    const to = at < 0 ? (by > 0 ? 0 : shown.length - 1) : at + by;
    if (to < 0 || to >= shown.length) {
      setText(this.position, by > 0 ? `That was the last of ${shown.length}.` : "That is the first.");
      return;
    }
    this.current = shown[to]!;
    if (to >= this.most) this.most = to + SHOWN_AT_ONCE;
    this.draw();
    this.entries.querySelector("[aria-current]")?.scrollIntoView({ block: "start" });
    const { of, finding } = this.current;
    const place = goesTo(finding);
    if (place) of.goTo(place.sheet, place.cell);
  }

  private get shown(): Item[] {
    const filter = (this.filter.value || "open") as Filter;
    const words = this.words.value.trim().toLowerCase();
    const isShown = ({ finding, again }: Item): boolean => {
      const isSettled = again?.state === "settled";
      if (filter === "settled") return isSettled;
      if (filter === "new") return again?.state === "new" || again?.state === "back";
      return !isSettled && (filter === "open" || finding.weight === filter);
    };
    const byWeight = this.items
      .filter((one) => isShown(one) && (words === "" || textOf(one).includes(words)))
      .map((one) => [one, this.listed.indexOf(one.of), WEIGHTS.indexOf(one.finding.weight)] as const);
    return byWeight.sort((a, b) => a[1] - b[1] || a[2] - b[2]).map(([one]) => one);
  }

  private draw(): void {
    this.drawFilter();
    const shown = this.shown;
    const open = this.items.filter(({ again }) => again?.state !== "settled");
    const settled = this.items.length - open.length;
    setText(
      this.counts,
      [
        this.items.length === 0
          ? "Nothing found."
          : countsOf(open.map(({ finding }) => finding)) || "Nothing open",
        ...(settled > 0 ? [`${settled} settled`] : []),
      ].join("; "),
    );
    const at = this.current ? shown.indexOf(this.current) : -1;
    setText(
      this.position,
      shown.length === 0 ? "" : at < 0 ? `${shown.length} shown` : `${at + 1} of ${shown.length}`,
    );
    this.back.disabled = this.next.disabled = shown.length === 0;
    const isGone = this.filter.value === "gone";
    this.entries.replaceChildren(
      ...this.listed.map((of) => this.partOf(of, shown, isGone)),
      ...(shown.length > this.most && !isGone
        ? [
            button(`Show more (${shown.length - this.most})`, () => {
              this.most += SHOWN_AT_ONCE;
              this.draw();
            }),
          ]
        : []),
      ...(shown.length === 0 && this.items.length > 0 && !isGone ? [this.noneOfThese()] : []),
    );
  }

  private noneOfThese(): HTMLElement {
    return make(
      "p",
      {},
      "None of these. ",
      button("Show all that is open", () => {
        this.filter.value = "open";
        this.words.value = "";
        this.draw();
        this.filter.focus();
      }),
    );
  }

  private drawFilter(): void {
    const chosen = this.filter.value;
    const count = (is: (one: Item) => boolean): number => this.items.filter(is).length;
    const isOpen = ({ again }: Item): boolean => again?.state !== "settled";
    const gone = this.listed.reduce((sum, { kept }) => sum + (kept?.gone.length ?? 0), 0);
    const isAgain = this.listed.some(({ kept }) => kept?.earlier !== undefined);
    const choices: (readonly [Filter, string, number])[] = [
      ["open", "All that is open", count(isOpen)],
      ...WEIGHTS.map(
        (weight) =>
          [weight, HEADS[weight], count((one) => isOpen(one) && one.finding.weight === weight)] as const,
      ),
      ...(isAgain
        ? ([
            ["new", "New or back", count(({ again }) => again?.state === "new" || again?.state === "back")],
          ] as const)
        : []),
      ["settled", "Settled", count((one) => !isOpen(one))],
      ...(isAgain ? ([["gone", "Gone since", gone]] as const) : []),
    ];
    this.filter.replaceChildren(
      ...choices.map(([value, label, many]) => make("option", { value }, `${label} (${many})`)),
    );
    this.filter.value = choices.some(([value]) => value === chosen) ? chosen : "open";
  }

  private partOf(of: Listed, shown: readonly Item[], isGone: boolean): HTMLElement {
    const { heading, lines, kept, placeNow } = of;
    const level = this.level + (heading === undefined ? 0 : 1);
    const own = isGone ? [] : shown.slice(0, this.most).filter((one) => one.of === of);
    return make(
      "section",
      {},
      ...(heading === undefined ? [] : [make(headingOf(this.level), {}, heading)]),
      ...lines,
      ...sinceOf(kept),
      ...(isGone ? [goneList(kept?.gone ?? [], placeNow)] : []),
      ...WEIGHTS.flatMap((weight) => {
        const some = own.filter(({ finding }) => finding.weight === weight);
        if (some.length === 0) return [];
        return [
          make(headingOf(level), {}, `${HEADS[weight]} (${some.length})`),
          make(
            "ol",
            { className: `pane-findings pane-${weight.replace(" ", "-")}` },
            ...some.map((one) => this.entry(one)),
          ),
        ];
      }),
    );
  }

  private entry(item: Item): HTMLLIElement {
    const { of, finding, again } = item;
    const { place, cause, message, expected, effect, remedy, leadsTo = [] } = finding;
    const jump = ({ sheet, cell }: FindingPlace): HTMLButtonElement =>
      button(
        placeInWords({ sheet, at: cell }),
        () => {
          this.current = item;
          for (const one of this.entries.querySelectorAll("[aria-current]"))
            one.removeAttribute("aria-current");
          line.setAttribute("aria-current", "true");
          const shown = this.shown;
          setText(this.position, `${shown.indexOf(item) + 1} of ${shown.length}`);
          of.goTo(sheet, cell);
        },
        "pane-button pane-jump",
      );
    const to = goesTo(finding);
    const others = [place, cause].filter((one) => one && !isSamePlace(one, to));
    const word = of.kept?.earlier && again ? WORDS[again.state] : "";
    const line = make(
      "li",
      {},
      ...(to || word !== ""
        ? [
            make(
              "div",
              { className: "pane-row" },
              ...(to ? [jump(to)] : []),
              ...(others.length > 0
                ? [make("span", { className: "pane-quiet" }, "seen at"), ...others.map((one) => jump(one!))]
                : []),
              ...(word === "" ? [] : [make("span", { className: "finding-word" }, word)]),
            ),
          ]
        : []),
      paragraph(message),
      ...(expected ? [paragraph(`Should be: ${expected}`, "pane-quiet")] : []),
      ...(effect ? [paragraph(`Effect: ${effect}`, "pane-quiet")] : []),
      ...leadsToInWords(leadsTo).map((text) => paragraph(`Because of it: ${text}`, "pane-quiet")),
      paragraph(remedy, "pane-way"),
      ...waysOf(finding, jump),
      ...this.settling(item),
    );
    if (item === this.current) line.setAttribute("aria-current", "true");
    return line;
  }

  private settling(item: Item): HTMLElement[] {
    const { of, again } = item;
    if (!again || !of.settle) return [];
    const { settled, wasSettled } = again;
    const act = async (reason?: string): Promise<void> => {
      const now = await of.settle!(again.key, reason);
      this.take(item, afterSettling(again, now));
    };
    if (settled)
      return [
        make(
          "p",
          { className: "finding-settled" },
          `Settled ${timeInWords(settled.at)}: `,
          make("bdi", {}, settled.reason),
        ),
        button("Take back", () => void act().catch((error: unknown) => this.trouble(error))),
      ];
    const start = button("Settle…", () => {
      start.replaceWith(this.reasonForm(act, start));
      form()?.querySelector("textarea")?.focus();
    });
    const form = (): Element | null => this.entries.querySelector(".finding-reason");
    return [
      ...(wasSettled
        ? [
            make(
              "p",
              { className: "pane-quiet" },
              `Was settled ${timeInWords(wasSettled.at)}, when something else stood there: `,
              make("bdi", {}, wasSettled.reason),
            ),
          ]
        : []),
      start,
    ];
  }

  private reasonForm(act: (reason: string) => Promise<void>, start: HTMLElement): HTMLElement {
    const reason = make("textarea", {
      className: "pane-input",
      rows: 2,
      maxLength: LONGEST_REASON,
      dir: "auto",
    });
    const trouble = make("p", { className: "pane-trouble", role: "alert" });
    const close = (): void => {
      form.replaceWith(start);
      start.focus();
    };
    const settle = async (): Promise<void> => {
      try {
        await act(reason.value);
      } catch (error) {
        trouble.textContent = error instanceof Error ? error.message : String(error);
        reason.focus();
      }
    };
    const form = make(
      "div",
      { className: "finding-reason" },
      make("label", {}, "Why it may stay as it is", reason),
      trouble,
      make(
        "div",
        { className: "pane-row" },
        button("Settle", () => void settle(), "pane-button pane-first"),
        button("Cancel", close),
      ),
    );
    form.addEventListener("keydown", (event) => {
      if (event.key !== "Escape" && !(event.key === "Enter" && !event.shiftKey && event.target === reason))
        return;
      // Escape would close what the list stands in.
      event.stopPropagation();
      event.preventDefault();
      if (event.key === "Escape") close();
      else void settle();
    });
    return form;
  }

  /** What was settled leaves the list that is open: the focus goes to what comes after it. */
  private take(item: Item, again: Again): void {
    const before = this.shown.indexOf(item);
    item.again = again;
    const { kept, changed } = item.of;
    const index = item.of.findings.indexOf(item.finding);
    if (kept && changed) changed({ ...kept, now: kept.now.map((one, at) => (at === index ? again : one)) });
    const shown = this.shown;
    this.current = shown.includes(item) ? item : (shown[before] ?? shown.at(-1));
    this.draw();
    const entry = this.entries.querySelector<HTMLElement>("[aria-current]");
    (entry?.querySelector("button") ?? this.counts).focus();
  }

  private trouble(error: unknown): void {
    setText(this.position, error instanceof Error ? error.message : String(error));
  }
}

/** What kinds of change would put it right, each at its input. */
function waysOf({ mends = [] }: Finding, jump: (place: FindingPlace) => HTMLElement): HTMLElement[] {
  if (mends.length === 0) return [];
  const way = ({ place, what, does }: Mend): HTMLElement => make("li", {}, jump(place), ` ${what}: ${does}.`);
  const first = likeliest(mends);
  // The rest is a step away.
  const rest = mends.slice(first.length);
  return [
    paragraph(
      mends.length === 1 ? "This would do:" : "Any of these would do; try it and look again:",
      "pane-quiet",
    ),
    make("ul", { className: "finding-ways" }, ...first.map(way)),
    ...(rest.length === 0
      ? []
      : [
          make(
            "details",
            { className: "finding-ways" },
            make("summary", {}, `${rest.length} more ${rest.length === 1 ? "way" : "ways"}`),
            make("ul", {}, ...rest.map(way)),
          ),
        ]),
  ];
}

/** Goes on in the list that is seen, wherever the focus is. */
export function stepShown(by: 1 | -1): void {
  const buttons = document.querySelectorAll<HTMLButtonElement>(by > 0 ? ".finding-next" : ".finding-back");
  [...buttons].find((one) => one.offsetParent !== null)?.click();
}

/** Below so many above it. */
const headingOf = (level: number): "h2" | "h3" | "h4" => (["h2", "h3", "h4"] as const)[level - 1]!;

const WORDS: Readonly<Record<Again["state"], string>> = {
  new: "new",
  back: "back again",
  still: "",
  settled: "settled",
};

const textOf = ({ finding: { place, message, expected = "", remedy, rule = "" } }: Item): string =>
  [place ? `${place.sheet} ${place.cell}` : "", message, expected, remedy, rule].join(" ").toLowerCase();

function sinceOf(kept: KeptReview | undefined): HTMLElement[] {
  if (!kept?.earlier) return [];
  const { at, file } = kept.earlier;
  const fresh = kept.now.filter(({ state }) => state === "new" || state === "back").length;
  return [
    paragraph(
      `Since the review of ${timeInWords(at)}${file === "" ? "" : ` (${file})`}: ${fresh} new, ${kept.gone.length} gone.`,
      "pane-quiet",
    ),
  ];
}

const goneList = (gone: readonly Known[], placeNow: Listed["placeNow"]): HTMLElement =>
  gone.length === 0
    ? paragraph("Nothing is gone.")
    : make(
        "ul",
        {},
        ...gone.map((one) => {
          const { message, settled } = one;
          const place = placeNow(one);
          const where = place ? `${placeInWords({ sheet: place.sheet, at: place.cell })}: ` : "";
          return make(
            "li",
            {},
            `${where}${message}`,
            ...(settled ? [" It was settled: ", make("bdi", {}, settled.reason)] : []),
          );
        }),
      );
