/** A floor copied to others, with its names counted on: chosen, looked at, then written in one step. */
import { entriesOf } from "../../standards/entries";
import type { JobInputs } from "../../workbooks/definition";
import { copyFloor, floorsOf, nextFloor, type FloorCopy } from "../../workbooks/floors/copyFloor";
import { floorsIn, inputsWithFloors, withCopy } from "../../workbooks/floors/floorsOf";
import { multiRoom } from "../../workbooks/multiRoom/definition";
import { inWords } from "../../workbooks/survey/survey";
import { button, make, paragraph } from "../dom";
import { HostTrouble, type PaneHost } from "../host";
import type { View } from "../view";

/** Names that the preview shows of each kind. */
const NAMES_SHOWN = 12;

export const floors: View = {
  id: "floors",
  label: "Floors",
  title: "Copy a floor",
  build: ({ host, run, say }) => {
    const from = make("select", { id: "pane-floor", className: "pane-input" });
    const to = make("input", {
      id: "pane-floors-to",
      className: "pane-input",
      type: "text",
      autocomplete: "off",
      placeholder: "3rd, 4th",
    });
    const preview = make("div", {});
    const copyNow = (copy: FloorCopy, seen: JobInputs): void =>
      void run("Copying the floor…", async () => {
        // The preview held for these rows: a name typed meanwhile would make it wrong.
        if (JSON.stringify(await floorsHere(host)) !== JSON.stringify(seen))
          throw new HostTrouble("The rows were changed since the preview was made. Look at it again.");
        const done = await host.enterAll(
          entriesOf(multiRoom, seen, withCopy(seen, copy)),
          `${countInWords(copy)} added.`,
        );
        preview.replaceChildren();
        await look();
        return done;
      });
    const show = (): void =>
      void run("Looking at the rows…", async () => {
        const here = await floorsHere(host);
        const copy = copyFloor(floorsIn(here), from.value, to.value.split(","));
        const isReady = copy.troubles.length === 0;
        preview.replaceChildren(
          ...told(copy),
          ...(isReady
            ? [button(`Add ${countInWords(copy)}`, () => copyNow(copy, here), "pane-button pane-first")]
            : []),
        );
        return isReady
          ? "The preview shows what would be added. Nothing is written yet."
          : "Nothing can be copied yet; the preview says why.";
      });
    const look = async (): Promise<void> => {
      const labels = floorsOf(floorsIn(await floorsHere(host)));
      const chosen = from.value;
      from.replaceChildren(...labels.map((label) => make("option", { value: label }, label)));
      from.value = labels.includes(chosen) ? chosen : (labels.at(-1) ?? "");
      suggest();
    };
    const suggest = (): void => {
      to.value = nextFloor(from.value);
      preview.replaceChildren();
    };
    from.addEventListener("change", suggest);
    to.addEventListener("input", () => preview.replaceChildren());
    const form = make(
      "form",
      { noValidate: true },
      make("label", { htmlFor: from.id }, "Floor"),
      from,
      make("label", { htmlFor: to.id }, "To the floors, with commas between"),
      to,
      make("button", { type: "submit", className: "pane-button pane-first" }, "Preview"),
    );
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      if (from.value === "") say("Not done: Rooms names no floor yet.");
      else show();
    });
    return {
      body: [
        paragraph(
          "The outlets of a floor and the devices that serve it alone are added once more for each new floor, with their names counted on: 2-01 becomes 3-01. What feeds the floor from elsewhere feeds the copy too.",
        ),
        form,
        preview,
      ],
      focus: from,
      shown: () => void run("Looking at the floors…", async () => (await look(), "")),
    };
  },
};

async function floorsHere(host: PaneHost): Promise<JobInputs> {
  const here = inputsWithFloors(await host.readBook());
  if (here) return here;
  throw new HostTrouble(
    "This workbook has no Rooms sheet of ours, so it has no floors. Start a multi-room workbook under Start.",
  );
}

const countInWords = ({ rooms, devices }: FloorCopy): string =>
  `${inWords(rooms.length, "outlet")}${devices.length > 0 ? ` and ${inWords(devices.length, "device")}` : ""}`;

function told({ renamed, notes, troubles }: FloorCopy): HTMLElement[] {
  const list = (title: string, lines: readonly string[]): HTMLElement[] =>
    lines.length === 0
      ? []
      : [make("h2", {}, title), make("ul", {}, ...lines.map((text) => make("li", {}, text)))];
  const names = (what: "outlet" | "device"): string[] => {
    const all = renamed.filter((one) => one.what === what).map(({ old, now }) => `${old} → ${now}`);
    return [
      ...all.slice(0, NAMES_SHOWN),
      ...(all.length > NAMES_SHOWN ? [`and ${all.length - NAMES_SHOWN} more`] : []),
    ];
  };
  return [
    ...list("In the way", troubles),
    ...list("Look at this", notes),
    ...list("Devices", names("device")),
    ...list("Outlets", names("outlet")),
  ];
}
