/**
 * A survey on its way into Rooms, in the pane's view and in the desk's dialog: what each column is taken for, what has
 * to be put right, what is new, changed and gone. Every choice reads the file anew; nothing is written here.
 */
import {
  haveHeads,
  rememberedFor,
  type MappedColumn,
  type RememberedMapping,
} from "../workbooks/imported/columns";
import type { ImportedTable } from "../workbooks/imported/table";
import {
  mergeInWords,
  mergeOutlets,
  type GoneRow,
  type OutletMerge,
  type RowChanges,
} from "../workbooks/survey/merge";
import { MEANINGS } from "../workbooks/survey/meanings";
import { previewOf } from "../workbooks/survey/preview";
import { readSurvey } from "../workbooks/survey/readSurvey";
import { settingOf, type RoomsNow } from "../workbooks/survey/roomsBlock";
import { inWords, type Survey, type SurveyChoices, type SurveyRow } from "../workbooks/survey/survey";
import { button, make } from "./dom";
import { mappingTable } from "./mappingTable";
import { repairs } from "./surveyRepairs";
import { list, scrolled, tableOf } from "./surveyTables";

export interface SurveyImportParts {
  readonly tables: readonly ImportedTable[];
  readonly rooms: RoomsNow;
  /** Its name. */
  readonly file: string;
  /** The level of the headings. */
  readonly heading: "h2" | "h3";
  /** How earlier files were read. */
  readonly kept: readonly RememberedMapping[];
  /** Called whenever something has been read anew. */
  readonly changed: () => void;
}

export class SurveyImport {
  readonly element = make("div", { className: "survey-import" });
  private choices: SurveyChoices = {};
  private readonly takenOut = new Set<number>();
  private survey!: Survey;
  private merge!: OutletMerge;
  private readonly mapping = mappingTable(MEANINGS, (column, choice) =>
    this.choose({ columns: { ...this.choices.columns, [column]: choice } }),
  );
  /** The mapping comes from an earlier file. */
  private isRemembered = false;

  constructor(private readonly parts: SurveyImportParts) {
    this.read();
    const { columns } = this.survey;
    const before = rememberedFor(columns, parts.kept, MEANINGS);
    if (before) {
      this.choices = { ...this.choices, columns: before, confirmed: true };
      this.isRemembered = true;
      this.read();
    }
    this.show();
  }

  /** The outlets that are new. */
  get rows(): readonly SurveyRow[] {
    return this.merge.added;
  }

  get changes(): RowChanges {
    const { changed, gone } = this.merge;
    return { changed, cleared: gone.filter(({ offset }) => this.takenOut.has(offset)) };
  }

  /** On the button that writes it; undefined where there is nothing that can be written yet. */
  get words(): string | undefined {
    return this.survey.unsure === undefined
      ? mergeInWords(this.merge, this.changes.cleared.length)
      : undefined;
  }

  /** What the columns are taken for, to be remembered; undefined where nobody chose anything. */
  get toRemember(): readonly MappedColumn[] | undefined {
    const { columns } = this.survey;
    const isChosen = Object.keys(this.choices.columns ?? {}).length > 0 || this.choices.confirmed;
    return isChosen && haveHeads(columns) ? columns : undefined;
  }

  /** The columns of an earlier file whose mapping is to be forgotten. */
  forgotten: readonly MappedColumn[] | undefined;

  private choose(more: SurveyChoices): void {
    this.choices = { ...this.choices, ...more };
    // The browser moves the focus first, to what may be built anew now.
    setTimeout(() => {
      this.read();
      this.show();
      this.parts.changed();
    });
  }

  private read(): void {
    const { tables, rooms } = this.parts;
    this.survey = readSurvey(tables, settingOf(rooms), this.choices);
    this.merge = mergeOutlets(this.survey.rows, rooms.rows);
  }

  private show(): void {
    const focus = document.activeElement?.id;
    const { survey, merge, parts, choices } = this;
    const { file, heading, rooms } = parts;
    const { table, more, changed, notes } = previewOf(
      survey,
      rooms.unit,
      merge,
      settingOf(rooms).writing?.decimal,
    );
    const [head = [], ...rows] = table;
    this.mapping.show(survey.columns);
    const { length } = merge.added;
    const known = merge.same + changed.length > 0;
    this.element.replaceChildren(
      make("p", {}, `${file}, read as ${survey.source}. Nothing is written yet.`),
      ...this.sheetChoice(),
      ...(survey.unsure === undefined ? [] : [this.unsureNotice(survey.unsure)]),
      ...(survey.columns.length > 0
        ? [
            make(heading, {}, "Columns"),
            ...this.rememberedNotice(),
            scrolled("Columns", this.mapping.element),
          ]
        : []),
      ...repairs(survey, choices, heading, rooms, (next) => this.choose(next)),
      make(
        heading,
        {},
        length > 0
          ? `${inWords(length, known ? "new outlet" : "outlet")}`
          : known
            ? "No new outlets"
            : "No outlets that can be added",
      ),
      ...(length > 0 ? [scrolled("Outlets", tableOf(head, rows))] : []),
      ...(more ? [make("p", {}, more)] : []),
      ...list(heading, `${inWords(merge.changed.length, "outlet")} changed`, changed),
      ...(known ? [make("p", {}, `${inWords(merge.same, "outlet")} as on Rooms.`)] : []),
      ...this.goneChoice(heading),
      ...list(heading, "Notes", notes),
    );
    if (focus) document.getElementById(focus)?.focus();
  }

  private sheetChoice(): HTMLElement[] {
    const { sheets, sheet = "" } = this.survey;
    if (sheets.length === 0) return [];
    const select = make(
      "select",
      { id: "survey-sheet", className: "mapping-choice" },
      ...sheets.map((name) => make("option", { value: name, selected: name === sheet }, name)),
    );
    select.addEventListener("change", () => {
      // Another sheet has other columns and lines.
      this.choices = {};
      this.isRemembered = false;
      this.choose({ sheet: select.value });
    });
    return [make("label", { htmlFor: select.id }, "Sheet"), select];
  }

  private unsureNotice(sentence: string): HTMLElement {
    const canConfirm = this.survey.rows.length > 0;
    return make(
      "p",
      { className: "survey-unsure", role: "alert" },
      `${sentence} `,
      ...(canConfirm
        ? [
            button(
              "The columns below are right",
              () => this.choose({ confirmed: true }),
              "pane-button desk-button",
            ),
          ]
        : []),
    );
  }

  private rememberedNotice(): HTMLElement[] {
    if (!this.isRemembered) return [];
    return [
      make(
        "p",
        {},
        "As you chose for the last file with these heads. ",
        button(
          "Forget that",
          () => {
            this.forgotten = this.survey.columns;
            this.isRemembered = false;
            this.choose({ columns: {}, confirmed: false });
          },
          "pane-button desk-button",
        ),
      ),
    ];
  }

  private allGone(gone: readonly GoneRow[]): HTMLElement {
    const tick = make("input", {
      type: "checkbox",
      id: "survey-gone-all",
      checked: gone.every(({ offset }) => this.takenOut.has(offset)),
    });
    tick.addEventListener("change", () => {
      this.takenOut.clear();
      if (tick.checked) for (const { offset } of gone) this.takenOut.add(offset);
      this.choose({});
    });
    return make("label", { htmlFor: tick.id, className: "pane-choice" }, tick, " all of them");
  }

  /** Kept unless they are ticked. */
  private goneChoice(heading: "h2" | "h3"): HTMLElement[] {
    const { gone } = this.merge;
    if (gone.length === 0 || this.survey.unsure !== undefined) return [];
    return [
      make(heading, {}, `${inWords(gone.length, "outlet")} on Rooms and not in the file`),
      make(
        "p",
        {},
        "They stay, but those that you tick are taken out, with all that was typed in their rows.",
      ),
      make(
        "div",
        { className: "survey-gone" },
        ...(gone.length > 3 ? [this.allGone(gone)] : []),
        ...gone.map(({ offset, outlet }) => {
          const tick = make("input", {
            type: "checkbox",
            id: `survey-gone-${offset}`,
            checked: this.takenOut.has(offset),
          });
          tick.addEventListener("change", () => {
            if (tick.checked) this.takenOut.add(offset);
            else this.takenOut.delete(offset);
            this.parts.changed();
          });
          return make("label", { htmlFor: tick.id, className: "pane-choice" }, tick, ` ${outlet}`);
        }),
      ),
    ];
  }
}
