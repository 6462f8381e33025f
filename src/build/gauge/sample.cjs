/** A seeded sample of mutants that stays the same while their own lines do. */
const { createHash } = require("node:crypto");
const ts = require("typescript");

/**
 * @typedef {object} Mutant
 * @property {string} file within the project
 * @property {string} mutator the kind of change
 * @property {string} replacement
 * @property {{start: {line: number, column: number}, end: {line: number, column: number}}} location from 0
 */

/** @returns the name of a mutant in one state of the sources */
function placeOf({ file, mutator, replacement, location: { start, end } }) {
  return [file, start.line, start.column, end.line, end.column, mutator, replacement].join("|");
}

/**
 * Ranks by a hash of what is changed into what, not of where it stands, so that
 * a line more in a file leaves the rest of the sample as it was.
 *
 * @param {readonly Mutant[]} mutants
 * @param {ReadonlyMap<string, string>} sources text of each file
 * @param {number} seed
 * @param {number} size
 * @returns {Mutant[]} that many of them, or all where there are fewer
 */
function sample(mutants, sources, seed, size) {
  const seen = new Map();
  return mutants
    .map((mutant) => {
      const { file, mutator, replacement } = mutant;
      const what = JSON.stringify([file, mutator, original(mutant, sources.get(file)), replacement]);
      const nth = (seen.get(what) ?? 0) + 1;
      seen.set(what, nth);
      const rank = createHash("sha256").update(`${seed} ${nth} ${what}`).digest("hex");
      return { rank, mutant };
    })
    .sort((a, b) => (a.rank < b.rank ? -1 : 1))
    .slice(0, size)
    .map(({ mutant }) => mutant);
}

const offsetsOf = (text) => {
  const starts = [0];
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) starts.push(at + 1);
  return ({ line, column }) => starts[line] + column;
};

/** @returns the text that a mutant takes away */
function original({ location: { start, end } }, text) {
  const offset = offsetsOf(text);
  return text.slice(offset(start), offset(end));
}

/**
 * What runs only while a file is loaded, such as a declaration's words, can't
 * be changed for one test at a time; such mutants are left out.
 *
 * @returns {boolean} whether a mutant stands inside a function
 */
function runsInTests({ file, location: { start } }, text) {
  const source = sourceOf(file, text);
  const at = offsetsOf(text)(start);
  const isWithin = (node) =>
    ts.forEachChild(node, (child) => {
      if (at < child.getStart(source) || at >= child.end) return undefined;
      return isBody(child) || isWithin(child);
    }) ?? false;
  return isWithin(source);
}

const isBody = (node) => ts.isFunctionLike(node.parent) && node.parent.body === node;

const parsed = new Map();
function sourceOf(file, text) {
  const known = parsed.get(file);
  if (known?.text === text) return known;
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
  parsed.set(file, source);
  return source;
}

module.exports = { placeOf, sample, original, runsInTests };
