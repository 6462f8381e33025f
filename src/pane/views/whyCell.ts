/** What the selected cell is worked out from, and from there on. */
import { isListed, why, type Listed, type Reason } from "../../review/why";
import { listInWords, valueInWords } from "../../review/whyInWords";
import { namedValue } from "../../workbooks/named";
import { WRITING_FIELD, writingOf, type ShownWriting } from "../../workbooks/typed/writing";
import { button, make, paragraph, setText } from "../dom";
import { placeInWords, type View } from "../view";

interface Place {
  readonly sheet: string;
  readonly at: string;
}

export const whyCell: View = {
  id: "why",
  label: "Why?",
  title: "Why a cell shows what it shows",
  build: ({ host, run, onSelection }) => {
    const result = make("div", {});
    const tell = (where?: Place): void =>
      void run("Looking at what it is worked out from…", async () => {
        const { sheet, at } = where ?? (await host.selection());
        const book = await host.readBook();
        const reason = why(book, { sheet, cell: at }, { deep: 1 });
        if (!reason) {
          result.replaceChildren();
          return `The sheet ${sheet} is not there any more. Select a cell and ask again.`;
        }
        if (where) await host.goTo(sheet, at);
        result.replaceChildren(...told(reason, tell, writingOf(namedValue(book, WRITING_FIELD))));
        return reason.formula === undefined
          ? `${placeInWords({ sheet, at })} is not worked out: it stands there as it was entered.`
          : `What ${placeInWords({ sheet, at })} is worked out from is shown.`;
      });
    const ask = button("Why this cell?", () => tell(), "pane-button pane-first");
    onSelection((selection) => setText(ask, `Why ${placeInWords(selection)}?`));
    return {
      body: [
        paragraph(
          "Select a cell. Each cell that it is worked out from is listed with its value; press one to go there and ask on.",
        ),
        ask,
        result,
      ],
      shown: () => tell(),
    };
  },
};

type Tell = (place: Place) => void;

function told(
  { words, value, format, formula, from }: Reason,
  tell: Tell,
  writing: ShownWriting | undefined,
): HTMLElement[] {
  return [
    make("h2", {}, words),
    paragraph(valueInWords(value, format, writing), "pane-value"),
    ...(formula === undefined ? [] : [make("p", {}, make("code", {}, `= ${formula}`))]),
    ...(from.length === 0 ? [] : [make("h3", {}, "From"), items(from, tell, writing)]),
  ];
}

const items = (
  from: readonly (Reason | Listed)[],
  tell: Tell,
  writing: ShownWriting | undefined,
): HTMLUListElement =>
  make(
    "ul",
    { className: "pane-list" },
    ...from.map((one) =>
      isListed(one)
        ? make(
            "li",
            {},
            paragraph(listInWords(one, writing)),
            ...(one.told.length > 0 ? [items(one.told, tell, writing)] : []),
          )
        : make(
            "li",
            {},
            button(one.words, () => tell({ sheet: one.sheet, at: one.cell }), "pane-button pane-jump"),
            ` ${valueInWords(one.value, one.format, writing)}`,
          ),
    ),
  );
