/** A host without a spreadsheet: holds a book, notes what it is asked, and refuses what a test says. */
import {
  HostTrouble,
  type HostFacts,
  type PaneHost,
  type Preferences,
  type Selection,
} from "../../src/pane/host";
import type { Book } from "../../src/workbooks/book";
import type { ImportedTable } from "../../src/workbooks/imported/table";

export interface FakeOptions {
  readonly book: Book;
  readonly selection?: Selection;
  readonly facts?: Partial<HostFacts>;
  /** The call that is refused, with the sentence. */
  readonly refuse?: { readonly [call in keyof PaneHost]?: string };
  /** What the host understands of any file. */
  readonly tables?: readonly ImportedTable[];
  /** Of files of so many bytes, where a page is given several. */
  readonly tablesOfSize?: Readonly<Record<number, readonly ImportedTable[]>>;
  /** What the host reads in any workbook's file. */
  readonly opened?: Book;
  /** A host that works books out. */
  readonly compute?: (book: Book) => Book;
  /** A call that fails for a reason nobody foresaw. */
  readonly broken?: keyof PaneHost;
}

export interface FakeHost extends PaneHost {
  /** Every call with its arguments, in order. */
  readonly calls: readonly (readonly unknown[])[];
  select(selection: Selection): void;
}

export function fakeHost(
  version: string,
  { book, facts, refuse = {}, broken, ...rest }: FakeOptions,
): FakeHost {
  const calls: unknown[][] = [];
  const watchers = new Set<(selection: Selection) => void>();
  let selection = rest.selection ?? { sheet: book.sheets[0]!.name, at: "A1" };
  let preferences: Preferences = { lengthUnit: "m", currency: "" };
  let opens = false;
  const note = async (call: keyof PaneHost, ...args: unknown[]): Promise<void> => {
    calls.push([call, ...args]);
    const sentence = refuse[call];
    if (sentence !== undefined) throw new HostTrouble(sentence);
    if (broken === call) throw new TypeError("x is undefined");
  };
  return {
    calls,
    select: (next) => {
      selection = next;
      for (const changed of watchers) changed(next);
    },
    facts: async () => {
      await note("facts");
      return { kind: "excel", spills: true, functionsVersion: version, ...facts };
    },
    startWorkbook: async ({ book: started, file }) => {
      await note("startWorkbook", started.template, started.sheets.length, file);
      return "It is in a window of its own.";
    },
    startHere: async ({ book: started }) => {
      await note("startHere", started.template, started.sheets.length);
      return "";
    },
    openingOfPane: {
      isOn: async () => opens,
      keep: async (on) => {
        await note("openingOfPane", on);
        opens = on;
        return "";
      },
    },
    readBook: async () => {
      await note("readBook");
      return book;
    },
    readFile: async () => {
      await note("readFile");
      return book;
    },
    ...(rest.compute && { compute: rest.compute }),
    takeUpgrade: async (taken, from, to) => {
      await note("takeUpgrade", taken.templateVersion, from, to);
      return "It is upgraded.";
    },
    selection: async () => {
      await note("selection");
      return selection;
    },
    watchSelection: (changed) => {
      watchers.add(changed);
      return () => watchers.delete(changed);
    },
    goTo: (sheet, at) => note("goTo", sheet, at),
    enterFormula: (formula) => note("enterFormula", formula),
    addRows: async (count) => {
      await note("addRows", count);
      return `${count} rows were added to Outlets.`;
    },
    readTables: async (bytes) => {
      await note("readTables", bytes.length);
      return rest.tablesOfSize?.[bytes.length] ?? rest.tables!;
    },
    addOutlets: async (rows, changes) => {
      await note("addOutlets", rows, changes);
      return `${rows.length} outlets added to Rooms.`;
    },
    openFile: async (bytes) => {
      await note("openFile", bytes.length);
      return rest.opened!;
    },
    enterAll: async (entries, done) => {
      await note("enterAll", entries, done);
      return done;
    },
    enterOursAgain: async () => {
      await note("enterOursAgain");
      return 2;
    },
    handOverCopy: (kind) => note("handOverCopy", kind),
    handOverPdf: async (wanted, say) => {
      say("Making the pages: 1 of 2…");
      await note("handOverPdf", wanted);
      return "job - proposal.pdf is made: 2 pages.";
    },
    handOverBook: (handed, file) => note("handOverBook", handed.template, file),
    preferences: async () => {
      await note("preferences");
      return preferences;
    },
    keepPreferences: async (kept) => {
      preferences = kept;
      await note("keepPreferences", kept);
    },
  };
}
