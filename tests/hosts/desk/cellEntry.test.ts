/** Typing into the desk's cells, with the library's own editor and no page: what is read, and what stays when it is refused. */
import { CellEntry, enterTyped } from "../../../src/hosts/desk/page/cellEntry";
import { fromModel } from "../../../src/hosts/grid/fromModel";
import type { GridModel } from "../../../src/hosts/grid/library";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { openModel } from "../../../src/hosts/headless/recalculate";
import type { Book } from "../../../src/workbooks/book";
import type { Filling } from "../../../src/workbooks/definition";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { sheetDate } from "../../../src/workbooks/sheetDate";

const library = loadLibrary();
const entry = new CellEntry();
enterTyped(library, entry);

/** The library's editor, as the page's own keys use it. */
interface Editor {
  readonly editionMode: string;
  readonly currentContent: string;
  startEdition(text?: string): void;
  setCurrentContent(text: string): void;
  stopEdition(direction?: string): void;
  cancelEdition(): void;
  autoCompleteOrStop(direction?: string): void;
}

class Typist {
  readonly model: GridModel;
  readonly editor: Editor;

  constructor(filling: Filling = guestHouse) {
    this.model = openModel(layOut(multiRoom, filling));
    const container = new library.stores.DependencyContainer();
    container.inject(library.stores.ModelStore, this.model);
    this.editor = container.get(library.stores.CellComposerStore) as unknown as Editor;
    entry.set(undefined);
  }

  /** Goes to a field, or to a block's row counted from its first. */
  at(name: string, row = 0): this {
    const { sheetId, zone } = this.model.getters.getNamedRange(name)!.range;
    const from = this.model.getters.getActiveSheetId();
    if (from !== sheetId)
      this.model.dispatch("ACTIVATE_SHEET", { sheetIdFrom: from, sheetIdTo: sheetId } as never);
    const first = zone.bottom > zone.top ? zone.top + 1 : zone.top;
    this.model.selection.selectCell(zone.left, first + row);
    return this;
  }

  type(text: string): this {
    quietly(() => {
      this.editor.startEdition();
      this.editor.setCurrentContent(text);
      this.editor.stopEdition("down");
    });
    return this;
  }

  /** What the cell where the cursor was holds. */
  get(name: string, row = 0): unknown {
    const { sheetId, zone } = this.model.getters.getNamedRange(name)!.range;
    const first = zone.bottom > zone.top ? zone.top + 1 : zone.top;
    return this.model.getters.getEvaluatedCell({ sheetId, row: first + row, col: zone.left }).value;
  }

  dispatch(type: string, payload: object = {}): void {
    quietly(() => this.model.dispatch(type as never, payload as never));
  }

  book(): Book {
    return quietly(() => fromModel(library, this.model));
  }
}

test.skip("nothing", () => {
  sheetDate(1, 1, 1);
});
test("try", () => {
  const t = new Typist();
  t.at("rooms_outlet").type("3-16");
  console.log(t.get("rooms_outlet"), t.editor.editionMode, entry.refused);
  t.at("rooms_outlet", 1).type("=A-07");
  console.log(t.get("rooms_outlet", 1), t.editor.editionMode);
  t.at("rooms_outlet", 1).type("'007");
  console.log(t.get("rooms_outlet", 1));
  t.at("rooms_run").type("950 cm");
  console.log(t.get("rooms_run"));
  t.at("rooms_run").type("9.5 kg");
  console.log(t.get("rooms_run"), t.editor.editionMode, t.editor.currentContent, entry.refused);
  t.editor.cancelEdition();
  console.log(t.editor.editionMode, entry.refused);
  t.at("rooms_run").type("=12+3");
  console.log(t.get("rooms_run"));
  t.at("site_date").type("27.11.2026");
  console.log(t.get("site_date"));
  t.at("rooms_cable").type("INDOOR drop");
  console.log(t.get("rooms_cable"));
  t.at("units_load").type("350 mA");
  console.log(t.get("units_load"), entry.refused);
  t.editor.cancelEdition();
  t.at("units_load", 1).type("350 mA");
  console.log(t.get("units_load", 1), entry.refused);
  t.at("site_unit").type("FT");
  console.log(t.get("site_unit"));
  t.at("rooms_run").type("9.5 m");
  console.log(t.get("rooms_run"));
});
