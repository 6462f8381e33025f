/**
 * Reads one file in a process of its own, which may write nothing: Node's
 * permission model refuses it. An attempt to reach the network is an error.
 */
"use strict";
const net = require("node:net");
const path = require("node:path");
const { performance } = require("node:perf_hooks");
const { readFileSync } = require("node:fs");

net.Socket.prototype.connect = () => {
  throw new Error("the reader reached for the network");
};
const [compiled, file, isJob] = process.argv.slice(2);
const from = (name) => require(path.join(compiled, name));

/** On Linux a process's resource usage begins with its parent's peak, so the system's own record of this one is asked first. */
function peakKibibytes() {
  try {
    return Number(/^VmHWM:\s*(\d+) kB/m.exec(readFileSync("/proc/self/status", "utf8"))[1]);
  } catch {
    return process.resourceUsage().maxRSS;
  }
}

async function main() {
  const { readXlsx } = from("hosts/file/readXlsx.js");
  const recalculate = isJob === "job" ? from("hosts/headless/recalculate.js").recalculate : undefined;
  const bytes = readFileSync(file);
  const start = performance.now();
  const answer = {};
  let book;
  try {
    book = await readXlsx(bytes);
  } catch (error) {
    answer.trouble = error.name;
    answer.sentence = error.message;
  }
  answer.ms = performance.now() - start;
  if (book) {
    const [first] = book.sheets;
    answer.sheet = first.name;
    answer.names = book.names.length;
    answer.cells = Object.entries({ ...first.cells })
      .slice(0, 20)
      .map(([at, cell]) => [at, cell.value ?? first.results[at]]);
  }
  if (book && recalculate) {
    const { jobInputsOf } = from("workbooks/jobInputsOf.js");
    const { multiRoom } = from("workbooks/multiRoom/definition.js");
    const { namedValue } = from("workbooks/named.js");
    answer.total = namedValue(recalculate(book), "quote_total");
    answer.inputs = jobInputsOf(multiRoom, book);
    answer.computedMs = performance.now() - start;
  }
  answer.peakMebibytes = peakKibibytes() / 1024;
  answer.polluted = Object.keys({}.__proto__).length > 0;
  process.stdout.write(JSON.stringify(answer));
}
void main();
