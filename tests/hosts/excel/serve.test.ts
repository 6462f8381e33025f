/** The scripts that load and serve the add-in, as people start them. */
import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { get } from "node:https";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { generateCertificates } from "office-addin-dev-certs";
import { BUILD_MS, buildDesk } from "../desk/desk";

const project = path.join(__dirname, "../../..");
const script = (name: string): string => path.join(project, "src/build", name);

let home: string;
beforeAll(() => {
  home = mkdtempSync(path.join(tmpdir(), "rigsheet-home-"));
  buildDesk();
}, BUILD_MS);
afterAll(() => rmSync(home, { recursive: true, force: true }));

const run = (name: string, ...words: string[]) =>
  spawnSync(process.execPath, [script(name), ...words], {
    encoding: "utf8",
    env: { ...process.env, HOME: home, USERPROFILE: home },
  });

test("sideload prints the steps for Windows, Mac and the web, with the manifest's place", () => {
  const { status, stdout } = run("sideload.mjs");
  expect(status).toBe(0);
  for (const part of [
    "Excel on Windows",
    "Excel on a Mac",
    "Excel on the web",
    "--certificate",
    "serve:addin",
    "rigsheet addin --address",
  ]) {
    expect(stdout).toContain(part);
  }
  expect(stdout).toContain(path.join("dist", "addin", "manifest.xml"));
});

test.each([
  [["--certificat"], /Not understood: --certificat/],
  [["--certificate", "--day", "3"], /Not understood: --day 3/],
  [["--certificate", "--days", "soon"], /--days soon is no number of days/],
  [["--certificate", "--days", "0"], /whole number from 1 to 3650/],
])("sideload %j is refused with a sentence", (words, sentence) => {
  const { status, stderr } = run("sideload.mjs", ...words);
  expect(status).toBe(1);
  expect(stderr).toMatch(sentence);
});

test("without a certificate nothing is served, and the way on is said", () => {
  const { status, stderr } = run("serve-addin.mjs");
  expect(status).toBe(1);
  expect(stderr).toMatch(/no development certificate.*npm run sideload -- --certificate/);
});

/** The address is fixed by the manifest, so the test needs it free. */
const portFree = (): Promise<boolean> =>
  new Promise((resolve) => {
    const probe = createServer()
      .once("error", () => resolve(false))
      .listen(3000, "localhost", () => probe.close(() => resolve(true)));
  });

const fetched = (url: string): Promise<{ status: number; type: string; text: string }> =>
  new Promise((resolve, reject) => {
    get(url, { rejectUnauthorized: false }, (response) => {
      let text = "";
      response.on("data", (part: Buffer) => (text += part.toString()));
      response.on("end", () =>
        resolve({ status: response.statusCode!, type: response.headers["content-type"]!, text }),
      );
    }).on("error", reject);
  });

test("with a certificate the folder is served over https, and nothing outside it", async () => {
  const certificates = path.join(home, ".office-addin-dev-certs");
  const file = (name: string): string => path.join(certificates, name);
  await generateCertificates(file("ca.crt"), file("localhost.crt"), file("localhost.key"), 2);
  expect(await portFree()).toBe(true);
  const server = spawn(process.execPath, [script("serve-addin.mjs")], {
    env: { ...process.env, HOME: home, USERPROFILE: home },
    stdio: ["ignore", "pipe", "inherit"],
  });
  try {
    await new Promise<void>((resolve, reject) => {
      server.stdout.on(
        "data",
        (part: Buffer) => part.toString().includes("https://localhost:3000") && resolve(),
      );
      server.on("exit", (code) => reject(new Error(`ended with ${code}`)));
    });
    const at = (name: string) => fetched(`https://localhost:3000/${name}`);
    expect(await at("taskpane.html")).toMatchObject({
      status: 200,
      type: expect.stringContaining("text/html") as string,
    });
    expect((await at("functions.json?v=1")).text).toContain('"allowErrorForDataTypeAny": true');
    expect((await at("icons/icon-16.png")).type).toBe("image/png");
    for (const outside of [
      "",
      "icons",
      "nothing.html",
      "..%2f..%2fpackage.json",
      "%2e%2e/%2e%2e/package.json",
      "%zz",
    ]) {
      expect([outside, (await at(outside)).status]).toEqual([outside, 404]);
    }
    expect(run("serve-addin.mjs").stderr).toMatch(/Port 3000 is in use.*manifest names it/);
  } finally {
    server.kill();
  }
});
