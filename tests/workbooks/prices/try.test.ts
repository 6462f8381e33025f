import { readFileSync } from "node:fs";
import { readPriceFile } from "../../../src/hosts/file/readPriceFile";
import { readPriceList } from "../../../src/workbooks/prices/readPriceList";
test("lodge", async () => {
  const { tables, chosen } = await readPriceFile(readFileSync("/work/shared/examples/lodge-prices.csv"));
  const list = readPriceList(tables[chosen]!, { currency: "EUR", today: 46355 });
  console.log(JSON.stringify({ ...list, columns: list.columns.map((c) => [c.head, c.key]) }, undefined, 1));
});
