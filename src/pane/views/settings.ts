/** Length unit and currency of new workbooks; the versions at work. */
import { RIGSHEET_VERSION } from "../../version";
import { button, make, paragraph } from "../dom";
import type { View } from "../view";
import { warningsOf } from "../versions";

const LONGEST_CURRENCY = 12;

export const settings: View = {
  id: "settings",
  label: "Settings",
  title: "Settings and versions",
  build: ({ host, run, preferences }) => {
    const unit = (value: "m" | "ft", words: string): [HTMLInputElement, HTMLLabelElement] => {
      const radio = make("input", { type: "radio", name: "pane-unit", id: `pane-unit-${value}`, value });
      return [radio, make("label", { htmlFor: radio.id, className: "pane-choice" }, radio, ` ${words}`)];
    };
    const [metres, metresLabel] = unit("m", "metres");
    const [feet, feetLabel] = unit("ft", "feet");
    const currency = make("input", {
      id: "pane-currency",
      className: "pane-input pane-short",
      type: "text",
      maxLength: LONGEST_CURRENCY,
      autocomplete: "off",
      spellcheck: false,
    });
    const show = async (): Promise<void> => {
      const kept = await preferences();
      metres.checked = kept.lengthUnit === "m";
      feet.checked = kept.lengthUnit === "ft";
      currency.value = kept.currency;
    };
    const keep = (): void =>
      void run("Keeping the settings…", async () => {
        await host.keepPreferences({
          ...(await preferences()),
          lengthUnit: feet.checked ? "ft" : "m",
          currency: currency.value.trim(),
        });
        return "Kept. New empty workbooks start with them; open ones stay as they are.";
      });
    const versions = make("div", {});
    const { openingOfPane } = host;
    const opens = make("input", { type: "checkbox", id: "pane-opens" });
    opens.addEventListener("change", () => {
      const on = opens.checked;
      void run("Keeping it in the workbook…", async () => {
        const note = await openingOfPane!.keep(on);
        return on
          ? `${note || "This pane opens with this workbook from now on."} Save the workbook to keep that.`
          : "This pane no longer opens with this workbook; its formulas may then show #NAME? until you open it. Save the workbook to keep that.";
      }).then((done) => {
        if (!done) opens.checked = !on;
      });
    });
    return {
      body: [
        make(
          "fieldset",
          { className: "pane-fieldset" },
          make("legend", {}, "Lengths in a new workbook are in"),
          metresLabel,
          feetLabel,
        ),
        make("label", { htmlFor: currency.id }, "Currency of a new workbook, for example EUR"),
        currency,
        button("Keep", keep, "pane-button pane-first"),
        ...(openingOfPane
          ? [
              make("h2", {}, "This workbook"),
              make(
                "label",
                { htmlFor: opens.id, className: "pane-choice" },
                opens,
                " Open this pane, and load the functions, with this workbook",
              ),
            ]
          : []),
        make("h2", {}, "Versions"),
        versions,
      ],
      shown: () => {
        void show();
        openingOfPane?.isOn().then(
          (on) => (opens.checked = on),
          () => undefined,
        );
        void showVersions(versions, host.facts());
      },
    };
  },
};

async function showVersions(
  place: HTMLElement,
  asked: ReturnType<Parameters<View["build"]>[0]["host"]["facts"]>,
): Promise<void> {
  const facts = await asked.catch(() => undefined);
  const row = (name: string, value: string): HTMLElement[] => [make("dt", {}, name), make("dd", {}, value)];
  const warnings = facts ? warningsOf(facts) : [];
  place.replaceChildren(
    make(
      "dl",
      { className: "pane-facts" },
      ...row("Pane", RIGSHEET_VERSION),
      ...row("Functions", facts?.functionsVersion ?? "do not answer"),
      ...row(
        "Program",
        facts ? (facts.kind === "excel" ? "Excel" : "the local workbook") : "does not answer",
      ),
    ),
    ...(warnings.length > 0
      ? warnings.map(({ message, remedy }) => paragraph(`${message} ${remedy}`, "pane-caution"))
      : [paragraph(facts ? "Pane and functions are of one version." : "")]),
  );
}
