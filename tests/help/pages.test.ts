/** The help pages: complete, escaped, linked, and true to what the functions do. */
import { isFault } from "../../src/engine/faults";
import { allFunctions } from "../../src/functions/all";
import { declare } from "../../src/functions/core/declare";
import { number, text } from "../../src/functions/core/parameters";
import { exampleCall } from "../../src/help/exampleCall";
import { faultFacts, fullName, pageOf } from "../../src/help/facts";
import { escaped, html } from "../../src/help/html";
import { helpFiles } from "../../src/help/helpFiles";
import { helpIndex } from "../../src/help/helpIndex";
import { helpPage } from "../../src/help/helpPage";
import { helpText } from "../../src/help/helpText";
import { LEFT_OUT, WRONG_ANSWERS } from "../../src/help/modelFacts";

const files = helpFiles(allFunctions);
const pages = [...files].filter(([name]) => name.endsWith(".html"));
const page = (name: string): string => files.get(pageOf(name))!;

describe("every function's page", () => {
  test.each(allFunctions.map((one) => [one.name, one] as const))("%s", (name, one) => {
    const markup = page(name);
    const has = (words: string) => expect(markup).toContain(escaped(words));
    expect(markup).toContain(`<h1>${fullName(name)}</h1>`);
    for (const id of ["overview", "syntax", "result", "equation", "source", "errors", "examples"]) {
      expect(markup).toContain(`id="${id}"`);
    }
    [one.summary, one.source, one.accuracy, one.result.help, ...one.tasks, ...(one.faultsWhen ?? [])].forEach(
      has,
    );
    for (const { name, help } of one.parameters) {
      expect(markup).toContain(`<code>${name}</code>`);
      has(help);
    }
    for (const { formula, source } of one.examples) {
      has(formula);
      has(source);
    }
    for (const { message } of faultFacts(one)) has(message);
    if (one.caution) has(one.caution);
    // A template that lost a value would show it.
    expect(markup).not.toMatch(/\bundefined\b|\[object|\bNaN\b/);
  });
});

test("links lead to pages and parts that there are", () => {
  const dead = pages.flatMap(([name, markup]) =>
    [...markup.matchAll(/(?:href|src)="([^"]*)"/g)].flatMap(([, target]) => {
      const [file, part] = target!.split("#");
      const there = file === "" ? markup : files.get(file!);
      const ok = there !== undefined && (part === undefined || there.includes(`id="${part}"`));
      return ok ? [] : [`${name}: ${target}`];
    }),
  );
  expect(dead).toEqual([]);
});

test("ids are given once a page, and every tag that is opened is closed", () => {
  for (const [name, markup] of pages) {
    const ids = [...markup.matchAll(/ id="([^"]*)"/g)].map((found) => found[1]);
    expect([name, new Set(ids).size]).toEqual([name, ids.length]);
    const open: string[] = [];
    for (const [, close, tag] of markup.matchAll(/<(\/?)([a-z][a-z0-9]*)/g)) {
      if (["meta", "link", "input", "rect"].includes(tag!)) continue;
      if (close) expect([name, open.pop()]).toEqual([name, tag]);
      else open.push(tag!);
    }
    expect(open).toEqual([]);
  }
});

test("text is escaped wherever it comes from", () => {
  const nasty = `<img src=x onerror="a('b')">&`;
  const one = declare({
    name: "NASTY",
    group: "About",
    summary: nasty,
    parameters: [
      number({ name: "number", help: nasty, unit: nasty, min: 0 }),
      text({ name: "text", help: nasty }),
    ],
    result: { shape: "cell", help: nasty, unit: nasty },
    equation: nasty,
    source: nasty,
    accuracy: nasty,
    tasks: [nasty],
    examples: [{ formula: `RIG.NASTY(1,"<b>")`, result: nasty, source: nasty }],
    seeAlso: [],
    faultsWhen: [nasty],
    caution: nasty,
    compute: () => nasty,
  });
  for (const markup of [helpPage(one), helpIndex([one])]) {
    expect(markup).not.toContain("<img");
    expect(markup).not.toContain("<b>");
    expect(markup).toContain("&lt;img src=x onerror=&quot;a(&#39;b&#39;)&quot;&gt;&amp;");
  }
  expect(html`<p>${"<"}${3}${html`<b></b>`}${undefined}${[html`<i></i>`, undefined]}</p>`.markup).toBe(
    "<p>&lt;3<b></b><i></i></p>",
  );
});

describe("the index", () => {
  const index = files.get("index.html")!;

  test("has every function by name and every task", () => {
    for (const { name, summary, tasks } of allFunctions) {
      expect(index).toContain(`<a href="${pageOf(name)}">${fullName(name)}</a>`);
      for (const words of [summary, ...tasks]) expect(index).toContain(escaped(words));
    }
  });

  test("an estimator's question leads to functions", () => {
    const [, entry] = /<li>([^<]*far bedroom.*?)<\/li>/s.exec(index) ?? [];
    expect(entry).toContain("WINDOW");
    expect(entry).toContain("TREELOSS");
  });

  test("the search is hidden until its script shows it, and no script or style is inline", () => {
    expect(index).toMatch(/<form id="search" role="search" hidden>/);
    for (const [, markup] of pages) {
      expect(markup).not.toMatch(/<script(?![^>]*src=)|<style|\sstyle=|\son[a-z]+=/);
    }
  });
});

describe("what the model leaves out, and where published answers are wrong", () => {
  const known = new Set(allFunctions.map(({ name }) => name));

  test.each(WRONG_ANSWERS.filter(({ formula }) => formula).map((one) => [one.where, one] as const))(
    "%s",
    (_where, { formula, right }) => {
      const { name, args } = exampleCall(formula!);
      const ours = allFunctions.find((one) => one.name === name)!.call(args);
      expect(Math.abs((ours as number) - right!.value)).toBeLessThanOrEqual(right!.tolerance);
    },
  );

  test("an answer that is called wrong is not what the function gives", () => {
    for (const { printed, right } of WRONG_ANSWERS) {
      const number = /(\d+\.\d+)/.exec(printed)?.[1];
      if (number && right && !printed.includes("too little")) {
        expect(Math.abs(Number(number) - right.value)).toBeGreaterThan(right.tolerance);
      }
    }
  });

  test("every entry names functions that there are, and a source", () => {
    for (const { topic, see, source } of LEFT_OUT) {
      expect([topic, see.filter((name) => !known.has(name))]).toEqual([topic, []]);
      expect(source.length).toBeGreaterThan(5);
    }
  });

  test("8PSK 3/5 needs more than QPSK 5/6, as EN 302 307-1 table 13 has it", () => {
    const needed = allFunctions.find(({ name }) => name === "NEEDEDCN")!;
    expect(needed.call(["DVB-S2", "QPSK", "5/6"])).toBe(5.18);
    expect(needed.call(["DVB-S2", "8PSK", "3/5"])).toBe(5.5);
  });
});

describe("error conditions", () => {
  const conditions = (name: string) => faultFacts(allFunctions.find((one) => one.name === name)!);

  test("the sentence is the one that the cell shows", () => {
    const [tooSmall] = conditions("AZIMUTH").filter(({ when }) => when === "latitude is too small");
    const shown = allFunctions.find(({ name }) => name === "AZIMUTH")!.call([-91, 0, 0]);
    expect(isFault(shown) && shown.message).toBe(tooSmall!.message);
    expect(tooSmall!.code).toBe("#VALUE!");
  });

  test("every limit of an argument has its condition", () => {
    for (const one of allFunctions) {
      const whens = faultFacts(one).map(({ when }) => when);
      for (const { name, limits, kind, shape } of one.parameters) {
        if (kind !== "number" || (shape !== "each" && shape !== "list")) continue;
        if (limits?.min !== undefined) expect(whens).toContain(`${name} is too small`);
        if (limits?.max !== undefined) expect(whens).toContain(`${name} is too large`);
        if (limits?.integer) expect(whens).toContain(`${name} is not a whole number`);
      }
    }
  });
});

describe("as plain text", () => {
  test.each(allFunctions.map((one) => [one.name, one] as const))("%s", (_name, one) => {
    const lines = helpText(one).split("\n");
    expect(lines[0]).toBe(fullName(one.name));
    expect(helpText(one)).not.toMatch(/\bundefined\b|\[object/);
    for (const { name } of one.parameters)
      expect(lines.some((line) => line.startsWith(`  - ${name}:`))).toBe(true);
    // A formula or a sentence of one long word may run over.
    expect(
      lines.filter((line) => line.length > 80 && line.trim().includes(" ") && !line.includes('"')),
    ).toEqual([]);
  });
});
