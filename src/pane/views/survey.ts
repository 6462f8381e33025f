/** A site survey's outlets into the Rooms sheet: chosen, looked at, then written. */
import { withoutKnown, type Survey } from "../../workbooks/survey/readSurvey";
import { roomsIn, type RoomsNow } from "../../workbooks/survey/roomsBlock";
import { button, make, paragraph } from "../dom";
import { HostTrouble, type PaneHost } from "../host";
import { addWords, surveyPreview } from "../surveyPreview";
import type { View } from "../view";

export const survey: View = {
  id: "survey",
  label: "Survey",
  title: "Import a survey",
  build: ({ host, run }) => {
    const file = make("input", {
      id: "pane-survey",
      className: "pane-input",
      type: "file",
      accept: ".csv,.txt,.tsv,.xlsx",
    });
    const results = make("div", {});
    const add = (found: Survey, rooms: RoomsNow): void =>
      void run("Adding the outlets…", async () => {
        const now = await roomsOf(host);
        // The preview held against these: an outlet typed meanwhile, or another unit, would make it wrong.
        if (JSON.stringify(now) !== JSON.stringify(rooms)) {
          throw new HostTrouble(
            "The Rooms sheet or the unit of lengths was changed since the file was read. Choose the file again.",
          );
        }
        const done = await host.addOutlets(found.rows);
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
          const found = withoutKnown(await host.readSurvey(bytes, rooms.unit, rooms.writing), rooms.outlets);
          const words = addWords(found);
          results.replaceChildren(
            ...surveyPreview(found, rooms.unit, chosen.name, "h2"),
            ...(words === undefined
              ? []
              : [button(words, () => add(found, rooms), "pane-button pane-first")]),
          );
          return words === undefined
            ? "No outlet of the file can be added; the preview says why."
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
          "A survey is a table of outlets with a head row: text with commas, semicolons or tabs, or a workbook; metres or feet. Its outlets go below the last filled row of Rooms, with rows added where they are needed.",
        ),
        make("label", { htmlFor: file.id }, "File, .csv or .xlsx"),
        file,
        results,
      ],
      focus: file,
    };
  },
};

async function roomsOf(host: PaneHost): Promise<RoomsNow> {
  const rooms = roomsIn(await host.readBook());
  if (rooms) return rooms;
  throw new HostTrouble(
    "This workbook has no Rooms sheet of ours, so it takes no survey. Start a multi-room workbook under Start.",
  );
}
