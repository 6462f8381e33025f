/**
 * What is built for browsers asks for nothing that only Node has. Types are
 * held to that by tsconfig.browser.json; this looks at what is really loaded,
 * other people's parts of it included.
 */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { Linter, type Rule, type Scope } from "eslint";
import { chromium } from "playwright-core";
import { BUILD_MS, buildDesk } from "../hosts/desk/desk";
import { FLAGS, onPath } from "../pane/inChromium";
import { withChromium } from "../support/tools";

const dist = path.join(__dirname, "../../dist");
/** The desk's server lies beside its page's script. */
const IN_NODE = ["rigsheet.js"];

const ONLY_IN_NODE = new Set([
  ...["Buffer", "process", "global", "require", "module", "exports", "__dirname", "__filename"],
  ...["setImmediate", "clearImmediate"],
]);
/** What the pages bring besides: office.js, and the desk's libraries as scripts of their own. */
const BROUGHT = ["Office", "Excel", "CustomFunctions", "o_spreadsheet", "owl"];
/** The worker's only, and not there on a page without an address. */
const SECURE = ["caches"];
const NEVER_REACHED = [
  // In a method of geomagnetism's that nothing calls (`toCartesian`), which lacks its "Math.".
  ...["cos", "sin"],
  // In the sign-in of @microsoft/office-js-helpers, of which only the storage is used.
  ...["WorkerGlobalScope", "OfficeExtension", "microsoftTeams"],
];

/**
 * @returns the names that a script uses without having made them; one that it
 *   only asks after (`typeof process`) is not used
 */
function freeNames(script: string): string[] {
  const names = new Set<string>();
  const isAskedAfter = ({ identifier }: Scope.Reference): boolean => {
    const { parent } = identifier as Rule.Node;
    return parent?.type === "UnaryExpression" && "operator" in parent && parent.operator === "typeof";
  };
  const rule: Rule.RuleModule = {
    create: ({ sourceCode }) => ({
      "Program:exit"(node) {
        for (const reference of sourceCode.getScope(node).through)
          if (!isAskedAfter(reference)) names.add(reference.identifier.name);
      },
    }),
  };
  const messages = new Linter().verify(
    script,
    {
      plugins: { test: { rules: { free: rule } } },
      rules: { "test/free": "error" },
      languageOptions: { sourceType: "script" },
      linterOptions: { noInlineConfig: true },
    },
    { filename: "script.js" },
  );
  expect(messages).toEqual([]);
  return [...names];
}

let scripts: readonly (readonly [file: string, names: readonly string[]])[] = [];

beforeAll(() => {
  buildDesk();
  scripts = ["addin", "addin/help", "desk", "help"].flatMap((folder) =>
    readdirSync(path.join(dist, folder))
      .map((name) => `${folder}/${name}`)
      .filter((file) => file.endsWith(".js") && !IN_NODE.includes(file))
      .map((file) => [file, freeNames(readFileSync(path.join(dist, file), "utf8"))] as const),
  );
}, BUILD_MS);

test("a name of Node's is found, wherever it stands, and no other word", () => {
  expect(freeNames("(()=>{const e=Buffer.from('x');var t={process:1}.process,r=typeof require})()")).toEqual([
    "Buffer",
  ]);
  expect(freeNames("function f(process){return process.env}")).toEqual([]);
});

test("no name of Node's is used in what browsers load", () => {
  expect(scripts.map(([file]) => file)).toEqual(
    expect.arrayContaining([
      "addin/address.js",
      "addin/functions.js",
      "addin/taskpane.js",
      "desk/desk.js",
      "desk/pdf.js",
      "help/search.js",
    ]),
  );
  const used = scripts.flatMap(([file, names]) =>
    names.filter((name) => ONLY_IN_NODE.has(name)).map((name) => `${file}: ${name}`),
  );
  expect(used).toEqual([]);
});

withChromium("every name that they use is there in a browser", async (program) => {
  const browser = await chromium.launch({ executablePath: onPath(program), args: FLAGS });
  try {
    const page = await browser.newPage();
    for (const [file, names] of scripts) {
      const missing = await page.evaluate((all) => all.filter((name) => !(name in globalThis)), names);
      const unknown = missing.filter((name) => ![...BROUGHT, ...SECURE, ...NEVER_REACHED].includes(name));
      expect({ file, unknown }).toEqual({ file, unknown: [] });
    }
  } finally {
    await browser.close();
  }
});
