/** Exercises for trainees: each gets a workbook with numbers of its own, the trainer a key. */
import type { Exercises } from "../../training/trainerKey";
import { trainingSets } from "../../training/sets/all";
import { KEY_FILE, sheetFileName } from "../../training/sheetFileName";
import { traineeList } from "../../training/traineeList";
import { traineeSheet } from "../../training/traineeSheet";
import { trainerKey } from "../../training/trainerKey";
import { button, make, paragraph } from "../dom";
import { HostTrouble } from "../host";
import type { View } from "../view";

/** More are a matter for the command, which writes a folder. */
const MOST_TRAINEES = 40;

export const training: View = {
  id: "training",
  label: "Training",
  title: "Exercises for trainees",
  build: ({ host, run }) => {
    const choice = make(
      "select",
      { id: "pane-training-set", className: "pane-input" },
      ...trainingSets.map(({ id, title }) => make("option", { value: id }, title)),
    );
    const names = make("textarea", {
      id: "pane-trainees",
      className: "pane-input",
      rows: 4,
      placeholder: "A name on each line",
    });
    const seed = make("input", {
      id: "pane-seed",
      className: "pane-input pane-short",
      inputMode: "numeric",
      value: String(crypto.getRandomValues(new Uint32Array(1))[0]),
    });
    const results = make("div", {});
    const handOver = (exercises: Exercises, index: number | "key"): void =>
      void run("Making the workbook…", async () => {
        if (index === "key") {
          await host.handOverBook(trainerKey(exercises), KEY_FILE);
          return "The key is made. Keep it from the trainees.";
        }
        const trainee = exercises.trainees[index]!;
        const file = sheetFileName(trainee, index + 1, exercises.trainees.length);
        await host.handOverBook(traineeSheet(exercises.set, exercises.seed, trainee), file);
        return `The sheet of ${trainee.name} is made.`;
      });
    const draw = (): void =>
      void run("Drawing the numbers…", async () => {
        results.replaceChildren();
        const exercises = exercisesOf(trainingSets[choice.selectedIndex]!, names.value, seed.value);
        results.replaceChildren(...workbooks(exercises, handOver));
        return `${exercises.trainees.length} sheets and the key can be made. Note the seed: ${exercises.seed}.`;
      });
    return {
      body: [
        make("label", { htmlFor: choice.id }, "Set"),
        choice,
        make("label", { htmlFor: names.id }, "Trainees"),
        names,
        make("label", { htmlFor: seed.id }, "Seed, a whole number"),
        seed,
        button("Draw", draw, "pane-button pane-first"),
        results,
        paragraph(
          "The same set, seed and name give the same sheet on every machine. Sheets hold no answers. Keep the seed private: it recreates the key. For whole groups, and to mark what comes back: rigsheet exercises and rigsheet mark.",
          "pane-quiet",
        ),
      ],
    };
  },
};

function exercisesOf(set: Exercises["set"], names: string, seedText: string): Exercises {
  const seed = Number(seedText.trim());
  if (!/^\d+$/.test(seedText.trim()) || !Number.isSafeInteger(seed)) {
    throw new HostTrouble("The seed must be a whole number of 0 or more, such as 2026.");
  }
  const lines = names.split("\n").map((name, index) => ({ line: index + 1, cells: [name] }));
  const list = traineeList(lines);
  if (typeof list === "string") throw new HostTrouble("Name the trainees, one on each line.");
  if (list.trainees.length > MOST_TRAINEES) {
    throw new HostTrouble(
      `There are ${list.trainees.length} trainees; the pane makes sheets for ${MOST_TRAINEES} at the most. Use rigsheet exercises.`,
    );
  }
  return { set, seed, trainees: list.trainees };
}

/** A button for each workbook. */
const workbooks = (
  exercises: Exercises,
  handOver: (exercises: Exercises, index: number | "key") => void,
): HTMLElement[] => [
  make("h2", {}, "Workbooks"),
  make(
    "ol",
    { className: "pane-findings" },
    ...exercises.trainees.map(({ name }, index) =>
      make(
        "li",
        {},
        button(`${index + 1} ${name}`, () => handOver(exercises, index)),
      ),
    ),
    make(
      "li",
      {},
      button("Trainer's key", () => handOver(exercises, "key")),
    ),
  ),
];
