/** `rigsheet addin`: the folder that an office serves, and the page on which it makes its manifests without the command. */
import { execFileSync, spawnSync } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { chromium, type Browser, type Page } from "playwright-core";
import { addressTrouble } from "../../src/hosts/excel/addIn/addressTrouble";
import { serverSnippets } from "../../src/hosts/excel/addIn/serverSnippets";
import { BUILD_MS, buildDesk } from "../hosts/desk/desk";
import { FLAGS, onPath } from "../pane/inChromium";
import { withChromium, withXmllint } from "../support/tools";

const project = path.join(__dirname, "../..");
const SCHEMA = path.join(project, "tests/fixtures/manifest-schema/OfficeAppManifestV1_1.xsd");
const SUB_PATH = "/office/rigsheet";
const ADDRESS = `https://addins.example.com:8443${SUB_PATH}`;
const ADDRESSED = ["manifest.xml", "manifest.json", "functions.json"];

const top = mkdtempSync(path.join(tmpdir(), "rigsheet-addin-"));
const out = path.join(top, "office");
afterAll(() => rmSync(top, { recursive: true, force: true }));

const command = path.join(project, "dist", "rigsheet.js");
const rigsheet = (...words: string[]) =>
  spawnSync(process.execPath, [command, "addin", ...words], { encoding: "utf8", cwd: top });
const read = (name: string): string => readFileSync(path.join(out, name), "utf8");
const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)).split(path.sep).join("/"));

beforeAll(() => {
  buildDesk();
  const { status, stdout, stderr } = rigsheet("--address", ADDRESS, "--out", out);
  expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
  expect(stdout).toBe(
    `${out}: ${filesIn(out).length} files, for ${ADDRESS}\n${path.join(out, "deploy.html")}: what to do with them; open it in a browser\n`,
  );
}, BUILD_MS);

/** Every address that a text names, but for those of schemas and of Microsoft's script. */
const addressesIn = (text: string): string[] =>
  [...text.matchAll(/https?:\/\/[^\s"'<>&]+/g)]
    .map(([address]) => address)
    .filter((address) => !/^https?:\/\/(?:www\.w3\.org|[\w.]+\.microsoft\.com)\//.test(address));

describe("the manifests", () => {
  test.each(ADDRESSED)("%s names that address and no other", (name) => {
    const named = addressesIn(read(name));
    expect(named.length).toBeGreaterThan(5);
    const origin = new URL(ADDRESS).origin;
    expect(named.filter((one) => one !== origin && !one.startsWith(`${ADDRESS}/`))).toEqual([]);
  });

  test("give the origin alone where Excel wants it", () => {
    expect(/<AppDomain>(.*)<\/AppDomain>/.exec(read("manifest.xml"))![1]).toBe(
      "https://addins.example.com:8443",
    );
    const { validDomains } = JSON.parse(read("manifest.json")) as { validDomains: string[] };
    expect(validDomains).toEqual(["addins.example.com:8443"]);
  });

  withXmllint("keep Microsoft's schema: XML", (xmllint) => {
    const file = path.join(out, "manifest.xml");
    execFileSync(xmllint, ["--noout", "--nonet", "--schema", SCHEMA, file], { stdio: "pipe" });
  });

  test("keep Microsoft's schema: JSON", () => {
    const script = path.join(project, "tests/hosts/excel/checkManifest.cjs");
    const said = execFileSync(process.execPath, [script, path.join(out, "manifest.json")], {
      encoding: "utf8",
    });
    expect(JSON.parse(said)).toMatchObject({ valid: true, errors: "[]" });
  });
});

/** As an office's server: the folder below a path of it, with the types of the snippets, and nothing else. */
async function served(): Promise<{ server: Server; at: string }> {
  const types = new Map(
    [...serverSnippets(ADDRESS).nginx.matchAll(/^ +(\w+\/\w+) (\w+);$/gm)].map(([, type, ending]) => [
      `.${ending!}`,
      type!,
    ]),
  );
  const server = createServer(({ url = "" }, response) => {
    const { pathname } = new URL(url, "http://127.0.0.1");
    const name = pathname.startsWith(`${SUB_PATH}/`) ? pathname.slice(SUB_PATH.length + 1) : undefined;
    const file = path.join(out, name === "" ? "index.html" : (name ?? "none"));
    const type = types.get(path.extname(file));
    if (name === undefined || !type || !statSync(file, { throwIfNoEntry: false })?.isFile()) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { "content-type": type, "access-control-allow-origin": "*" });
    response.end(readFileSync(file));
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return { server, at: `http://127.0.0.1:${(server.address() as AddressInfo).port}` };
}

describe("served below a path of a plain server", () => {
  let server: Server;
  let at: string;
  beforeAll(async () => {
    ({ server, at } = await served());
  });
  afterAll(() => server.close());

  test("every file that the manifests, the functions and the pages name is found", async () => {
    const pages = filesIn(out).filter((name) => name.endsWith(".html"));
    const ofPages = pages.flatMap((name) =>
      [...read(name).matchAll(/\s(?:src|href)="([^"]+)"/g)].map(([, url]) =>
        new URL(url!, `${ADDRESS}/${name}`).href.replace(/#.*$/, ""),
      ),
    );
    const ofManifests = ADDRESSED.flatMap((name) => addressesIn(read(name))).filter((one) =>
      one.startsWith(`${ADDRESS}/`),
    );
    const packed = Object.values(
      (JSON.parse(read("manifest.json")) as { icons: Record<string, string> }).icons,
    );
    const all = new Set([...ofPages, ...ofManifests, ...packed.map((icon) => `${ADDRESS}/${icon}`)]);
    const ours = [...all].filter((one) => one.startsWith(`${ADDRESS}/`));
    expect(ours).toEqual(
      expect.arrayContaining(
        [
          "taskpane.html",
          "taskpane.js",
          "functions.js",
          "functions.json",
          "support.html",
          "address.js",
          "pane.css",
        ]
          .concat("taskpane.css", "help/help.css", "help/search.js", "help/azimuth.html", "icons/icon-80.png")
          .map((name) => `${ADDRESS}/${name}`),
      ),
    );
    const missing = [];
    for (const one of ours) {
      const { status } = await fetch(at + new URL(one).pathname);
      if (status !== 200) missing.push(one);
    }
    expect(missing).toEqual([]);
    expect((await fetch(`${at}/taskpane.html`)).status).toBe(404);
  });

  withChromium(
    "the first page makes the same three files as the command, and asks nothing of a network",
    async (program) => {
      await inBrowser(program, async (page) => {
        const asked: string[] = [];
        page.on("request", (request) => asked.push(request.url()));
        await page.goto(`${at}${SUB_PATH}/`);
        await page.waitForLoadState("networkidle");
        const before = asked.length;
        expect(await madeFor(page, ADDRESS)).toEqual(ADDRESSED.map(read));
        expect(asked.slice(before).filter((url) => !url.startsWith("blob:"))).toEqual([]);
      });
    },
  );
});

withChromium("the first page works from a disk too, and for another address after it", async (program) => {
  await inBrowser(program, async (page) => {
    await page.goto(pathToFileURL(path.join(out, "index.html")).href);
    expect(await madeFor(page, ADDRESS)).toEqual(ADDRESSED.map(read));
    const other = "https://intranet.example/a";
    const again = await madeFor(page, other);
    for (const text of again) {
      expect(text).toContain(`${other}/`);
      expect(text).not.toContain("addins.example.com");
    }
  });
});

withChromium("the first page refuses what the command refuses, with its sentence", async (program) => {
  await inBrowser(program, async (page) => {
    await page.goto(pathToFileURL(path.join(out, "index.html")).href);
    await madeFor(page, ADDRESS);
    for (const bad of ["", "addins.example.com", "http://localhost:3000", "https://addins.example.com/a?b"]) {
      await page.getByLabel("Address of this folder").fill(bad);
      await page.getByRole("button", { name: "Make the manifests" }).click();
      expect(await page.getByRole("alert").textContent()).toBe(addressTrouble(bad));
      expect(await page.getByRole("link", { name: "manifest.xml" }).count()).toBe(0);
    }
  });
});

async function inBrowser(program: string, fn: (page: Page) => Promise<void>): Promise<void> {
  let browser: Browser | undefined;
  try {
    browser = await chromium.launch({ executablePath: onPath(program), args: FLAGS });
    const page = await browser.newPage();
    const troubles: string[] = [];
    page.on("pageerror", (error) => troubles.push(error.message));
    page.on("console", (message) => message.type() === "error" && troubles.push(message.text()));
    await fn(page);
    expect(troubles).toEqual([]);
  } finally {
    await browser?.close();
  }
}

async function madeFor(page: Page, address: string): Promise<string[]> {
  await page.getByLabel("Address of this folder").fill(address);
  await page.getByRole("button", { name: "Make the manifests" }).click();
  const texts = [];
  for (const name of ADDRESSED) {
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("link", { name, exact: true }).click(),
    ]);
    expect(download.suggestedFilename()).toBe(name);
    texts.push(readFileSync(await download.path(), "utf8"));
  }
  return texts;
}

describe("the page of steps", () => {
  const text = (): string =>
    read("deploy.html")
      .replace(/<[^>]+>/g, "")
      .replace(/\s+/g, " ");

  test("has the office's address in its snippets, and says what each way to Excel can do", () => {
    for (const part of [
      "server_name addins.example.com;",
      "listen 8443 ssl;",
      `location ${SUB_PATH}/ {`,
      `Alias &quot;${SUB_PATH}&quot;`,
      "Microsoft 365 admin center",
      "for trying only",
      "It passes over the part of the manifest that brings ribbon buttons and functions",
      "appsforoffice.microsoft.com",
      "What Excel shows without a network",
      "Nobody has run Rigsheet in Excel yet",
    ]) {
      expect(text()).toContain(part);
    }
  });

  test("gives each kind of file in the folder its type, lets Office read them, and lets pictures be kept", () => {
    const endings = [...new Set(filesIn(out).map((name) => path.extname(name).slice(1)))].sort();
    expect(endings).toEqual(expect.arrayContaining(["html", "js", "json", "png", "xlsx"]));
    const { nginx, apache, iis } = serverSnippets(ADDRESS);
    const typed = (snippet: string, line: RegExp): string[] =>
      [...snippet.matchAll(line)].map(([, ending]) => ending!).sort();
    expect(typed(nginx, /^ +\w+\/[\w.-]+ (\w+);$/gm)).toEqual(endings);
    expect(typed(apache, /AddType \w+\/[\w.-]+ \.(\w+)$/gm)).toEqual(endings);
    expect(typed(iis, /<mimeMap fileExtension="\.(\w+)"/g)).toEqual(endings);
    for (const snippet of [nginx, apache, iis]) {
      expect(snippet).toContain("Access-Control-Allow-Origin");
      expect(snippet).not.toMatch(/no-store|no-cache|X-Frame-Options|frame-ancestors/);
    }
  });

  test("at the top of a server there is no path to put", () => {
    const { nginx, apache } = serverSnippets("https://addins.example.com");
    expect(nginx).toContain("location / {");
    expect(nginx).toContain("listen 443 ssl;");
    expect(apache).toContain('DocumentRoot "/srv/rigsheet"');
    expect(apache).not.toContain("Alias");
  });

  withXmllint("IIS's file is XML", (xmllint) => {
    const file = path.join(top, "web.config");
    writeFileSync(file, serverSnippets(ADDRESS).iis);
    execFileSync(xmllint, ["--noout", "--nonet", file], { stdio: "pipe" });
  });
});

describe("what can't be done is a sentence, and nothing is written", () => {
  const free = path.join(top, "free");
  test.each<[string, string[], RegExp]>([
    ["no address", ["--out", free], /^There is no --address\. Give .* --address https:/],
    ["no folder", ["--address", ADDRESS], /^There is no --out\. Name the folder/],
    ["http", ["--address", "http://addins.example.com", "--out", free], /https only/],
    [
      "http on this computer",
      ["--address", "http://localhost:3000", "--out", free],
      /https only, from localhost too/,
    ],
    ["a query", ["--address", "https://addins.example.com/a?b=1", "--out", free], /no question mark/],
    ["one word too many", ["--address", ADDRESS, "--out", free, "more"], /"more" is one word too many/],
    ["an unknown option", ["--adress", ADDRESS], /'--adress'.*See: rigsheet addin --help/],
    ["a folder in none", ["--address", ADDRESS, "--out", path.join(free, "a")], /free/],
    ["a name that no disk takes", ["--address", ADDRESS, "--out", "x".repeat(300)], /xxx/],
  ])("%s", (_, words, sentence) => {
    const before = filesIn(top).length;
    const { status, stdout, stderr } = rigsheet(...words);
    expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
    expect(stderr).toMatch(sentence);
    expect(stderr.trim().split("\n")).toHaveLength(1);
    expect(existsSync(free)).toBe(false);
    expect(filesIn(top)).toHaveLength(before);
  });

  test("a folder with something in it keeps it, and the sentence names it", () => {
    const kept = path.join(top, "kept");
    mkdirSync(kept);
    writeFileSync(path.join(kept, "notes.txt"), "mine");
    const { status, stderr } = rigsheet("--address", ADDRESS, "--out", kept);
    expect(status).toBe(2);
    expect(stderr).toMatch(/is not empty: notes\.txt is in it; nothing was written/);
    expect(readdirSync(kept)).toEqual(["notes.txt"]);
  });

  test("a file in the folder's place", () => {
    writeFileSync(path.join(top, "file"), "mine");
    expect(rigsheet("--address", ADDRESS, "--out", "file").stderr).toMatch(
      /^file is a file\. Name a new folder/,
    );
    expect(readFileSync(path.join(top, "file"), "utf8")).toBe("mine");
  });

  // The shell's limit on a file's size stands for a disk that gets full on the way.
  const posix = process.platform === "win32" ? test.skip : test;
  posix("a disk that gets full on the way: what was begun is taken back", () => {
    const given = path.join(top, "given");
    mkdirSync(given);
    for (const folder of [free, given]) {
      const { status, stderr } = spawnSync(
        "sh",
        [
          "-c",
          'ulimit -f 500; exec "$@"',
          "sh",
          process.execPath,
          command,
          "addin",
          "--address",
          ADDRESS,
        ].concat("--out", folder),
        { encoding: "utf8" },
      );
      expect(status).toBe(2);
      expect(stderr).toMatch(/could not be saved/);
    }
    expect(existsSync(free)).toBe(false);
    expect(readdirSync(given)).toEqual([]);
    expect(rigsheet("--address", ADDRESS, "--out", given).status).toBe(0);
  });
});
