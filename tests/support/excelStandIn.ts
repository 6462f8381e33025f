/**
 * A stand-in for Excel: the part of its object model that the add-in uses, and
 * nothing else. It enforces what Office does: properties must be loaded and
 * synced before they are read, ranges take matrices of their own shape,
 * protected cells refuse, nothing works while a cell is being edited, members
 * that it does not know throw. It counts round trips and undo steps, and
 * computes with the headless grid engine.
 *
 * Behaviour after the Office add-ins documentation, "Excel JavaScript object
 * model", "Work with ranges", "Undo support" and the reference of each member;
 * none of it was seen in Excel.
 */
import type { Book } from "../../src/workbooks/book";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import type { Desk } from "./excel/rangeStandIn";
import type { Happens } from "./excel/happens";
import type { Oddities } from "./excel/oddities";
import { asked, officeError, strict } from "./excel/strict";
import { Facts, workbookOf } from "./excel/workbookStandIn";
import { WorkbookState, type Lost } from "./excel/workbookState";

export interface StandInOptions {
  /** Newest set of ExcelApi that this Excel has. */
  readonly api?: string;
  readonly ghostFormulas?: boolean;
  /**
   * In a group this Excel answers UndoNotSupported (OfficeDev/office-js #6491), after so many changes were done:
   * whether it has done any by then is not documented.
   */
  readonly ungroupableAfter?: number;
  /** Outside of groups too it fails, after so many changes and so many times: a protected sheet, another person, a lost connection. */
  readonly failing?: { readonly after: number; times: number };
  /** What Excel hands over as the open workbook's file; where absent, one is written of the workbook as it stands. */
  readonly file?: Uint8Array;
  /** A policy, or this Excel, refuses new workbooks. */
  readonly refusesNew?: boolean;
  /** How it takes the sheets of a file: refused, or with a loss; otherwise they come as they are. */
  readonly inserting?: "refused" | Lost;
  /** Nothing can be kept in the workbook's settings, as where it may only be read. */
  readonly readOnly?: boolean;
  /** Excel on the web has no `openBrowserWindow`: neither the requirement set nor the member. */
  readonly opensBrowserWindows?: boolean;
  /** What goes wrong, and when. */
  readonly happens?: Happens;
  /** What Excel answers with at most, in bytes. */
  readonly mostAnswered?: number;
  readonly platform?: "PC" | "Mac" | "OfficeOnline" | "iOS";
  /** Pane and functions run in one page. */
  readonly sharedRuntime?: boolean;
  /** What sets it apart from others. With it, sheets call our functions through what the add-in associated. */
  readonly oddities?: Oddities;
}

/** The other requirement sets, each in its first version. */
const OPEN_BROWSER_WINDOW = "OpenBrowserWindowApi";
const SHARED_RUNTIME = "SharedRuntime";
const FUNCTIONS_RUNTIME = "CustomFunctionsRuntime";

interface RunOptions {
  readonly mergeUndoGroup?: boolean;
}

const SLICE_LIMIT = 4 * 1024 * 1024;
/** Excel keeps at most two files open for an add-in. */
const MOST_OPEN_FILES = 2;

class CustomFunctionsError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {
    if (message !== undefined && code !== "#VALUE!" && code !== "#N/A") {
      throw new Error(`Excel shows no message with ${code}`);
    }
  }
}

export class ExcelStandIn {
  readonly state = new WorkbookState();
  readonly associated = new Map<string, (...args: unknown[]) => unknown>();
  /** Copies that were opened as workbooks of their own. */
  readonly created: Uint8Array[] = [];
  syncs = 0;
  undoSteps = 0;
  editing = false;
  openFiles = 0;
  /** Addresses that were opened in a browser's window, and how often the pane was brought to the front. */
  readonly opened: string[] = [];
  panesShown = 0;
  /** Of the document: as set, and as kept in it. */
  private readonly settings = new Map<string, unknown>();
  savedSettings: ReadonlyMap<string, unknown> = new Map();
  /** What the add-in does when the document opens. */
  startup = "None";
  /** The ribbon's commands, by the name in the manifest. */
  readonly commands = new Map<string, (event: { completed(): void }) => void>();
  /** A batch may go on in the context of an earlier one. */
  private readonly sessions = new WeakMap<object, Session>();
  private readonly watchers = new Set<() => unknown>();

  /** When a function of ours was called first. */
  private calledFirst: number | undefined;

  constructor(private readonly options: StandInOptions = {}) {
    const { oddities } = options;
    if (!oddities) return;
    this.state.oddities = oddities;
    this.state.caller = { oddities, associated: this.associated, isBusy: () => this.isBusy() };
  }

  private isBusy(): boolean {
    this.calledFirst ??= performance.now();
    return (
      performance.now() - this.calledFirst < (this.options.oddities?.answering?.milliseconds ?? Infinity)
    );
  }

  /** The pane was closed: what it had asked is never answered. */
  isStopped = false;

  /** Before each request: what this Excel was busy with may be done. */
  async passes(): Promise<void> {
    const { milliseconds, answering } = this.options.oddities ?? {};
    if (this.isStopped) await new Promise(() => undefined);
    if (milliseconds !== undefined) await new Promise((resolve) => setTimeout(resolve, milliseconds));
    if (answering?.milliseconds !== undefined && this.calledFirst !== undefined && !this.isBusy()) {
      this.calledFirst = -Infinity;
      this.state.dirty();
    }
  }

  /** The globals of a page inside Excel. */
  globals(): Record<string, object> {
    return {
      Excel: strict("Excel", {
        run: (...args: unknown[]) => this.run(args),
        createWorkbook: async (base64: string) => {
          if (!this.supports("ExcelApi", "1.8"))
            throw new TypeError("Excel.createWorkbook is not a function");
          this.options.happens?.call?.("Excel.createWorkbook");
          if (this.options.refusesNew)
            throw officeError("AccessDenied", "Access is denied by the extension hardening policy.");
          this.created.push(Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0)));
        },
      }),
      Office: strict("Office", {
        onReady: async () => ({ host: "Excel" }),
        HostType: { Excel: "Excel" },
        PlatformType: { iOS: "iOS" },
        context: strict("Office.context", {
          platform: this.options.platform ?? "PC",
          contentLanguage: this.options.oddities?.displayLanguage ?? "en-US",
          displayLanguage: this.options.oddities?.displayLanguage ?? "en-US",
          diagnostics: strict("diagnostics", {
            host: "Excel",
            platform: this.options.platform ?? this.options.oddities?.platform ?? "PC",
            version: this.options.oddities?.version ?? "16.0.0.0",
          }),
          requirements: strict("requirements", {
            isSetSupported: (set: string, version: string) => this.supports(set, version),
          }),
          document: strict("document", {
            getFileAsync: this.getFileAsync.bind(this),
            settings: strict("settings", {
              get: (key: string) => this.settings.get(key) ?? null,
              set: (key: string, value: unknown) => void this.settings.set(key, value),
              saveAsync: (done: (result: object) => void) => {
                if (this.options.readOnly) {
                  done({ status: "failed", error: { message: "The workbook is read-only." } });
                  return;
                }
                this.savedSettings = new Map(this.settings);
                done({ status: "succeeded" });
              },
            }),
          }),
          ui: strict(
            "ui",
            this.options.opensBrowserWindows
              ? { openBrowserWindow: (url: string) => void this.opened.push(url) }
              : {},
          ),
        }),
        actions: strict("actions", {
          associate: (name: string, run: (event: { completed(): void }) => void) =>
            void this.commands.set(name, run),
        }),
        addin: strict("addin", {
          showAsTaskpane: async () => void (this.panesShown += 1),
          setStartupBehavior: async (behavior: string) => {
            this.options.happens?.call?.("addin.setStartupBehavior");
            this.startup = behavior;
          },
        }),
        StartupBehavior: { none: "None", load: "Load" },
        FileType: { Compressed: "compressed" },
        AsyncResultStatus: { Succeeded: "succeeded", Failed: "failed" },
      }),
      CustomFunctions: strict("CustomFunctions", {
        associate: (id: string, call: (...args: unknown[]) => unknown) => {
          if (!/^[A-Z][A-Z0-9_.]{2,}$/.test(id)) throw new Error(`${id} is no id of a custom function`);
          if (this.associated.has(id)) throw new Error(`${id} was associated already`);
          this.associated.set(id, call);
        },
        Error: CustomFunctionsError,
        ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
      }),
    };
  }

  /** Puts the globals of Excel in place. @returns takes them away */
  install(): () => void {
    const globals = this.globals();
    Object.assign(globalThis, globals);
    return () => {
      for (const key of Object.keys(globals)) delete (globalThis as Record<string, unknown>)[key];
    };
  }

  /** The workbook as Excel shows it. */
  book(): Book {
    return this.state.computed();
  }

  /** What a person types into a cell: a text, a number or a truth value. */
  type(sheet: string, at: string, content: string | number | boolean): void {
    const marked = typeof content === "string" && !this.state.isText(sheet, at);
    this.state.enter(sheet, at, marked ? `'${content}` : content);
  }

  async choose(sheet: string, at: string): Promise<void> {
    this.state.active = { sheet, at };
    for (const watcher of this.watchers) await watcher();
  }

  get watched(): number {
    return this.watchers.size;
  }

  private supports(set: string, version: string): boolean {
    if (set === OPEN_BROWSER_WINDOW) return version === "1.1" && this.options.opensBrowserWindows === true;
    if (set === SHARED_RUNTIME) return version === "1.1" && this.options.sharedRuntime !== false;
    if (set === FUNCTIONS_RUNTIME) return !this.options.oddities?.noFunctions;
    if (set !== "ExcelApi") throw new Error(`the set ${set} is not known to the stand-in`);
    const parts = (text: string): number => Number(text.split(".")[1]);
    return parts(version) <= parts(this.options.api ?? "1.20");
  }

  private async run(args: unknown[]): Promise<unknown> {
    const batch = args.at(-1) as (context: object) => Promise<unknown>;
    const first = args.length > 1 ? args[0] : undefined;
    const options = (
      first && typeof first === "object" && "mergeUndoGroup" in first ? first : {}
    ) as RunOptions;
    if (options.mergeUndoGroup && !this.supports("ExcelApi", "1.20"))
      throw new Error("mergeUndoGroup needs ExcelApi 1.20");
    const grouping = this.options.oddities?.grouping;
    if (options.mergeUndoGroup && typeof grouping === "object")
      throw officeError(grouping.throws, "The argument is invalid or missing or has an incorrect format.");
    const session =
      this.sessions.get(args[0] as object) ??
      new Session(this, options.mergeUndoGroup === true, this.watchers, this.options);
    this.sessions.set(session.context, session);
    const result = await batch(session.context);
    if (session.pending) throw new Error("a batch ended with work that was never synced");
    if (options.mergeUndoGroup && session.changes) this.undoSteps += 1;
    return result;
  }

  private getFileAsync(
    type: string,
    { sliceSize }: { sliceSize: number },
    done: (result: object) => void,
  ): void {
    if (type !== "compressed" || sliceSize > SLICE_LIMIT) throw new Error("a wrong request for the file");
    if (this.openFiles >= MOST_OPEN_FILES) {
      done({ status: "failed", error: { message: "two files are open already" } });
      return;
    }
    void Promise.resolve(this.options.file ?? writeXlsx(this.book())).then((bytes) => {
      this.openFiles += 1;
      done({
        status: "succeeded",
        value: {
          size: bytes.length,
          sliceCount: Math.ceil(bytes.length / sliceSize),
          getSliceAsync: (index: number, answer: (result: object) => void) => {
            try {
              this.options.happens?.call?.("File.getSliceAsync", index);
            } catch (error) {
              answer({ status: "failed", error });
              return;
            }
            const data = [...bytes.subarray(index * sliceSize, (index + 1) * sliceSize)];
            answer({ status: "succeeded", value: { data, index, size: data.length } });
          },
          closeAsync: () => void (this.openFiles -= 1),
        },
      });
    });
  }
}

function applicationFacts(desk: Desk, { calculation, decimalSeparator = "." }: Oddities): object {
  const signs = {
    numberDecimalSeparator: () => decimalSeparator,
    numberGroupSeparator: () => (decimalSeparator === "," ? "." : ","),
  };
  return Object.assign(
    new Facts(desk, {
      calculationMode: () => calculation ?? (desk.state.manual ? "Manual" : "Automatic"),
      calculationState: () => "Done",
      calculationEngineVersion: () => 191029,
      decimalSeparator: () => decimalSeparator,
      thousandsSeparator: () => signs.numberGroupSeparator(),
    }),
    {
      cultureInfo: strict("cultureInfo", {
        numberFormat: strict("NumberFormatInfo", new Facts(desk, signs)),
      }),
    },
  );
}

/** The files inserted last, as they are read: the same few are inserted again and again, each time as a copy. */
const read = new Map<string, Promise<Book>>();
const MOST_READ = 12;

function fileOf(base64: string): Promise<Book> {
  const known = read.get(base64) ?? readXlsx(Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0)));
  read.delete(base64);
  read.set(base64, known);
  if (read.size > MOST_READ) read.delete(read.keys().next().value!);
  return known;
}

/** One `Excel.run`: a queue of work that waits for `context.sync()`. */
class Session implements Desk {
  readonly context: object;
  readonly state: WorkbookState;
  changes = false;
  private count = 0;
  private queue: { readonly call: string; readonly work: () => unknown }[] = [];
  private running = false;
  private answeredBytes = 0;

  constructor(
    private readonly excel: ExcelStandIn,
    private readonly grouped: boolean,
    watchers: Set<() => unknown>,
    private readonly options: StandInOptions,
  ) {
    this.state = excel.state;
    const context: Record<string, unknown> = {
      sync: () => this.sync(),
      application: strict(
        "application",
        Object.assign(applicationFacts(this, options.oddities ?? {}), {
          suspendApiCalculationUntilNextSync: () => this.later(() => undefined),
          suspendScreenUpdatingUntilNextSync: () => this.later(() => undefined),
        }),
      ),
    };
    this.context = strict("context", context);
    context.workbook = workbookOf(this, watchers, this.context);
  }

  get ghostFormulas(): boolean {
    return this.options.ghostFormulas === true;
  }

  get pending(): boolean {
    return this.queue.length > 0;
  }

  later(work: () => unknown): void {
    // What a call asks for while it is carried out belongs to it.
    this.queue.push({ call: this.running ? "" : asked.last, work });
  }

  answered(value: unknown): void {
    if (this.options.mostAnswered !== undefined) this.answeredBytes += JSON.stringify(value ?? null).length;
  }

  /** Called before each change. */
  changed(): void {
    const { ungroupableAfter, failing } = this.options;
    if (this.grouped && this.options.oddities?.grouping === "unsupported") this.ungroupable();
    if (this.grouped && this.count === ungroupableAfter)
      throw officeError("UndoNotSupported", "Undo is not supported for this call.");
    if (!this.grouped && failing && failing.times > 0 && this.count === failing.after) {
      failing.times -= 1;
      throw officeError("GeneralException", "Something went wrong.");
    }
    this.count += 1;
    this.changes = true;
  }

  ungroupable(): void {
    if (this.grouped) throw officeError("UndoNotSupported", "Undo is not supported for this call.");
  }

  async insertFile(base64: string): Promise<void> {
    const { inserting } = this.options;
    this.ungroupable();
    if (inserting === "refused") throw officeError("UnsupportedFeature", "The file can't be inserted.");
    const file = await fileOf(base64);
    this.changed();
    this.state.insertSheets(file, inserting);
  }

  private async sync(): Promise<void> {
    this.excel.syncs += 1;
    await this.excel.passes();
    if (this.excel.editing) {
      this.queue = [];
      throw officeError("InvalidOperationInCellEditMode", "Excel is in cell-editing mode.");
    }
    const before = this.changes;
    this.changes = false;
    try {
      const { happens, mostAnswered } = this.options;
      const calls = this.queue.map(({ call }) => call);
      happens?.before?.(calls);
      this.running = true;
      this.answeredBytes = 0;
      // Loading a collection queues the loading of its members, which belongs to the same round trip.
      for (let one = this.queue.shift(); one; one = this.queue.shift()) {
        if (one.call !== "") happens?.call?.(one.call, undefined, this.grouped);
        await one.work();
      }
      if (mostAnswered !== undefined && this.answeredBytes > mostAnswered)
        throw officeError("ResponsePayloadSizeLimitExceeded", "The response payload size limit is exceeded.");
      happens?.after?.(calls);
    } finally {
      this.running = false;
      this.queue = [];
      if (this.changes && !this.grouped) this.excel.undoSteps += 1;
      this.changes ||= before;
    }
  }
}
