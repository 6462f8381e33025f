/** The job as pictures, drawn from the workbook as it stands. */
import { levelsPicture } from "../../pictures/levelsPicture";
import { oneLineDiagram } from "../../pictures/oneLineDiagram";
import type { Picture } from "../../pictures/picture";
import { slotsPicture } from "../../pictures/slotsPicture";
import type { Book } from "../../workbooks/book";
import { button, make, paragraph } from "../dom";
import type { View } from "../view";

const KINDS: readonly (readonly [label: string, draw: (book: Book) => Picture])[] = [
  ["Distribution", oneLineDiagram],
  ["Levels", levelsPicture],
  ["Slots and obstacles", slotsPicture],
];

const TEMPLATE = "multi-room";

export const pictures: View = {
  id: "pictures",
  label: "Pictures",
  title: "Pictures of this job",
  build: ({ host, run }) => {
    const shown = make("div", {});
    let [chosen] = KINDS;
    const tabs = KINDS.map((kind) =>
      button(kind[0], () => {
        chosen = kind;
        draw();
      }),
    );
    const draw = (): void =>
      void run("Drawing…", async () => {
        const [label, picture] = chosen!;
        tabs.forEach((tab, index) => (tab.ariaPressed = String(KINDS[index] === chosen)));
        const book = await host.readBook();
        if (book.template !== TEMPLATE) {
          shown.replaceChildren();
          return "There is nothing to draw: this workbook is no multi-room estimate.";
        }
        const drawn = picture(book);
        shown.replaceChildren(...body(drawn));
        return drawn.empty ? drawn.description : `${label} drawn from the workbook as it stands.`;
      });
    return {
      body: [
        make("div", { className: "pane-row", role: "group", ariaLabel: "Which picture" }, ...tabs),
        shown,
        paragraph(
          "Predicted, not measured. The pictures also stand at the end of every workbook that is saved from the desk or made by the command, for print.",
          "pane-quiet",
        ),
      ],
      shown: draw,
    };
  },
};

function body(picture: Picture): HTMLElement[] {
  return [
    // In a narrow pane only a corner of it is seen: the way to all of it comes first.
    ...(picture.empty ? [] : [button("Show it large", () => showLarge(picture))]),
    framed(picture),
    paragraph(picture.description),
  ];
}

/** At its own size, to be scrolled; by the keyboard too, so it takes the focus. */
function framed({ svg, title }: Picture): HTMLElement {
  const parsed = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
  return make(
    "div",
    { className: "pane-picture", tabIndex: 0, role: "region", ariaLabel: title },
    document.importNode(parsed, true),
  );
}

function showLarge(picture: Picture): void {
  const close = button("Close", () => dialog.close());
  const dialog = make(
    "dialog",
    { className: "pane-large", ariaLabel: picture.title },
    framed(picture),
    close,
  );
  // Within the pane, whose colours it takes.
  document.querySelector(".pane")!.append(dialog);
  dialog.addEventListener("close", () => dialog.remove());
  dialog.showModal();
}
