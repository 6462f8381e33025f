/**
 * Microsoft's own office.js, from its package, on the add-in's built page under
 * its content policy: it loads what it needs, for each kind of Excel, and has
 * every call that our sources make.
 *
 * How office.js is told its program (the query `_host_Info`) was read in it;
 * behind it there is no Excel here, so the page waits for one.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { chromium, type BrowserContext, type Page } from "playwright-core";
import ts from "typescript";
import { OFFICE_ADDRESS } from "../../../src/hosts/excel/taskpaneHtml";
import { FLAGS, onPath } from "../../pane/inChromium";
import { setOfMember } from "../../support/excel/requirementSets";
import { withOfficeJs } from "../../support/tools";
import { BUILD_MS, buildDesk } from "../desk/desk";

const project = path.join(__dirname, "..", "..", "..");
const ADDRESS = "https://addins.example.com";
const HOSTED = "/lib/1/hosted/";
const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css",
  ".png": "image/png",
};

beforeAll(() => buildDesk(), BUILD_MS);

interface Loaded {
  readonly page: Page;
  /** Of Microsoft's address, in order. */
  readonly scripts: string[];
  /** What the policy refused: the directive, and what was to be loaded or done. */
  readonly refused: string[];
}

async function loaded(folder: string, program: string, query: string, work: (page: Loaded) => Promise<void>) {
  const browser = await chromium.launch({ executablePath: onPath(program), args: FLAGS });
  const context: BrowserContext = await browser.newContext({ viewport: { width: 320, height: 720 } });
  const scripts: string[] = [];
  const refused: string[] = [];
  try {
    const page = await context.newPage();
    await page.exposeFunction("refusedByPolicy", (what: string) => void refused.push(what));
    await page.addInitScript(() => {
      document.addEventListener("securitypolicyviolation", ({ effectiveDirective, blockedURI }) =>
        (globalThis as unknown as { refusedByPolicy(what: string): void }).refusedByPolicy(
          `${effectiveDirective} ${blockedURI}`,
        ),
      );
    });
    await context.route("**/*", async (route) => {
      const { origin, pathname } = new URL(route.request().url());
      const [from, name] =
        origin === ADDRESS
          ? [path.join(project, "dist", "addin"), pathname]
          : [folder, pathname.startsWith(HOSTED) ? pathname.slice(HOSTED.length) : "none"];
      const file = path.join(from, name);
      if (origin === OFFICE_ADDRESS) scripts.push(name);
      if (![ADDRESS, OFFICE_ADDRESS].includes(origin) || !existsSync(file)) return await route.abort();
      await route.fulfill({ contentType: TYPES[path.extname(file)]!, body: readFileSync(file) });
    });
    await page.goto(`${ADDRESS}/taskpane.html${query}`);
    await work({ page, scripts, refused });
  } finally {
    await browser.close();
  }
}

/** Microsoft's own measuring, which nothing of ours needs: a frame, and a hidden style for it. */
const MEASURING = /^(?:frame-src https:\/\/telemetryservice\.|style-src(?:-attr|-elem)? inline)/;

/** The pane refuses an Excel without this set of ExcelApi, and asks for each later one. */
const NEEDED = 12;
const isLookedFor = (set: string | undefined): boolean => Number(set?.split(".")[1]) > NEEDED;

const HOSTS = [
  ["Windows", "Win32$16.01", "excel-win32-16.01.js"],
  ["Mac", "Mac$16.01", "excel-mac-16.00.js"],
  ["the web", "Web$16.01", "excel-web-16.00.js"],
] as const;

describe.each(HOSTS)("Excel on %s", (_, host, script) => {
  withOfficeJs(
    "its own part of office.js loads under our policy, and has every call that we make",
    async (folder, program) => {
      await loaded(
        folder,
        program,
        `?_host_Info=Excel$${host}$en-US$$$$0`,
        async ({ page, scripts, refused }) => {
          await page.waitForFunction(() => typeof Office === "object" && typeof Excel === "object");
          expect(scripts).toContain(script);
          expect(refused.filter((one) => !MEASURING.test(one))).toEqual([]);
          const missing = await page.evaluate(
            (asked) =>
              asked.filter(([name, member]) => {
                const one = (Excel as unknown as Record<string, { prototype: object } | undefined>)[name];
                return !one || !(member in one.prototype);
              }),
            callsOfOurs(),
          );
          // The package runs behind Microsoft's own address; what came late is looked for before it is used.
          const early = missing.filter(([name, member]) => !isLookedFor(setOfMember(`${name}.${member}`)));
          expect(early).toEqual([]);
        },
      );
    },
  );
});

withOfficeJs("in a browser without Excel the page opens, and what it can't do is said", (folder, program) =>
  loaded(folder, program, "", async ({ page, scripts, refused }) => {
    await page.getByText("There is no workbook beside this page").waitFor();
    expect(scripts[0]).toBe("office.js");
    expect(refused.filter((one) => !MEASURING.test(one))).toEqual([]);
  }),
);

withOfficeJs("an Excel that does not answer is named, in place of a blank pane", (folder, program) =>
  loaded(folder, program, `?_host_Info=Excel$${HOSTS[0][1]}$en-US$$$$0`, async ({ page }) => {
    await page.getByRole("status").getByText("Excel has not answered this page yet").waitFor();
  }),
);

/** Each member of a class of Excel's that the add-in's sources use, by the types. */
function callsOfOurs(): (readonly [name: string, member: string])[] {
  const folder = path.join(project, "src", "hosts", "excel");
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts") && !name.startsWith("addIn"))
    .map((name) => path.join(folder, name));
  const { options } = ts.parseJsonConfigFileContent(
    ts.readConfigFile(path.join(project, "tsconfig.json"), (name) => readFileSync(name, "utf8")).config,
    ts.sys,
    project,
  );
  const program = ts.createProgram(files, options);
  const checker = program.getTypeChecker();
  const found = new Map<string, readonly [string, string]>();
  const note = (symbol: ts.Symbol | undefined): void => {
    for (const declaration of symbol?.declarations ?? []) {
      const { parent } = declaration;
      if (
        !ts.isClassDeclaration(parent) ||
        !parent.name ||
        !/office-js/.test(parent.getSourceFile().fileName)
      )
        continue;
      if (!ts.isModuleBlock(parent.parent) || parent.parent.parent.name.text !== "Excel") continue;
      found.set(`${parent.name.text}.${symbol!.name}`, [parent.name.text, symbol!.name]);
    }
  };
  const visit = (node: ts.Node): void => {
    if (ts.isPropertyAccessExpression(node)) note(checker.getSymbolAtLocation(node.name));
    if (ts.isBindingElement(node)) {
      const type = checker.getTypeAtLocation(node.parent);
      note(type.getProperty((node.propertyName ?? node.name).getText()));
    }
    ts.forEachChild(node, visit);
  };
  for (const file of files) visit(program.getSourceFile(file)!);
  // That it finds any: each of our changes begins with a workbook.
  if (!found.has("Workbook.worksheets") || found.size < 50)
    throw new Error(`only ${found.size} members found`);
  return [...found.values()].sort();
}
