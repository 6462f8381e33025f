import { recalculate } from "../../src/hosts/headless/recalculate";
import { layOut } from "../../src/workbooks/layOut";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { address, parseRange } from "../../src/formula/address";
test("dump", () => {
  const t0 = Date.now();
  const fields = { ...guestHouse.fields, ...JSON.parse(process.env.F ?? "{}") };
  const book = recalculate(layOut(multiRoom, { ...guestHouse, fields }));
  const out: string[] = [`ms ${Date.now() - t0}`];
  for (const s of (process.env.S ?? "Materials,Cutting plan,Order list").split(",")) {
    const sheet = book.sheets.find(({ name }) => name === s)!;
    out.push(`=== ${s}`);
    for (let r = 0; r < sheet.rowCount; r++) {
      const row: string[] = [];
      for (let c = 0; c < 14; c++) {
        const a = address(r, c);
        const v = sheet.results[a] ?? sheet.cells[a]?.value;
        row.push(v === undefined ? "" : typeof v === "object" ? JSON.stringify(v) : String(v));
      }
      if (row.some((x) => x !== "")) out.push(`${r + 1}: ${row.join(" | ")}`);
    }
  }
  require("node:fs").writeFileSync("/tmp/dump18.txt", out.join("\n"));
  void parseRange;
});
