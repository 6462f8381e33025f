/** A survey shown, put right and confirmed before anything is written. */
import { SurveyImport } from "../../../pane/surveyImport";
import { mappingsAfter } from "../../../workbooks/imported/columns";
import type { ImportedTable } from "../../../workbooks/imported/table";
import type { RoomsNow } from "../../../workbooks/survey/roomsBlock";
import { storedPreferences, storePreferences } from "./deskPreferences";
import { ask } from "./dialogs";
import { USUAL_PREFERENCES } from "../../../pane/host";

const ADD = "add";
const storage = (): Storage => localStorage;

/** @returns what is to be written; undefined where the user thinks better of it */
export async function askForSurvey(
  tables: readonly ImportedTable[],
  rooms: RoomsNow,
  file: string,
): Promise<SurveyImport | undefined> {
  const found = new SurveyImport({
    tables,
    rooms,
    file,
    heading: "h3",
    kept: storedPreferences(storage)?.mappings ?? [],
    changed: () => showWords(),
  });
  const answered = ask(
    "Import survey",
    [found.element],
    [
      { label: "", value: ADD },
      { label: "Cancel", value: "" },
    ],
    "desk-wide",
  );
  const button = found.element.closest("dialog")!.querySelector<HTMLButtonElement>(`button[value="${ADD}"]`)!;
  const showWords = (): void => {
    button.hidden = found.words === undefined;
    button.textContent = found.words ?? "";
  };
  showWords();
  const answer = await answered;
  if (answer !== ADD || found.words === undefined) return undefined;
  keepChoices(found);
  return found;
}

/** A browser that keeps nothing asks again the next time. */
function keepChoices({ toRemember, forgotten }: SurveyImport): void {
  if (!toRemember && !forgotten) return;
  const kept = storedPreferences(storage) ?? USUAL_PREFERENCES;
  const mappings = mappingsAfter(kept.mappings, toRemember, forgotten);
  try {
    storePreferences(storage, { ...kept, mappings });
  } catch {
    return;
  }
}
