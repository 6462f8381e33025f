/**
 * What the pane needs of the program that it sits in: Excel or the desk. The
 * pane is written against this and nothing else. Every call that can fail for
 * a reason that a person can mend rejects with a {@link HostTrouble}.
 */
import type { AskedReview, Settling } from "../jobs/reviews";
import type { KeptReview } from "../review/again/keptReview";
import type { Settled } from "../review/again/knownAgain";
import type { FullReview } from "../review/reviewInFull";
import type { Entry } from "../standards/entries";
import type { LogoFile } from "../proposal/logo";
import type { CopyKind } from "../hosts/file/copy/copyOf";
import type { Book, BookResult } from "../workbooks/book";
import type { RememberedMapping } from "../workbooks/imported/columns";
import type { ImportedTable } from "../workbooks/imported/table";
import type { RowChanges } from "../workbooks/survey/merge";
import type { SurveyRow } from "../workbooks/survey/survey";
import type { Trial, TrialHelp } from "./trial";

/** A sentence for a person: what is in the way and the way on. */
export class HostTrouble extends Error {}

export interface Selection {
  readonly sheet: string;
  /** A1 address of the active cell, without dollar signs. */
  readonly at: string;
  /** As people see it, without the equals sign; absent in a cell without a formula. */
  readonly formula?: string;
  readonly result?: BookResult;
}

export interface HostFacts {
  readonly kind: "excel" | "desk";
  /** Formulas that spill work here. */
  readonly spills: boolean;
  /** The version of the functions that answer in the sheet; the pane compares it with its own. */
  readonly functionsVersion: string | undefined;
}

/** A person's settings, kept by the host. */
export interface Preferences {
  readonly lengthUnit: "m" | "ft";
  readonly currency: string;
  /** What the columns of earlier surveys were taken for, by their heads. */
  readonly mappings?: readonly RememberedMapping[];
}

/** Where nobody has chosen anything. */
export const USUAL_PREFERENCES: Preferences = { lengthUnit: "m", currency: "" };

/** A workbook to begin with. */
export interface StartedBook {
  readonly book: Book;
  /** Its file as it lies with the add-in, computed and with its pictures; absent where the person's settings change it. */
  readonly file?: string;
}

/** Whether the program brings the pane, and with it the functions, whenever it opens this workbook. */
export interface OpeningOfPane {
  isOn(): Promise<boolean>;
  /** @returns what is to be known of it, in a sentence; empty where there is nothing */
  keep(on: boolean): Promise<string>;
}

/** Standards of a firm that the host has at hand. */
export interface StandardsHere {
  /** Whose, which edition, of what date. */
  readonly label: string;
  read(): Promise<Book>;
}

/** Where reviews are kept, beside the jobs. */
export interface KeptReviews {
  /** By which the open workbook is known beside its quote number. */
  marks(): readonly string[];
  keep(asked: AskedReview): Promise<KeptReview>;
  /** @returns null where it is settled no more */
  settle(settling: Settling): Promise<Settled | null>;
}

/** What is handed over as a PDF. */
export type WantedPdf =
  | {
      readonly kind: "proposal";
      readonly logo?: LogoFile;
      /** To be signed although checks fail. */
      readonly anyway: boolean;
    }
  | {
      readonly kind: "print";
      /** The customer's page, or all sheets where there is none; every sheet; or the crew's cards. */
      readonly what: "usual" | "all" | "cards";
    };

export interface PaneHost {
  facts(): Promise<HostFacts>;
  /** Opens a workbook to begin with. @returns what is to be known of it, in sentences; empty where there is nothing */
  startWorkbook(started: StartedBook): Promise<string>;
  /** Puts its sheets into the open workbook instead; absent in a program in which that is not done. */
  readonly startHere?: (started: StartedBook) => Promise<string>;
  /** Absent in a program that the pane is a part of. */
  readonly openingOfPane?: OpeningOfPane;
  /** The whole workbook as it stands, with computed values. */
  readBook(): Promise<Book>;
  /** The same as its file holds it: with its looks, input rules and notes. */
  readFile(): Promise<Book>;
  /** Computes a book; absent in a program that computes only what is open in it. */
  readonly compute?: (book: Book) => Book;
  /** By cause and money; absent in a program that computes only what is open in it. */
  readonly review?: (book: Book) => FullReview;
  readonly reviews?: KeptReviews;
  /** Takes the upgraded workbook; nothing of the older one is lost. @returns what was done, in a sentence */
  takeUpgrade(book: Book, from: string, to: string): Promise<string>;
  selection(): Promise<Selection>;
  /** @returns a function that ends the watching */
  watchSelection(changed: (selection: Selection) => void): () => void;
  goTo(sheet: string, at: string): Promise<void>;
  /** Writes a formula, without its equals sign, into the active cell. */
  enterFormula(formula: string): Promise<void>;
  /** Adds rows to the block of the active cell and to those that mirror it. @returns what was done, in a sentence */
  addRows(count: number): Promise<string>;
  /** The tables of a text or of a workbook, such as a site survey or a price list; what they mean is the pane's to say. */
  readTables(bytes: Uint8Array): Promise<readonly ImportedTable[]>;
  /**
   * Writes outlets below the last filled row of Rooms, with rows added where needed, and what changes in rows that are
   * there; all of it or nothing. @returns what was done, in a sentence
   */
  addOutlets(rows: readonly SurveyRow[], changes?: RowChanges): Promise<string>;
  /** Reads a workbook's file. */
  openFile(bytes: Uint8Array): Promise<Book>;
  /** The firm's standards among the jobs that the host keeps, the newest first; absent where it keeps none. */
  readonly standardsHere?: () => Promise<readonly StandardsHere[]>;
  /**
   * Types entries into their cells, with rows added where needed, in one step.
   * @param done what is said when it is done
   */
  enterAll(entries: readonly Entry[], done: string): Promise<string>;
  /** Enters every formula of ours again where it stands at an error of an unknown name. @returns how many */
  enterOursAgain(): Promise<number>;
  /** Hands the person a copy: `office` freezes our cells, `sealed` all of them; `cards` are the crew's, to print. */
  handOverCopy(kind: CopyKind): Promise<void>;
  /**
   * Hands the person a PDF, named after the job.
   * @param say is told how far it is
   * @returns what is to be known of it, in sentences
   */
  handOverPdf(wanted: WantedPdf, say: (words: string) => void): Promise<string>;
  /** Hands the person another workbook; the open one stays as it is. @param file its name, where the host gives files */
  handOverBook(book: Book, file: string): Promise<void>;
  /** Tries what this program does, on sheets of its own; absent in a program of ours. */
  readonly tryExcel?: (help: TrialHelp) => Promise<Trial>;
  /** The page so far of a trial that the closing of the pane or of the program broke off. */
  readonly interruptedTrial?: () => Trial | undefined;
  /** Hands the person what was found out, as a workbook. */
  readonly handOverTrial?: (trial: Trial) => Promise<void>;
  preferences(): Promise<Preferences>;
  keepPreferences(preferences: Preferences): Promise<void>;
}
