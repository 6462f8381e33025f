/** The dialog of a survey on the desk as it is built: columns chosen, lines put right, a second import merged. */
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import type { Locator } from "playwright-core";
import { namedColumn } from "../../../src/workbooks/named";
import { bookOnPage, button, folder, notice, page, textIs, withPage } from "./onDesk";

const LODGE = path.join(__dirname, "../../fixtures/fieldSurveys/lodge.csv");
/** Where pictures of the page go, for somebody to look at. */
const SHOTS = process.env.SHOTS;

async function importing(file: string): Promise<Locator> {
  const chosen = page.waitForEvent("filechooser");
  await button("Import survey…").click();
  await (await chosen).setFiles(file);
  const dialog = page.getByRole("dialog", { name: "Import survey" });
  await dialog.waitFor();
  return dialog;
}

const shot = async (name: string): Promise<void> => {
  if (SHOTS) await page.screenshot({ path: path.join(SHOTS, `${name}.png`) });
};

const outlets = async (): Promise<unknown[]> =>
  namedColumn(await bookOnPage(), "rooms_outlet").filter((name) => name);

withPage(
  "the lodge: read at once, added in one step, and brought up to date by a second survey",
  async () => {
    const before = await outlets();
    const dialog = await importing(LODGE);
    await shot("survey-lodge");
    expect(await dialog.getByLabel("“length to riser” is taken for").inputValue()).toBe("run");
    const add = dialog.getByRole("button", { name: /^Add \d+ outlets/ });
    await add.click();
    // What the demonstration has by the same name is changed, not added.
    const shared = before.filter((name) => /^[G123]-\d\d$/.test(String(name)));
    const lodge = readFileSync(LODGE, "latin1")
      .match(/;[G123]-\d\d;/g)!
      .map((found) => found.slice(1, -1));
    const known = shared.filter((name) => lodge.includes(String(name)));
    const added = lodge.filter((name) => !known.includes(name));
    expect(await outlets()).toEqual([...before, ...added]);

    // The same file again, with one run changed: nothing else is touched.
    const again = path.join(folder, "again.csv");
    writeFileSync(
      again,
      readFileSync(LODGE, "latin1").replace(
        ";G-10;receiver;1;GB;Indoor Drop;7,9;",
        ";G-10;receiver;1;GB;Indoor Drop;8,4;",
      ),
      "latin1",
    );
    const second = await importing(again);
    await shot("survey-again");
    await second.getByText("G-10: run: 7.9 → 8.4").waitFor();
    await second.getByRole("button", { name: "Change 1 on Rooms" }).click();
    await textIs(notice(), "1 outlet changed. Undo takes all of it back in one step.");
    const book = await bookOnPage();
    const at = namedColumn(book, "rooms_outlet").indexOf("G-10");
    expect(namedColumn(book, "rooms_run")[at]).toBe(8.4);
  },
);

withPage(
  "a column is chosen, a name chosen for all its lines, a line put right, and the choice is remembered",
  async () => {
    const file = path.join(folder, "jack.csv");
    writeFileSync(
      file,
      [
        "Where,Jack,Tape m,Lead",
        "Bar,J-1,12,indoor drop",
        "Loft,J-2,9-11,indor drop",
        "Den,J-3,far,indor drop",
      ].join("\n"),
    );
    const dialog = await importing(file);
    await shot("survey-unsure");
    const add = (count: number) =>
      dialog.getByRole("button", { name: `Add ${count} outlet${count === 1 ? "" : "s"} to Rooms` });
    await dialog.getByLabel("“Tape m” is taken for").selectOption("Run (needed)");
    await dialog.getByLabel("“Lead” is taken for").selectOption("Cable");
    await add(1).waitFor();
    await dialog.getByLabel(/^Cable “indor drop”/).selectOption("indoor drop");
    await add(2).waitFor();
    await dialog.getByLabel("Run of line 4").fill("40 ft");
    await page.keyboard.press("Enter");
    await add(3).waitFor();
    await shot("survey-mended");
    await add(3).click();
    const book = await bookOnPage();
    const at = namedColumn(book, "rooms_outlet").indexOf("J-1");
    const its = (key: string): unknown[] => namedColumn(book, `rooms_${key}`).slice(at, at + 3);
    // 40 ft at 0.3048 m.
    expect(its("run")).toEqual([12, 10, 12.192]);
    expect([its("shortest")[1], its("longest")[1]]).toEqual([9, 11]);
    expect(its("cable")).toEqual(["indoor drop", "indoor drop", "indoor drop"]);

    const next = await importing(file);
    await next.getByText("As you chose for the last file with these heads.").waitFor();
    expect(await next.getByLabel("“Tape m” is taken for").inputValue()).toBe("run");
    await next.getByRole("button", { name: "Forget that" }).click();
    await next.getByText("As you chose for the last file with these heads.").waitFor({ state: "detached" });
    expect(await next.getByLabel("“Tape m” is taken for").inputValue()).toBe("");
    await next.getByRole("button", { name: "Cancel" }).click();
  },
);
