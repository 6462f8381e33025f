/** The page's few questions, in the browser's own dialog: it keeps the focus and closes on Escape. */
import type { AnySet } from "../../../training/exercise";
import type { StandardsHere } from "../../../pane/host";
import type { Template } from "../../../workbooks/templates";
import { make } from "./dom";

/**
 * Shows a dialog and waits until it is closed; the value is that of the button used, empty for none.
 * @param more class names besides the usual one
 */
export function ask(
  title: string,
  body: Node[],
  buttons: { label: string; value: string }[],
  more = "",
): Promise<string> {
  const heading = make("h2", { id: "dialog-title", className: "desk-dialog-title" }, title);
  const dialog = make(
    "dialog",
    { className: `desk-dialog ${more}`.trim() },
    make(
      "form",
      { method: "dialog" },
      heading,
      ...body,
      make(
        "div",
        { className: "desk-dialog-buttons" },
        ...buttons.map(({ label, value }) =>
          make("button", { className: "desk-button", value, formNoValidate: value === "" }, label),
        ),
      ),
    ),
  );
  dialog.setAttribute("aria-labelledby", heading.id);
  document.body.append(dialog);
  dialog.showModal();
  return new Promise((resolve) => {
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve(dialog.returnValue);
    });
  });
}

/** What a new job begins with. */
export type Beginning =
  | { readonly kind: "empty" | "demonstration"; readonly template: Template }
  | { readonly kind: "standards"; readonly standards: StandardsHere }
  | { readonly kind: "exercises" }
  | { readonly kind: "list" };

/** @param firms the firm's standards among the jobs, the one that is meant first */
export async function askForTemplate(
  templates: readonly Template[],
  firms: readonly StandardsHere[],
): Promise<Beginning | undefined> {
  const choice = make(
    "select",
    { id: "template", className: "desk-input" },
    ...templates.map(({ id, title }) => make("option", { value: id }, title)),
  );
  const firm = make(
    "select",
    { id: "standards", className: "desk-input" },
    ...firms.map(({ label }, index) => make("option", { value: String(index) }, label)),
  );
  const kind = await ask(
    "New job",
    [
      make("label", { htmlFor: "template" }, "Template"),
      choice,
      ...(firms.length > 0
        ? [
            make("label", { htmlFor: "standards" }, "Firm's standards, for a multi-room estimate"),
            firm,
            make("p", {}, "The latest edition stands first. Put older ones away under Jobs."),
          ]
        : []),
      make("p", {}, "The job that is open now is kept, under Jobs."),
    ],
    [
      ...(firms.length > 0 ? [{ label: "From the standards", value: "standards" }] : []),
      { label: "Empty", value: "empty" },
      { label: "Demonstration", value: "demonstration" },
      { label: "Exercises…", value: "exercises" },
      { label: "Review of a list…", value: "list" },
      { label: "Cancel", value: "" },
    ],
  );
  if (kind === "exercises") return { kind };
  if (kind === "list") return { kind };
  if (kind === "standards") {
    const standards = firms[firm.selectedIndex];
    return standards && { kind, standards };
  }
  const template = templates[choice.selectedIndex];
  return template && (kind === "empty" || kind === "demonstration") ? { template, kind } : undefined;
}

export type AboutFile = "over" | "theirs" | "compare" | "download";
const ABOUT_FILE = new Set<string>(["over", "theirs", "compare", "download"]);

const MOST_SERIES = 999_999;

/** @returns undefined where the user thinks better of it */
export async function askForExercise(
  sets: readonly AnySet[],
): Promise<{ set: AnySet; name: string; series: number } | undefined> {
  const choice = make(
    "select",
    { id: "exercise", className: "desk-input" },
    ...sets.map(({ id, title }) => make("option", { value: id }, title)),
  );
  const about = make("p", { id: "exercise-about", className: "desk-small" });
  choice.setAttribute("aria-describedby", about.id);
  const told = (): void => {
    const set = sets[choice.selectedIndex];
    about.textContent = set ? `${set.about} ${set.questions.length} questions.` : "";
  };
  choice.addEventListener("change", told);
  told();
  const name = make("input", {
    id: "trainee",
    className: "desk-input",
    value: "Dana Demonstration",
    required: true,
  });
  const series = make("input", {
    id: "series",
    className: "desk-input",
    type: "number",
    min: "0",
    max: String(MOST_SERIES),
    step: "1",
    value: "2026",
    required: true,
  });
  const answer = await ask(
    "Exercises",
    [
      make("label", { htmlFor: "exercise" }, "Set"),
      choice,
      about,
      make("label", { htmlFor: "trainee" }, "Name"),
      name,
      make("label", { htmlFor: "series" }, `Series (0 to ${MOST_SERIES})`),
      series,
      make(
        "p",
        {},
        "Questions with worked examples beside them. Another name or series gives other numbers. A trainer makes sheets for many, their key and their marks with the command: rigsheet exercises.",
      ),
    ],
    [
      { label: "Begin", value: "begin" },
      { label: "Cancel", value: "" },
    ],
  );
  const set = sets[choice.selectedIndex];
  if (answer !== "begin" || !set) return undefined;
  const number = Math.min(MOST_SERIES, Math.max(0, Math.trunc(Number(series.value) || 0)));
  return { set, name: name.value.trim() || "Dana Demonstration", series: number };
}

/**
 * What becomes of a file that another program has changed; undefined for nothing.
 * @param isGone there is none any more, or it can't be read
 */
export async function askAboutChangedFile(sentence: string, isGone: boolean): Promise<AboutFile | undefined> {
  const answer = isGone
    ? await ask(
        "The file is not there",
        [make("p", {}, sentence)],
        [
          { label: "Write it anew there", value: "over" },
          { label: "Download mine", value: "download" },
          { label: "Cancel", value: "" },
        ],
      )
    : await ask(
        "The file has changed",
        [
          make("p", {}, sentence),
          make(
            "p",
            {},
            "Write mine over it: what is there now is kept aside. Take theirs: the job becomes what is in the file, and is kept as a revision as it is now. Download mine: the file stays as it is.",
          ),
        ],
        [
          { label: "Side by side", value: "compare" },
          { label: "Write mine over it", value: "over" },
          { label: "Take theirs", value: "theirs" },
          { label: "Download mine", value: "download" },
          { label: "Cancel", value: "" },
        ],
      );
  return ABOUT_FILE.has(answer) ? (answer as AboutFile) : undefined;
}

const MOST_ROWS = 10_000;

/** @returns how many rows, undefined when the user thinks better of it */
export async function askForRows(): Promise<number | undefined> {
  const count = make("input", {
    id: "rows",
    className: "desk-input",
    type: "number",
    min: "1",
    max: String(MOST_ROWS),
    step: "1",
    value: "10",
    required: true,
  });
  const answer = await ask(
    "Add rows",
    [make("label", { htmlFor: "rows" }, `How many rows, 1 to ${MOST_ROWS}`), count],
    [
      { label: "Add", value: "add" },
      { label: "Cancel", value: "" },
    ],
  );
  return answer === "add" && count.validity.valid ? count.valueAsNumber : undefined;
}

const LONGEST_REASON = 120;

/** @returns why the job is frozen, in a few words; undefined when the user thinks better of it */
export async function askForReason(job: string): Promise<string | undefined> {
  const reason = make("input", {
    id: "reason",
    className: "desk-input",
    maxLength: LONGEST_REASON,
    pattern: ".*\\S.*",
    title: "a few words",
    required: true,
    dir: "auto",
  });
  const answer = await ask(
    "Freeze the job",
    [
      make("p", { className: "desk-named" }, make("bdi", {}, job)),
      make(
        "p",
        {},
        "It is kept as it is now, to be looked at and restored. The job itself stays open to changes.",
      ),
      make("label", { htmlFor: reason.id }, "Why, in a few words"),
      reason,
    ],
    [
      { label: "Freeze", value: "freeze" },
      { label: "Cancel", value: "" },
    ],
  );
  return answer === "freeze" ? reason.value.trim() : undefined;
}

/** @returns whether the job is to go for good */
export async function askToDelete(job: string, revisions: number): Promise<boolean> {
  const kept =
    revisions === 0
      ? ""
      : ` with its ${revisions === 1 ? "frozen revision" : `${revisions} frozen revisions`}`;
  const answer = await ask(
    "Delete for good?",
    [
      make("p", { className: "desk-named" }, make("bdi", {}, job)),
      make(
        "p",
        {},
        `The job${kept} is then gone and cannot be brought back. A file that was saved of it stays.`,
      ),
    ],
    [
      { label: "Keep it", value: "" },
      { label: "Delete for good", value: "delete" },
    ],
  );
  return answer === "delete";
}

export const chooseFile = async (accept: string): Promise<File | undefined> =>
  (await chooseFiles(accept, false))[0];

/** @returns none where the user thinks better of it */
export function chooseFiles(accept: string, multiple = true): Promise<readonly File[]> {
  const input = make("input", { type: "file", accept, multiple, hidden: true });
  // A browser may forget one that is nowhere on the page while its user still looks for the file.
  document.body.append(input);
  const chosen = new Promise<readonly File[]>((resolve) => {
    input.addEventListener("change", () => resolve([...(input.files ?? [])]));
    input.addEventListener("cancel", () => resolve([]));
  });
  input.click();
  return chosen.finally(() => input.remove());
}
