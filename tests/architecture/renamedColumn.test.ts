/** A column is renamed by one edit, and the compiler finds every use of it. */
import { readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
import { sourceFiles } from "../support/sourceFiles";

const root = path.join(__dirname, "../..");
const names = path.join(root, "src/workbooks/multiRoom/names/rooms.ts");

/** How often each file speaks of the column, by its text alone. */
const usesIn = (source: string): number => source.match(/\brooms\.run\b/g)?.length ?? 0;

test("every formula and every rule that speaks of a run fails to compile when its column is renamed", () => {
  const using = sourceFiles(path.join(root, "src"))
    .map((file) => ({ file, uses: usesIn(readFileSync(file, "utf8")) }))
    .filter(({ uses }) => uses > 0);
  expect(using.length).toBeGreaterThan(3);

  const { config } = ts.readConfigFile(path.join(root, "tsconfig.json"), ts.sys.readFile) as {
    config: unknown;
  };
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, root);
  // What the page and Excel bring along is of no use here, and takes long to read.
  options.types = [];
  const host = ts.createCompilerHost(options);
  const asItIs = host.readFile.bind(host);
  host.getSourceFile = (file, target) => {
    const text = asItIs(file);
    if (text === undefined) return undefined;
    const renamed =
      path.resolve(file) === names ? text.replace("    run: entry(", "    length: entry(") : text;
    return ts.createSourceFile(file, renamed, target, true);
  };
  const program = ts.createProgram([names, ...using.map(({ file }) => file)], options, host);
  expect(program.getSourceFile(names)!.text).toContain("    length: entry(");
  for (const { file, uses } of using) {
    const found = program
      .getSemanticDiagnostics(program.getSourceFile(file))
      .filter(({ messageText }) =>
        /Property 'run' does not exist/.test(ts.flattenDiagnosticMessageText(messageText, " ")),
      );
    expect([path.relative(root, file), found.length]).toEqual([path.relative(root, file), uses]);
  }
});

test("formulas are built in one file", () => {
  const cast = sourceFiles(path.join(root, "src"))
    .filter((file) => /\bas Formula\b/.test(readFileSync(file, "utf8")))
    .map((file) => path.relative(root, file).split(path.sep).join("/"));
  expect(cast).toEqual(["src/formula/build.ts"]);
});
