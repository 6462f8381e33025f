/**
 * A computed job as the document that goes to the customer. Every figure in it is what a cell of the job shows; nothing
 * is worked out here, and nothing of a sheet that is the firm's own gets in: costs, margins, suppliers, minutes, notes.
 */
import type { Book } from "../workbooks/book";
import type { JobInputs } from "../workbooks/definition";
import { DRAFT_WORDS } from "../workbooks/draft";
import { fnv1a } from "../workbooks/fnv1a";
import { estimate } from "../workbooks/multiRoom/names";
import { SAFETY, TERMS } from "../workbooks/multiRoom/quote";
import type { Typesetting } from "../workbooks/paperSheet";
import { withTodaysNames } from "../workbooks/renamedNames";
import type { Picture } from "../pictures/picture";
import { chosenParts, type ChosenParts, type ProposalPart } from "./chosenParts";
import type { DocumentPart, PaperDocument } from "./document";
import { firmsWords, type FirmsWords } from "./firmsWords";
import type { LogoFile } from "./logo";
import {
  heading,
  listOf,
  offer,
  optionsOffered,
  paragraph,
  prices,
  provisionalSums,
  schedule,
  under,
} from "./sections";
import { shownIn, tidy, type Shown } from "./shown";
import { blanks, distrust, doubts, hasFailing } from "./trust";

export interface ProposalWanted {
  /** Shows a number under a sheet's format, as the book's people write it. */
  readonly formatted: Typesetting["formatted"];
  /** What the firm's standards hold, for what the job itself does not say. */
  readonly firm?: JobInputs;
  readonly logo?: LogoFile;
  readonly parts?: ChosenParts;
  /** As a sheet has dates. */
  readonly today: number;
  /** It may be signed although checks of the job fail. */
  readonly anyway?: boolean;
  /** Of its text not all can be set. */
  readonly isIncomplete?: boolean;
  /** Drawn when the proposal has a place for them. */
  readonly pictures: Readonly<Record<"diagram" | "sky", (book: Book) => readonly Picture[]>>;
}

export type Proposal =
  | {
      /** Why there is none, in sentences. */
      readonly refused: readonly string[];
    }
  | {
      readonly refused?: undefined;
      readonly document: PaperDocument;
      /** What may be left out and was not. */
      readonly parts: ReadonlySet<ProposalPart>;
      /** As the job says, else the firm; undefined where neither does. */
      readonly paper: "a4" | "letter" | undefined;
      /** What must be there and is not, each in a sentence that says where it is filled in. */
      readonly missing: readonly string[];
      /** What the office should know before it goes out; no word of it is in the document. */
      readonly notes: readonly string[];
    };

const { quote, proposal, site } = estimate;
const FIRST_REVISION = 1;

/** Letters of a firm's name; a longer one would leave a foot of several lines. It stands in the letterhead. */
const LONGEST_IN_FOOT = 60;

/** @param computed a computed book */
export function proposalOf(computed: Book, wanted: ProposalWanted): Proposal {
  if (computed.template !== "multi-room")
    return {
      refused: [
        `A proposal is made of a multi-room estimate; this workbook is ${computed.template === "" ? "none of ours" : `made from the template ${computed.template}`}. Open the estimate of the job.`,
      ],
    };
  const book = withTodaysNames(computed);
  const refused = distrust(book);
  if (refused.length > 0)
    return { refused: [...refused, "No proposal was made. Checks and rigsheet review tell the cells."] };
  const shown = shownIn(book, wanted.formatted);
  const firm = firmsWords(shown, wanted.firm);
  const parts = chosenParts(wanted.parts ?? {}, firm.said);
  const pictures = picturesOf(book, wanted.pictures, parts);
  const options = optionsOffered(shown, parts.has("lines"));
  const notes = doubts(book, wanted.today);
  const isDraft =
    firm.name === "" ||
    shown.at(quote.draft) !== "" ||
    wanted.isIncomplete === true ||
    (hasFailing(book) && wanted.anyway !== true);
  const number = shown.at(quote.number);
  const isRevised = Number(shown.at(site.revision)) > FIRST_REVISION;
  const all: readonly DocumentPart[] = [
    letterheadOf(firm, wanted.logo),
    { kind: "title", text: "Proposal" },
    ...factsOf(shown),
    ...(isRevised ? [paragraph("It takes the place of every earlier revision of this number.", "note")] : []),
    ...(isDraft ? [paragraph(DRAFT_WORDS, "caution")] : []),
    ...(parts.has("offer") ? offer(shown) : []),
    ...prices(shown, parts.has("lines")),
    ...provisionalSums(shown),
    ...(parts.has("options") ? options.parts : []),
    ...under("Assumptions", listOf(firm.assumptions)),
    ...under("Not included", listOf(firm.exclusions)),
    ...(parts.has("payment") ? under("Terms of payment", listOf(firm.payment)) : []),
    ...(parts.has("warranty") ? under("Warranty", listOf(firm.warranty)) : []),
    heading("Terms and safety"),
    paragraph(TERMS.join(" ")),
    paragraph(SAFETY.join(" "), "caution"),
    ...(parts.has("acceptance") && !isDraft
      ? acceptance(
          shown,
          parts.has("options") && options.open,
          parts.has("schedule") || pictures.parts.length > 0,
        )
      : []),
    // What is looked up, not read, comes after what is signed.
    ...(parts.has("schedule") ? schedule(shown) : []),
    ...pictures.parts,
  ];
  const known = [number, shown.at(quote.date)].filter((one) => one !== "");
  const paper = firm.said(proposal.paper).toLowerCase();
  return {
    document: {
      title: ["Proposal", known[0], shown.at(quote.job)].filter(Boolean).join(", "),
      author: firm.name,
      subject: [shown.at(quote.customer), shown.at(quote.place)].filter(Boolean).join(", "),
      language: "en",
      // Two that bear the same number and date are told apart by it.
      foot: [
        isDraft ? DRAFT_WORDS : "",
        firm.name.length > LONGEST_IN_FOOT ? "" : firm.name,
        ...known,
        `text ${fingerprint(all)}`,
      ]
        .filter(Boolean)
        .join(" · "),
      parts: all,
    },
    parts,
    paper: paper === "a4" || paper === "letter" ? paper : undefined,
    missing: [
      ...(firm.name === ""
        ? [
            "The firm has no name: fill “Letterhead, as it stands at the foot of the quote” on Terms, or give the firm's standards.",
          ]
        : []),
      ...blanks(book),
      ...(parts.has("options") ? options.unpriced : []).map(
        (option) => `The option “${option}” has no price yet: it stands as open in the proposal. See Terms.`,
      ),
      ...pictures.missing,
    ],
    notes,
  };
}

const letterheadOf = ({ name, lines }: FirmsWords, logo: ProposalWanted["logo"]): DocumentPart => ({
  kind: "letterhead",
  name,
  lines,
  ...(logo && { logo: { ...logo, alt: name === "" ? "Logo" : `Logo of ${name}` } }),
});

const sumOf = (at: Shown["at"]): string =>
  at(quote.total) === "" ? "" : [at(quote.total), at(quote.currency)].filter((one) => one !== "").join(" ");

function factsOf({ at }: Shown): readonly DocumentPart[] {
  const rows = [quote.customer, quote.place, quote.job, quote.number, quote.date, quote.until, quote.by]
    .map((of) => ({ label: of.words.label, value: at(of) }))
    .concat({ label: quote.total.words.label, value: sumOf(at) })
    .filter(({ value }) => value !== "");
  return rows.length === 0 ? [] : [{ kind: "facts", rows }];
}

/** As they are drawn of the job; each with its own words beside it. */
function picturesOf(
  book: Book,
  draw: ProposalWanted["pictures"],
  chosen: ReadonlySet<ProposalPart>,
): { readonly parts: readonly DocumentPart[]; readonly missing: readonly string[] } {
  const drawn = (["diagram", "sky"] as const)
    .filter((kind) => chosen.has(kind))
    .flatMap((kind) => draw[kind](book));
  return {
    parts: drawn
      .filter(({ empty }) => !empty)
      .map(({ svg, description }) => ({ kind: "picture", svg, alt: tidy(description) }) as const),
    missing: drawn.filter(({ empty }) => empty).map(({ description }) => description),
  };
}

/** Two sign, as on a change order, and on one page: no signature stands apart from the number and the total. */
function acceptance({ at }: Shown, hasBoxes: boolean, hasAnnex: boolean): readonly DocumentPart[] {
  const of = [at(quote.number), at(quote.date)].filter((one) => one !== "").join(", ");
  const text = [
    `We accept the proposal ${of}, valid until ${at(quote.until)},${hasAnnex ? " with what stands on the pages after this," : ""} at a total of ${sumOf(at)}.`,
    ...(hasBoxes ? ["What is ticked above is ordered with it."] : []),
  ].join(" ");
  const lines = ["Customer: signature", "Firm: signature", "Name, place and date", "Name, place and date"];
  return under("Acceptance", [
    {
      kind: "signature",
      text,
      lines: [...(hasBoxes ? ["Total with what is ticked, with tax", ""] : []), ...lines],
    },
  ]);
}

/** Of all that the document says and shows. */
const fingerprint = (parts: readonly DocumentPart[]): string =>
  fnv1a(
    JSON.stringify(parts.map((part) => (part.kind === "letterhead" ? { ...part, logo: undefined } : part))),
  )
    .toString(16)
    .padStart(16, "0")
    .slice(0, FINGERPRINT_DIGITS);
const FINGERPRINT_DIGITS = 8;
