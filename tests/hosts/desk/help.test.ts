/** The help as the desk serves it. */
import { allFunctions } from "../../../src/functions/all";
import { ask, BUILD_MS, buildDesk, freePort, remove, startDesk, temporaryFolder, type Started } from "./desk";

let folder: string;
let desk: Started;

beforeAll(async () => {
  buildDesk();
  folder = temporaryFolder();
  desk = await startDesk("--data", folder, "--port", String(await freePort()));
}, BUILD_MS);
afterAll(async () => {
  await desk.kill();
  remove(folder);
});

const got = async (place: string): Promise<{ status: number; type: string | null; text: string }> => {
  const response = await ask(desk.address, place);
  return { status: response.status, type: response.headers.get("content-type"), text: await response.text() };
};

test("the index, a page with and without its ending, the style and the script, each of its type", async () => {
  expect(await got("help/")).toMatchObject({ status: 200, type: "text/html; charset=utf-8" });
  expect(await got("help/azimuth")).toEqual(await got("help/azimuth.html"));
  expect((await got("help/azimuth")).text).toContain("<h1>RIG.AZIMUTH</h1>");
  expect((await got("help/model-limits")).text).toContain("where published answers are wrong");
  expect(await got("help/help.css")).toMatchObject({ status: 200, type: "text/css; charset=utf-8" });
  expect(await got("help/search.js")).toMatchObject({ status: 200, type: "text/javascript; charset=utf-8" });
});

test("every function has its page", async () => {
  for (const { name } of allFunctions) {
    expect([name, (await got(`help/${name.toLowerCase()}`)).status]).toEqual([name, 200]);
  }
});

test("nothing else of the disk is served there", async () => {
  for (const place of ["help/../rigsheet.js", "help/%2e%2e/rigsheet.js", "help/nothing"]) {
    expect([place, (await got(place)).status]).toEqual([place, 404]);
  }
});
