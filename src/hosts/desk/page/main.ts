/** The desk's page. */
import * as library from "@odoo/o-spreadsheet";
import { allFunctions } from "../../../functions/all";
import type { ShelfEntry } from "../../../jobs/catalogue";
import type { Book } from "../../../workbooks/book";
import { jobInputsOf } from "../../../workbooks/jobInputsOf";
import { priceTables } from "../../../workbooks/prices/priceTable";
import { priceBook } from "../../../workbooks/prices/priceBook";
import { takesPrices } from "../../../workbooks/prices/takesPrices";
import { sheetDateOf } from "../../../workbooks/sheetDate";
import { entriesOf } from "../../../standards/entries";
import type { ImportedTable } from "../../../workbooks/imported/table";
import { demonstrations, templates } from "../../../workbooks/templates";
import { quoteFromList, REVIEW_SHEET } from "../../../pane/listedQuote";
import { nextStep } from "../../../review/fillingSteps";
import { drawnBook } from "../../../standards/drawOn";
import { reviewInFull } from "../../../review/reviewInFull";
import { trainingSets } from "../../../training/sets/all";
import { traineeSheet } from "../../../training/traineeSheet";
import { troublesOf } from "../../grid/gridContract";
import { api } from "./api";
import { messageOf, ServerTrouble } from "./deskTrouble";
import { BackAndForth, type ShownNow } from "./backAndForth";
import { Bar } from "./bar";
import { CellEntry } from "./cellEntry";
import { Desk } from "./desk";
import { takeKey } from "./deskKey";
import { stepShown } from "../../../pane/findingList";
import "../../../pane/pane.css";
import "./desk.css";
import { outletsAdded } from "./deskHost";
import type { DeskGuard } from "./deskPlugin";
import { askForExercise, askForRows, askForTemplate, chooseFile, chooseFiles } from "./dialogs";
import { trials } from "./comparing";
import { fileReaders } from "./fileReaders";
import { askForList, isList } from "./quoteFromList";
import { painted } from "./dom";
import { canHold, heldFile, pickFile } from "../../storage/fileHandles";
import { PaneBeside } from "./paneBeside";
import { printPages } from "./printing";
import { askForPrices } from "./pricesDialog";
import { askForSurvey } from "./surveyDialog";
import { showHelp } from "./help";
import { showHelpHere } from "./helpHere";
import { acceptDrops, readDropped, ReviewsBeside, type Chosen, type Dropped } from "./reviewDropped";
import { jobsShown } from "./jobsShown";
import type { JobsView } from "./jobsView";
import { offer } from "./offers";
import { Offline, type Remark } from "./offline";
import { OpenJob } from "./openJob";
import { remarksOn } from "./remarksOn";
import { save } from "./saving";
import { selectCell } from "./selectCell";
import { stand } from "./stand";
import { SheetLists } from "./sheetLists";
import { StartPage, type StartActions } from "./startPage";
import { keepStartPreferences, startPreferences } from "./startPreferences";
import { Strip } from "./strip";
import { WaitingRoom } from "./waiting";
import { requireCompiling } from "./requireCompiling";
import { loadStylesAsText } from "./loadStylesAsText";
import { standardsHere } from "./standardsHere";
import { takeUpgrade } from "./takeUpgrade";
import { teachGrid } from "./teachGrid";
import { isEditing, keepUnfinished, toldOfUnfinished, unfinishedEntry } from "./unfinished";

// The library reports its timings there.
console.debug = () => undefined;

const element = (id: string): HTMLElement => document.getElementById(id)!;

const guard: DeskGuard = { unlocked: new Set(), refused: (sentence) => bar.showNotice(sentence) };
const entry = new CellEntry();
const strip = new Strip(element("strip"));
let desk: Desk;
let job: OpenJob;
let jobs: JobsView | undefined;
let startPage: StartPage | undefined;
let pane: PaneBeside | undefined;
let offline: Offline | undefined;

const bar = new Bar(element("bar"), {
  // Pressed while the job is being opened, it is not lost.
  start: () => void opening.then(() => showStart()),
  jobs: () => showJobs(),
  newJob: () => void run("Starting a new job…", newJob),
  open: () => void run("Opening the workbook…", open),
  save: () => void run("Saving the workbook…", saveNow),
  print: () => void run("Looking at what prints…", printNow),
  importSurvey: () => void run("Reading the survey…", importSurvey),
  takePrices: () => void run("Reading the price list…", takePrices),
  addRows: () => void run("Adding rows…", addRows),
  undo: () => void run("Undoing…", back("REQUEST_UNDO", "Nothing to undo.")),
  redo: () => void run("Redoing…", back("REQUEST_REDO", "Nothing to redo.")),
  toggleLock: () => desk.toggleLock(),
  // Pressed while the job is being opened, it is not lost.
  togglePane: () => void opening.then(() => pane?.toggle()),
  help: () => showHelp(allFunctions),
});

const reviews = new ReviewsBeside(
  element("reviews"),
  (chosen) => void run("Opening the workbook…", (started) => openAt(chosen, started)),
  api.settle,
  () => desk.focus(),
);

let running = 0;
/** What covers the grid goes away at the end of what runs. */
let isUncovered = false;

/**
 * Another job is open: nothing covers it any more. While an action goes on,
 * only at its end: keys typed before it has chosen a cell would be lost.
 */
function uncoverJob(isGone = false): void {
  if (job.id !== undefined) visited.note({ job: job.id, cover: "" }, isGone || !isOpen);
  isUncovered = running > 0 && !!(startPage?.isShown || jobs?.isShown);
  if (isUncovered) return;
  startPage?.hide();
  jobs?.hide();
}

const BEING_TYPED = "A cell is being typed. Finish it with Enter first.";

const coverNow = (): ShownNow["cover"] => (startPage?.isShown ? "start" : jobs?.isShown ? "jobs" : "");

/** The desk stands, and a person goes from one thing to the next. */
let isOpen = false;

/** What an action shows on its way is nothing to go back to. */
function noteShown(): void {
  if (running === 0 && job?.id !== undefined) visited.note({ job: job.id, cover: coverNow() }, !isOpen);
}

const visited = new BackAndForth(
  async ({ job: id, cover }) => {
    if (id !== job.id)
      await run("Opening the job…", async (started) => {
        await started();
        await job.open(id);
      });
    if (cover === "start") {
      if (!startPage?.isShown) showStart();
    } else if (cover === "jobs") {
      if (!jobs?.isShown) showJobs();
    } else {
      startPage?.hide();
      jobs?.hide();
      desk.focus();
    }
  },
  () => {
    if (unfinished() === undefined) return running > 0;
    bar.showNotice(BEING_TYPED, true);
    return true;
  },
);
for (const cover of ["start", "jobs"])
  new MutationObserver(noteShown).observe(element(cover), { attributeFilter: ["hidden"] });

/** Runs one of the bar's actions, says what is going on, and shows the sentence when it fails. */
async function run(what: string, work: (started: () => Promise<void>) => Promise<void>): Promise<void> {
  // What follows may hold the page up at once, so the words are painted first.
  const started = () => {
    bar.showWork(what);
    return painted();
  };
  running++;
  try {
    await work(started);
  } catch (error) {
    bar.showNotice(sentenceOf(error), true);
  } finally {
    running--;
    if (isUncovered) uncoverJob();
    noteShown();
    bar.showWork("");
    if (!jobs?.isShown && !startPage?.isShown) desk?.focus();
  }
}

function sentenceOf(error: unknown): string {
  const text = messageOf(error);
  return error instanceof ServerTrouble && error.status === 0 ? `Not done: ${text}.` : text;
}

function showJobs(): void {
  startPage?.hide();
  if (jobs?.isShown) jobs.hide();
  else void jobs?.show(job.id);
}

function showStart(): void {
  jobs?.hide();
  if (startPage?.isShown) startPage.hide();
  else void startPage?.show();
}

/** What is to be said of all jobs together. */
const remarksNow = (entries: readonly ShelfEntry[]): Remark[] => [
  ...remarksOn(entries, job, () => showRemarks()),
  ...(offline?.remarks ?? []),
];

function showRemarks(): void {
  jobs?.showRemarks();
  startPage?.showRemarks();
}

/** The start page, or the list, is left for what it leads to; it stays where somebody thinks better of it, or it fails. */
const leaving =
  (what: string, work: (started: () => Promise<void>) => Promise<void>): (() => void) =>
  () =>
    void run(what, async (started) => {
      let isBegun = false;
      await work(async () => {
        isBegun = true;
        await started();
      });
      if (!isBegun) return;
      startPage?.hide();
      jobs?.hide();
    });

const startActions: StartActions = {
  job: () => {
    const { title, total, verdict } = desk.figures;
    return {
      id: job.id,
      title,
      lines: [desk.shelfLine.customer, job.notes?.state, total, verdict].filter(
        (line): line is string => !!line,
      ),
    };
  },
  steps: () => desk.steps(),
  goTo: (sheet, cell) => selectCell(desk.model, sheet, cell),
  jobs: async () => (await api.jobs()).jobs,
  remarks: remarksNow,
  open: (id) =>
    leaving("Opening the job…", async (started) => {
      await started();
      await job.open(id);
    })(),
  allJobs: () => showJobs(),
  newJob: leaving("Starting a new job…", newJob),
  openFile: leaving("Opening the workbook…", open),
  survey: leaving("Reading the survey…", jobFromSurvey),
  review: leaving("Reviewing…", async (started) => {
    const files = await chooseFiles(".xlsx");
    if (files.length > 0) await reviewDropped(files, started);
  }),
  reviewList: leaving("Reading the quote…", reviewOfList),
  exercises: leaving("Starting the exercises…", exercises),
  demonstrations: demonstrations.map(({ title, book }) => ({
    title,
    begin: leaving("Starting a new job…", async (started) => {
      await started();
      // What comes with the page is nobody's work.
      await job.create(book(), { isElsewhere: true });
    }),
  })),
  preferences: () => startPreferences(() => localStorage),
  keep: (preferences) => keepStartPreferences(() => localStorage, preferences),
  left: () => desk.focus(),
};

async function newJob(started: () => Promise<void>): Promise<void> {
  const choice = await askForTemplate(templates, await standardsHere());
  if (!choice) return;
  if (choice.kind === "exercises") return await exercises(started);
  if (choice.kind === "list") return await reviewOfList(started);
  await started();
  if (choice.kind === "standards") {
    const { label, read } = choice.standards;
    const book = drawnBook(await read(), label, new Date());
    if (typeof book === "string") throw new Error(book);
    await job.create(book);
    return goToNextStep();
  }
  // What comes with the page is nobody's work.
  await job.create(choice.template[choice.kind](), { isElsewhere: choice.kind === "demonstration" });
  if (choice.kind === "empty") goToNextStep();
}

/** What is to be filled first is selected. */
function goToNextStep(): void {
  const place = nextStep(desk.steps())?.open[0]?.place;
  if (place) selectCell(desk.model, place.sheet, place.cell);
}

async function exercises(started: () => Promise<void>): Promise<void> {
  const exercise = await askForExercise(trainingSets);
  if (!exercise) return;
  const { set, name, series } = exercise;
  await started();
  await job.create(traineeSheet(set, series, { name, occurrence: 1 }), { isElsewhere: true });
}

async function reviewOfList(started: () => Promise<void>): Promise<void> {
  const list = await askForList();
  if (list) await reviewList(list, started);
}

async function reviewList(list: Blob, started: () => Promise<void>): Promise<void> {
  await started();
  const { book, said } = await quoteFromList(
    { bytes: new Uint8Array(await list.arrayBuffer()), name: list instanceof File ? list.name : "" },
    fileReaders,
  );
  await job.create(book);
  // What was read, and what is asked of it, stands there.
  selectCell(desk.model, REVIEW_SHEET, "A1");
  bar.showNotice(said);
}

async function open(started: () => Promise<void>): Promise<void> {
  if (canHold()) {
    const handle = await pickFile();
    if (!handle) return;
    await started();
    const { bytes, mark } = await heldFile(handle).read();
    const book = await bookIn(new Blob([bytes]), handle.name);
    return await job.create(book, { held: { handle, mark }, isElsewhere: true });
  }
  const file = await chooseFile(".xlsx");
  if (!file) return;
  await started();
  await job.create(await bookIn(file, file.name), { isElsewhere: true });
}

/** @throws Error with a sentence that names the file */
async function bookIn(bytes: Blob, name: string): Promise<Book> {
  try {
    return titled(await api.openXlsx(bytes), name);
  } catch (error) {
    if (error instanceof ServerTrouble && error.status === 0) throw error;
    throw new Error(`${name} is not opened. ${sentenceOf(error)}`);
  }
}

const titled = (book: Book, file: string): Book =>
  book.title ? book : { ...book, title: file.replace(/\.xlsx$/i, "") };

async function reviewDropped(files: readonly File[], started: () => Promise<void>): Promise<void> {
  await started();
  const reviewed: Dropped[] = [];
  for (const file of files)
    reviewed.push(await readDropped(file, api.reviewXlsx, (book) => reviewInFull(book, trials), api.review));
  bar.showWork("");
  opened = undefined;
  startPage?.hide();
  jobs?.hide();
  reviews.show(reviewed);
}

/** The workbook of the review list that is the open job, until another takes its place. */
let opened: { readonly book: Book; readonly desk: number } | undefined;

async function openAt({ book, path, place }: Chosen, started: () => Promise<void>): Promise<void> {
  await started();
  // A second place of a workbook that is open already must not throw away what was mended at the first.
  if (opened?.book !== book || opened.desk !== desk.jobsShown) {
    await desk.replace(titled(book, path));
    opened = { book, desk: desk.jobsShown };
  }
  selectCell(desk.model, place.sheet, place.cell);
}

async function saveNow(started: () => Promise<void>): Promise<void> {
  await started();
  await save({ desk, bar, job });
}

let isPrinting = false;

async function printNow(started: () => Promise<void>): Promise<void> {
  // Pressed once more before the dialog is there, it asks once all the same.
  if (isPrinting) return;
  isPrinting = true;
  try {
    await started();
    const said = await printPages(desk, {
      unfinished: unfinished(),
      started: (words) => (bar.showWork(words), painted()),
      id: job.id,
    });
    if (said !== "") bar.showNotice(said);
  } finally {
    isPrinting = false;
  }
}

/** @throws Error with a sentence where the shown job takes no edit */
function mustTakeEdits(): void {
  const why = job.whyNoEdit;
  if (why !== undefined) throw new Error(why);
}

const TABLES = ".csv,.txt,.tsv,.xlsx";

async function importSurvey(started: () => Promise<void>): Promise<void> {
  mustTakeEdits();
  const file = await chooseFile(TABLES);
  if (!file || !desk.rooms) return;
  await started();
  await takeSurvey(await api.readTables(file), file.name, started);
}

async function jobFromSurvey(started: () => Promise<void>): Promise<void> {
  const file = await chooseFile(TABLES);
  if (!file) return;
  await started();
  // Read first: of what can't be read no job is made.
  const tables = await api.readTables(file);
  await job.create(templates[0]!.empty());
  if (!(await takeSurvey(tables, file.name, started)))
    bar.showNotice(
      "Nothing of the survey was taken. The new job is empty; the one before is kept, under Jobs.",
    );
}

/** @returns false where the user thinks better of it */
async function takeSurvey(
  tables: readonly ImportedTable[],
  name: string,
  started: () => Promise<void>,
): Promise<boolean> {
  bar.showWork("");
  const survey = await askForSurvey(tables, desk.rooms!, name);
  if (!survey) return false;
  await started();
  const { rows, changes } = survey;
  const refused = desk.addOutlets(rows, changes);
  bar.showNotice(refused ?? outletsAdded(rows.length, changes));
  return true;
}

async function takePrices(started: () => Promise<void>): Promise<void> {
  mustTakeEdits();
  const file = await chooseFile(TABLES);
  if (!file) return;
  await started();
  const stored = desk.book();
  const taking = takesPrices(stored.template);
  if (!taking) return;
  const today = sheetDateOf(new Date());
  const book = priceBook(jobInputsOf(taking.definition, stored), taking.hasOffers, today);
  const tables = priceTables(await api.readTables(file));
  bar.showWork("");
  const plan = await askForPrices({ file: tables, name: file.name, book, today });
  if (!plan) return;
  await started();
  const refused = desk.enterAll(entriesOf(taking.definition, book.inputs, plan.inputs));
  bar.showNotice(refused ?? `${plan.said} Undo takes it back in one step.`);
}

async function addRows(started: () => Promise<void>): Promise<void> {
  mustTakeEdits();
  const plan = desk.rowsToAdd;
  if (typeof plan === "string") {
    bar.showNotice(plan);
    return;
  }
  const quantity = await askForRows();
  if (!quantity) return;
  await started();
  desk.addRows(plan, quantity);
}

const back =
  (command: "REQUEST_UNDO" | "REQUEST_REDO", nothing: string) =>
  async (started: () => Promise<void>): Promise<void> => {
    mustTakeEdits();
    await started();
    if (!desk.dispatch(command)) bar.showNotice(nothing);
  };

addEventListener("keydown", () => desk?.drawPending(), { capture: true });

addEventListener(
  "keydown",
  (event) => {
    if (!(event.ctrlKey || event.metaKey)) return;
    const key = event.key.toLowerCase();
    const asked = document.querySelector("dialog") !== null;
    // The browser would print one screen of the page, the grid library the grid as it stands, workings and all.
    if (key === "p") event.stopImmediatePropagation();
    else if (asked || (key !== "s" && key !== "j")) return;
    event.preventDefault();
    if (event.repeat || asked) return;
    if (key === "j") showJobs();
    else if (key === "p") void run("Looking at what prints…", printNow);
    else void run("Saving the workbook…", saveNow);
  },
  { capture: true },
);

addEventListener(
  "keydown",
  (event) => {
    // Back and Forward of the browser, of which the grid library would make its own arrows.
    if (event.altKey && /^Arrow(Left|Right)$/.test(event.key) && !isEditing())
      event.stopImmediatePropagation();
  },
  { capture: true },
);

addEventListener(
  "keydown",
  (event) => {
    if (event.key !== "F8" || document.querySelector("dialog")) return;
    event.preventDefault();
    stepShown(event.shiftKey ? -1 : 1);
  },
  { capture: true },
);

addEventListener(
  "keydown",
  (event) => {
    if (event.key !== "F6" || !pane || document.querySelector("dialog")) return;
    event.preventDefault();
    pane.nextPart();
  },
  { capture: true },
);

/** An export that is dropped goes where “Bring in…” is. */
async function bringInDropped(files: readonly File[]): Promise<void> {
  if (!jobs?.isShown) await jobs?.show(job.id);
  for (const file of files) await jobs?.bringIn(file);
}

acceptDrops((dropped) => {
  const exported = dropped.filter(({ name }) => /\.zip$/i.test(name));
  const lists = dropped.filter(isList);
  const files = dropped.filter((file) => !exported.includes(file) && !lists.includes(file));
  // One at a time: each becomes the job that is open.
  const [list] = lists;
  if (desk && list) void run(`Reading ${list.name}…`, (started) => reviewList(list, started));
  if (desk && exported.length > 0) void bringInDropped(exported);
  if (desk && files.length > 0)
    void run(`Reviewing ${files.length === 1 ? files[0]!.name : `${files.length} workbooks`}…`, (started) =>
      reviewDropped(files, started),
    ).then(() => reviews.focus());
});

/** What is being typed and is not entered yet. */
const unfinished = () => (desk ? unfinishedEntry(desk.model, desk.title, entry.begun) : undefined);

// The browser then asks whether to leave.
addEventListener("beforeunload", (event) => {
  if (job?.unsaved || job?.needsFile || unfinished() !== undefined) event.preventDefault();
});
// Said yes to, or not asked at all, as on a phone or when the browser ends: what was typed is kept aside.
addEventListener("pagehide", () => {
  keepUnfinished(unfinished());
  // Nobody is left to be told where it fails.
  void api.left().catch(() => undefined);
});

const opening = run("Opening the job…", async (started) => {
  await started();
  teachGrid({ guard, entry, print: () => void run("Looking at what prints…", printNow) });
  requireCompiling();
  if (stand === "folder") await loadStylesAsText();
  document.getElementById("starting")?.remove();
  if (stand === "server") await takeKey();
  if (stand === "file") showHelpHere((error) => bar.showNotice(sentenceOf(error), true));
  const [room, gridTemplates] = await Promise.all([WaitingRoom.open(), api.gridTemplates()]);
  desk = new Desk(element("grid"), element("line"), bar, guard, entry, gridTemplates);
  const plainRun = (what: string, work: () => Promise<void>): void =>
    void run(what, async (begun) => {
      await begun();
      await work();
    });
  job = new OpenJob({
    desk,
    bar,
    strip,
    room,
    run: plainRun,
    changed: uncoverJob,
    offer: (id) =>
      void offer(id, { job, strip, run: plainRun }).catch((error: unknown) =>
        bar.showNotice(sentenceOf(error), true),
      ),
  });
  desk.replaceWith = (book) => job.create(book);
  jobs = jobsShown({
    root: element("jobs"),
    job,
    focusGrid: () => desk.focus(),
    selected: () => desk.placeShown,
    say: (sentence) => bar.showNotice(sentence, true),
    run: plainRun,
    newJob: leaving("Starting a new job…", newJob),
    openFile: leaving("Opening the workbook…", open),
    remarks: remarksNow,
  });
  const sheetLists = new SheetLists(element("sheets"), {
    groups: () => desk.sheetGroups,
    active: () => desk.placeShown.sheet,
    steps: () => desk.steps(),
    goTo: (sheet) => {
      startPage?.hide();
      jobs?.hide();
      desk.showSheet(sheet);
      desk.focus();
    },
  });
  desk.watch(() => sheetLists.refresh());
  const isAskedFor = await job.start();
  startPage = new StartPage(element("start"), startActions);
  pane = new PaneBeside(
    element("pane"),
    element("bar"),
    desk,
    guard,
    reviews,
    (open) => bar.showPane(open),
    async (...upgraded) => {
      const done = await takeUpgrade(job, ...upgraded);
      // In the place of what was said of the older version.
      bar.showNotice(done);
      return done;
    },
    () => (job.id === undefined ? [] : [job.id]),
  );
  const notices = [...troublesOf(library), ...(await api.jobs()).notices, toldOfUnfinished()].filter(
    (notice) => notice !== undefined,
  );
  if (notices.length > 0) bar.showNotice(notices.join(" "), true);
  if (stand === "folder") {
    offline = new Offline({
      changed: showRemarks,
      run: plainRun,
      mustBeSafe: async () => {
        if (unfinished() !== undefined) throw new Error(BEING_TYPED);
        if (job.id !== undefined) await job.mustBeSaved(job.id);
      },
    });
    offline.begin();
  }
  // A reload stays where it was.
  const opensOnStart = !isAskedFor && startActions.preferences().opensOnStart;
  const steps = opensOnStart ? startPage.show(true) : undefined;
  // Whoever is quick goes on before the steps are looked at.
  if (job.id !== undefined) visited.note({ job: job.id, cover: coverNow() }, true);
  isOpen = true;
  await steps;
});
void opening.then(() => (document.body.ariaBusy = "false"));
