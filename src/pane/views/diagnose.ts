/** What was measured against what was predicted: likely causes, and the outlets that have readings. */
import {
  diagnosisOf,
  type Compared,
  type JobDiagnosis,
  type LikelyCause,
  type MeasuredOutlet,
} from "../../workbooks/multiRoom/diagnosisOf";
import { estimate } from "../../workbooks/multiRoom/names";
import { placeOfName } from "../../workbooks/named";
import { button, make, paragraph } from "../dom";
import { placeInWords, type View } from "../view";

/** A list longer than this is no help on a narrow pane; Commissioning has all of them. */
const MOST_SHOWN = 60;
const COMPUTING = ["#BUSY!", "#GETTING_DATA"];
const NOTHING = /^nothing /;

export const diagnose: View = {
  id: "diagnose",
  label: "Diagnose",
  title: "Diagnose what was measured",
  build: ({ host, run }) => {
    const results = make("div", {});
    const goTo = (sheet: string, at: string): void =>
      void run(`Going to ${sheet} ${at}…`, async () => {
        await host.goTo(sheet, at);
        return `${sheet} ${at} is selected.`;
      });
    const read = (): void =>
      void run("Reading what was measured…", async () => {
        results.replaceChildren();
        const found = diagnosisOf(await host.readBook());
        if (!found) {
          return "There is nothing to diagnose: this workbook has no sheet Diagnosis. It is part of the multi-room estimate.";
        }
        results.replaceChildren(...causesShown(found), ...outletsShown(found, goTo));
        return summaryOf(found);
      });
    const enter = (): void =>
      void run("Going to the readings…", async () => {
        const place = placeOfName(await host.readBook(), estimate.rooms.built.name);
        if (!place) return "This workbook has no cells for readings.";
        await host.goTo(place.sheet, place.at);
        return `Enter lowest frequency, highest frequency and volts from ${placeInWords(place)} on, a row for each outlet.`;
      });
    return {
      body: [
        make(
          "div",
          { className: "pane-row" },
          button("Diagnose again", read, "pane-button pane-first"),
          button("Enter readings", enter),
        ),
        results,
        paragraph(
          "Probabilities are of the model on the sheet Causes, whose chances you may change; nothing is certain. Measure again before anything is taken apart. Roofs, ladders and mains by the local code and licensed practice.",
          "pane-quiet",
        ),
      ],
      shown: read,
    };
  },
};

export function summaryOf({ causes, measured, outlets, trouble }: JobDiagnosis): string {
  if (trouble !== undefined && COMPUTING.includes(trouble))
    return "Our functions are still computing, so nothing can be said yet. Wait a little and press Diagnose again; if it stays so for a minute, close this pane, open it again and press “Repair formulas”.";
  if (trouble !== undefined) return "The diagnosis cannot be made; its sentence is shown.";
  if (measured.length === 0) return "Nothing is measured yet.";
  const [first] = causes;
  const most = first && !NOTHING.test(first.cause) ? `${first.cause}, ${first.where}` : "nothing stands out";
  return `${measured.length} of ${outlets} outlets measured. Likeliest: ${most}.`;
}

function causesShown({ causes, trouble }: JobDiagnosis): HTMLElement[] {
  if (trouble !== undefined) return [paragraph(trouble, "pane-caution")];
  return [
    make("h2", {}, "Likely causes"),
    make("ol", { className: "pane-findings" }, ...causes.map(causeShown)),
  ];
}

const causeShown = ({ cause, where, probability, evidence, next }: LikelyCause): HTMLLIElement =>
  make(
    "li",
    {},
    make(
      "p",
      {},
      make("b", {}, where ? `${cause}, ${where}` : cause),
      probability > 0 ? `: ${percent(probability)}` : "",
    ),
    paragraph(evidence),
    paragraph(`Next: ${next}`, "pane-way"),
  );

const percent = (share: number): string =>
  share > 0.995 ? "over 99 %" : share < 0.01 ? "under 1 %" : `${Math.round(100 * share)} %`;

function outletsShown(
  { measured, outlets }: JobDiagnosis,
  goTo: (sheet: string, cell: string) => void,
): HTMLElement[] {
  if (measured.length === 0) return [];
  const order = [...measured].sort((a, b) => Number(b.verdict === "look") - Number(a.verdict === "look"));
  return [
    make("h2", {}, `Measured outlets (${measured.length} of ${outlets})`),
    make(
      "ul",
      { className: "pane-findings" },
      ...order.slice(0, MOST_SHOWN).map((one) => outletShown(one, goTo)),
    ),
    ...(order.length > MOST_SHOWN
      ? [paragraph(`${order.length - MOST_SHOWN} more stand on Commissioning.`, "pane-quiet")]
      : []),
  ];
}

function outletShown(
  { outlet, room, sheet, cell, low, high, volts, verdict }: MeasuredOutlet,
  goTo: (sheet: string, cell: string) => void,
): HTMLLIElement {
  return make(
    "li",
    {},
    make(
      "div",
      { className: "pane-row" },
      button(placeInWords({ sheet, at: cell }), () => goTo(sheet, cell), "pane-button pane-jump"),
      make("b", {}, `${[outlet, room].filter(Boolean).join(", ")}: ${verdict}`),
    ),
    paragraph(
      [
        beside("lowest frequency", low, "dBµV"),
        beside("highest frequency", high, "dBµV"),
        beside("volts", volts, "V"),
      ]
        .filter(Boolean)
        .join("; "),
    ),
  );
}

/** `lowest frequency 64.5 dBµV (68.5 to 69.9)`. */
function beside(label: string, { measured, typed, from, to }: Compared, unit: string): string {
  if (measured === null && typed === undefined) return "";
  const due =
    from === null || to === null
      ? "not predicted"
      : from === to
        ? from.toFixed(1)
        : `${from.toFixed(1)} to ${to.toFixed(1)}`;
  return `${label} ${measured === null ? `“${typed}”` : `${measured.toFixed(1)} ${unit}`} (${due})`;
}
