/** A site survey's outlets into the Rooms sheet: chosen, looked at and put right, then written. */
import { mappingsAfter } from "../../workbooks/imported/columns";
import { roomsIn, type RoomsNow } from "../../workbooks/survey/roomsBlock";
import { button, make, paragraph } from "../dom";
import { HostTrouble, type PaneHost } from "../host";
import { SurveyImport } from "../surveyImport";
import type { View } from "../view";

export const survey: View = {
  id: "survey",
  label: "Survey",
  title: "Import a survey",
  build: ({ host, run, preferences }) => {
    const file = make("input", {
      id: "pane-survey",
      className: "pane-input",
      type: "file",
      accept: ".csv,.txt,.tsv,.xlsx",
    });
    const results = make("div", {});
    const write = (found: SurveyImport, rooms: RoomsNow): void =>
      void run("Adding the outlets…", async () => {
        const now = await roomsOf(host);
        // The preview held against these: an outlet typed meanwhile, or another unit, would make it wrong.
        if (JSON.stringify(now) !== JSON.stringify(rooms)) {
          throw new HostTrouble(
            "The Rooms sheet or the unit of lengths was changed since the file was read. Choose the file again.",
          );
        }
        const done = await host.addOutlets(found.rows, found.changes);
        await keepChoices(host, found);
        results.replaceChildren();
        return done;
      });
    file.addEventListener("change", () => {
      const chosen = file.files?.[0];
      if (!chosen) return;
      void run("Reading the survey…", async () => {
        results.replaceChildren();
        try {
          const rooms = await roomsOf(host);
          const bytes = new Uint8Array(await chosen.arrayBuffer());
          const tables = await host.readTables(bytes);
          const { mappings = [] } = await preferences();
          const buttons = make("div", {});
          const showButton = (): void => {
            const { words } = found;
            buttons.replaceChildren(
              ...(words === undefined
                ? []
                : [button(words, () => write(found, rooms), "pane-button pane-first")]),
            );
          };
          const found = new SurveyImport({
            tables,
            rooms,
            file: chosen.name,
            heading: "h2",
            kept: mappings,
            changed: () => showButton(),
          });
          showButton();
          results.replaceChildren(buttons, found.element);
          return found.words === undefined
            ? "No outlet of the file can be added yet; the preview says why."
            : "The preview shows what was understood. Nothing is written yet.";
        } finally {
          // The same file may be chosen again, put right.
          file.value = "";
        }
      });
    });
    return {
      body: [
        paragraph(
          "A survey is a table of outlets: text with commas, semicolons or tabs, or a workbook. Say what its columns are where they were not understood; put lines right here. New outlets go below the last filled row of Rooms, with rows added where they are needed; those that Rooms has are brought up to date.",
        ),
        make("label", { htmlFor: file.id }, "File, .csv or .xlsx"),
        file,
        results,
      ],
      focus: file,
    };
  },
};

/** How the columns were chosen is kept for the next file with these heads; a trouble with that undoes nothing. */
async function keepChoices(host: PaneHost, { toRemember, forgotten }: SurveyImport): Promise<void> {
  if (!toRemember && !forgotten) return;
  const kept = await host.preferences();
  const mappings = mappingsAfter(kept.mappings, toRemember, forgotten);
  await host.keepPreferences({ ...kept, mappings }).catch(() => undefined);
}

async function roomsOf(host: PaneHost): Promise<RoomsNow> {
  const rooms = roomsIn(await host.readBook());
  if (rooms) return rooms;
  throw new HostTrouble(
    "This workbook has no Rooms sheet of ours, so it takes no survey. Start a multi-room workbook under Start.",
  );
}
