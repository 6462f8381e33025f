import { mkdtemp } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { runCommand } from "../support/fakeConsole";
test("lodge", async () => {
  const folder = await mkdtemp(path.join(tmpdir(), "rs-"));
  const firm = path.join(folder, "firm.xlsx");
  console.log(JSON.stringify(await runCommand(["standards", "new", "--demonstration", "--out", firm])));
  const list = "/work/shared/examples/lodge-prices.csv";
  const one = await runCommand(["standards", "prices", firm, list, "--supplier", "first supplier (demonstration)", "--out", path.join(folder, "b.xlsx")]);
  process.stdout.write(one.out + "\nERR " + one.err + "\n" + one.code + "\n");
  const two = await runCommand(["standards", "check", path.join(folder, "b.xlsx")]);
  process.stdout.write(two.out + "\nERR " + two.err + "\n" + two.code + "\n");
  const three = await runCommand(["standards", "prices", path.join(folder, "b.xlsx"), list, "--supplier", "first supplier (demonstration)"]);
  process.stdout.write(three.out + "\nERR " + three.err + "\n" + three.code + "\n");
});
