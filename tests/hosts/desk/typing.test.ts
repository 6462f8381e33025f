/** Typing into the desk in a real browser: what is read, and what stays in the editor when it is refused. */
import { placeOfName } from "../../../src/workbooks/named";
import {
  bookOnPage,
  button,
  cellOf,
  choose,
  line,
  load,
  notice,
  page,
  saved,
  textIs,
  total,
  type,
  until,
  withPage,
} from "./onDesk";

/** In the demonstration's Rooms sheet: name and run of the first outlet. */
const OUTLET = "C6";
const RUN = "H6";
const NEXT_RUN = "H7";

const editor = () => page.locator(".o-grid-composer .o-composer");
const isEditing = async (): Promise<boolean> =>
  (
    await editor()
      .innerText()
      .catch(() => "")
  ).trim() !== "";

withPage("try", async () => {
  await choose("Rooms", RUN);
  await type("9.5 kg");
  await page.waitForTimeout(300);
  console.log(
    await line().innerText(),
    await line().getAttribute("class"),
    await editor().innerText(),
    await isEditing(),
  );
  await page.screenshot({ path: "/tmp/shot1.png" });
  await page.keyboard.press("Tab");
  await page.waitForTimeout(200);
  console.log("tab", await editor().innerText());
  const box = (await page.locator(".o-grid canvas").first().boundingBox())!;
  await page.mouse.click(box.x + 500, box.y + 400);
  await page.waitForTimeout(300);
  console.log(
    "click",
    await editor().innerText(),
    await page.evaluate(() => document.activeElement?.className),
  );
  await page.screenshot({ path: "/tmp/shot2.png" });
  await page.locator(".o-sheet", { hasText: "Parts" }).first().click();
  await page.waitForTimeout(300);
  console.log(
    "sheet",
    await editor().innerText(),
    await page.evaluate(() => document.activeElement?.className),
  );
  await page.keyboard.type("x");
  await page.waitForTimeout(200);
  console.log("typed", await editor().innerText());
  await button("Undo").click();
  await page.waitForTimeout(300);
  console.log(
    "undo",
    await editor().innerText(),
    await page.evaluate(() => document.activeElement?.className),
  );
  await page.keyboard.press("Escape");
  await page.waitForTimeout(300);
  console.log(
    "esc",
    await editor().innerText(),
    await line().innerText(),
    cellOf(await bookOnPage(), "Rooms", RUN)?.value,
  );
  await choose("Rooms", OUTLET);
  await type("=A-07");
  await saved();
  await page.screenshot({ path: "/tmp/shot3.png" });
  console.log(cellOf(await bookOnPage(), "Rooms", OUTLET));
  void notice;
  void load;
  void textIs;
  void total;
  void until;
  void NEXT_RUN;
  void placeOfName;
});
