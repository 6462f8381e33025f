/**
 * Files as somebody else left them: the base books made from the templates, unzipped, changed part by part as a
 * case says, zipped again, read and reviewed. tests/fixtures/spoiltFiles/README.md says who made the cases.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { unzipSync, zipSync } from "fflate";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeJob } from "../../src/hosts/file/writeJob";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Finding } from "../../src/review/finding";
import { review } from "../../src/review/review";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { mendedGuestHouse } from "../review/cleanJobs";

/** Texts of XML, and bytes of what is none. */
/** The rules that look at what is in a file beside its cells, or at no figure at all. */
export const RULES_OF_FILES = [
  "input leads nowhere",
  "text that looks like another",
  "shown otherwise",
  "cannot be read",
  "hidden by condition",
  "drawn over",
  "page",
  "words of the quote changed",
  "tells more than the page",
  "leads outside",
  "guard removed",
] as const;

export type PartsOfFile = Map<string, string | Uint8Array>;

export interface PlaceOfCause {
  readonly sheet?: string;
  readonly cell?: string;
  readonly name?: string;
  readonly workbook?: boolean;
}

export interface EditOfCell {
  readonly at: { readonly sheet: string; readonly cell: string };
  readonly value: number | string | null;
}

export interface SpoiltCase {
  readonly id: string;
  readonly kind: string;
  readonly book: BaseBook;
  readonly why: string;
  readonly spoil?: (files: PartsOfFile) => void;
  /** Typed into cells and computed anew, instead. */
  readonly edits?: readonly EditOfCell[];
  readonly fair: boolean;
  readonly because: string;
  readonly cause: readonly PlaceOfCause[];
  readonly severity: "wrong" | "doubtful" | "unusual" | "note";
  readonly says: readonly string[];
  readonly movesPrice: boolean;
}

export interface CleanVariant {
  readonly id: string;
  readonly book: BaseBook;
  readonly why: string;
  readonly spoil?: (files: PartsOfFile) => void;
  readonly edits?: readonly EditOfCell[];
  readonly expect: "nothing" | "note";
}

export type BaseBook = "guest-house" | "hostel" | "block";

const committed = (file: string): Uint8Array =>
  new Uint8Array(readFileSync(join(__dirname, "../../templates", file)));

const BASES: Readonly<Record<BaseBook, () => Uint8Array | Promise<Uint8Array>>> = {
  "guest-house": () => writeJob(recalculate(layOut(multiRoom, mendedGuestHouse()))),
  hostel: () => committed("multi-room-hostel.xlsx"),
  block: () => committed("multi-room-apartment-block.xlsx"),
};

const made = new Map<BaseBook, Promise<Uint8Array>>();
export function baseFile(book: BaseBook): Promise<Uint8Array> {
  let known = made.get(book);
  if (!known) made.set(book, (known = Promise.resolve(BASES[book]())));
  return known;
}

const isText = (name: string): boolean => /\.(?:xml|rels|vml)$/i.test(name);

export function partsOf(bytes: Uint8Array): PartsOfFile {
  const decoder = new TextDecoder();
  return new Map(
    Object.entries(unzipSync(bytes)).map(([name, part]) => [
      name,
      isText(name) ? decoder.decode(part) : part,
    ]),
  );
}

export function zipped(files: PartsOfFile): Uint8Array {
  const encoder = new TextEncoder();
  const parts = [...files].map(([name, part]): [string, Uint8Array] => [
    name,
    typeof part === "string" ? encoder.encode(part) : part,
  ]);
  // What is packed need not be small here.
  return zipSync(Object.fromEntries(parts), { level: 0 });
}

type Spoilt = Pick<SpoiltCase, "book" | "spoil" | "edits">;

/** The file of a case as the review is given it; one whose cells were typed into was computed before it was saved. */
export async function spoiltBook({ book, spoil, edits }: Spoilt): Promise<Book> {
  const files = partsOf(await baseFile(book));
  spoil?.(files);
  const read = await readXlsx(zipped(files), { forReview: true });
  if (!edits) return read;
  for (const { at, value } of edits) {
    const sheet = read.sheets.find(({ name }) => name === at.sheet)!;
    const { look } = sheet.cells[at.cell] ?? {};
    sheet.cells[at.cell] = { ...(look !== undefined && { look }), ...(value !== null && { value }) };
  }
  return { ...recalculate(read), ...(read.saved && { saved: read.saved }) };
}

const reviewedBook = (book: Book): Finding[] => review(book, recalculate);

export const told = ({ weight, rule, place, message }: Finding): string =>
  `${weight} | ${rule} | ${place ? `${place.sheet}!${place.cell}` : "-"} | ${message}`;

const toldOfBase = new Map<BaseBook, Promise<ReadonlySet<string>>>();
/** What the review says of the base is none of the case's. */
export function saidOfBase(book: BaseBook): Promise<ReadonlySet<string>> {
  let known = toldOfBase.get(book);
  if (!known) {
    known = baseFile(book)
      .then((file) => readXlsx(file, { forReview: true }))
      .then(reviewedBook)
      .then((findings) => new Set(findings.map(told)));
    toldOfBase.set(book, known);
  }
  return known;
}

/** What the review says more of a file than of its base. */
export async function brought(one: Spoilt): Promise<readonly Finding[]> {
  const before = await saidOfBase(one.book);
  const findings = reviewedBook(await spoiltBook(one));
  return findings.filter((finding) => !before.has(told(finding)));
}

export const isHeavy = ({ weight }: Finding): boolean => weight !== "worth knowing";

/** All that a finding says. */
export const wordsOf = ({ message, expected, effect, remedy }: Finding): string =>
  [message, expected, effect, remedy].join(" ").toLowerCase();

/** Whether the finding stands where the outsider says that the cause is. */
export function isAt(finding: Finding, causes: readonly PlaceOfCause[]): boolean {
  const places = [finding.place, finding.cause].filter((one) => one !== undefined);
  return causes.some(({ sheet, cell, name, workbook }) =>
    name !== undefined
      ? finding.message.includes(name)
      : workbook
        ? places.length === 0
        : places.some((one) => one.sheet === sheet && (cell === undefined || one.cell === cell)),
  );
}

export type Outcome = "named" | "other place" | "other words" | "silent";

export function outcomeOf(one: SpoiltCase, findings: readonly Finding[]): Outcome {
  const light = one.severity === "note" || one.severity === "unusual";
  const counted = findings.filter((finding) => light || isHeavy(finding));
  const said = (finding: Finding): boolean =>
    one.says.some((word) => wordsOf(finding).includes(word.toLowerCase()));
  const placed = counted.filter((finding) => isAt(finding, one.cause));
  if (placed.some(said)) return "named";
  if (placed.length > 0) return "other words";
  return counted.length > 0 ? "other place" : "silent";
}
