/** The desk's page. */
import * as library from "@odoo/o-spreadsheet";
import { allFunctions } from "../../../functions/all";
import type { Book } from "../../../workbooks/book";
import { templates } from "../../../workbooks/templates";
import { registerBookFacts } from "../../grid/bookFacts";
import { registerFunctions } from "../../grid/registerFunctions";
import { api, ServerTrouble } from "./api";
import { Bar } from "./bar";
import { Desk } from "./desk";
import "./desk.css";
import { registerDeskPlugin, type DeskGuard } from "./deskPlugin";
import { askForRows, askForTemplate, chooseFile } from "./dialogs";
import { download, painted } from "./dom";
import { showHelp } from "./help";

// The library reports its timings there.
console.debug = () => undefined;

const LONG_MS = 500;
const element = (id: string): HTMLElement => document.getElementById(id)!;

const guard: DeskGuard = { unlocked: new Set(), refused: (sentence) => bar.showNotice(sentence) };
let desk: Desk;

const bar = new Bar(element("bar"), {
  newJob: () => void run("Starting a new job…", newJob),
  open: () => void run("Opening the workbook…", open),
  save: () => void run("Saving the workbook…", save),
  addRows: () => void run("Adding rows…", addRows),
  undo: () => back("REQUEST_UNDO", "There is nothing to take back."),
  redo: () => back("REQUEST_REDO", "There is nothing to do again."),
  toggleLock: () => desk.toggleLock(),
  help: () => showHelp(allFunctions),
});

/** Runs one of the bar's actions, says so when it takes long, and shows the sentence when it fails. */
async function run(what: string, work: (started: () => Promise<void>) => Promise<void>): Promise<void> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  // What follows may hold the page up at once, so the words are painted first.
  const started = async () => {
    timer = setTimeout(() => bar.showWork(what), LONG_MS);
    bar.showWork(what);
    await painted();
  };
  try {
    await work(started);
  } catch (error) {
    bar.showNotice(sentenceOf(error), true);
  } finally {
    clearTimeout(timer);
    bar.showWork("");
    desk?.focus();
  }
}

function sentenceOf(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return error instanceof ServerTrouble && error.status === 0 ? `Not done: ${text}.` : text;
}

async function newJob(started: () => Promise<void>): Promise<void> {
  const choice = await askForTemplate(templates);
  if (!choice) return;
  await started();
  await desk.replace(choice.template[choice.kind]());
}

async function open(started: () => Promise<void>): Promise<void> {
  const file = await chooseFile(".xlsx");
  if (!file) return;
  await started();
  const book: Book = await api.openXlsx(file);
  await desk.replace(book.title ? book : { ...book, title: file.name.replace(/\.xlsx$/i, "") });
}

async function save(started: () => Promise<void>): Promise<void> {
  await started();
  const book = desk.book();
  if (desk.fileName) {
    await api.saveFile(book);
    bar.showNotice(`Written into ${desk.fileName}.`);
  } else {
    const name = `${desk.title.replace(/[^\p{L}\p{N} _-]+/gu, "").trim() || "job"}.xlsx`;
    download(await api.saveXlsx(book), name);
    bar.showNotice(`Saved as ${name} where the browser puts its downloads.`);
  }
}

async function addRows(started: () => Promise<void>): Promise<void> {
  const { additions } = desk;
  if (additions.length === 0) {
    bar.showNotice(
      "The selected cell is in no block that can grow. Select a row of outlets, parts or the like first.",
    );
    return;
  }
  const quantity = await askForRows();
  if (!quantity) return;
  await started();
  desk.addRows(additions, quantity);
}

function back(command: "REQUEST_UNDO" | "REQUEST_REDO", nothing: string): void {
  if (!desk.dispatch(command)) bar.showNotice(nothing);
  desk.focus();
}

addEventListener(
  "keydown",
  (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "s") return;
    event.preventDefault();
    void run("Saving the workbook…", save);
  },
  { capture: true },
);

addEventListener("beforeunload", (event) => {
  if (desk?.unsaved) event.preventDefault();
});

await run("Opening the job…", async (started) => {
  await started();
  registerFunctions(library, allFunctions);
  registerBookFacts(library);
  registerDeskPlugin(library, guard);
  // It refuses to paste across frozen columns, for the sake of merged cells; those are guarded on their
  // own, and a row of outlets is copied whole.
  library.registries.clipboardHandlersRegistries.cellHandlers.remove("sheet");
  const [job, gridTemplates] = await Promise.all([api.job(), api.text("/library/o_spreadsheet.xml")]);
  desk = new Desk(element("grid"), element("line"), bar, guard, gridTemplates);
  await desk.start(job);
  for (const notice of job.notices) bar.showNotice(notice, true);
});
