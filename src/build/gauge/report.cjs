/** What a run of the gauge found, with what was judged of survivors before. */
const { original, placeOf } = require("./sample.cjs");

const CAUGHT = ["Killed", "Timeout"];
const MISSED = ["Survived", "NoCoverage"];

/** Results tell lines and columns from 1. */
const fromZero = ({ start, end }) => ({
  start: { line: start.line - 1, column: start.column - 1 },
  end: { line: end.line - 1, column: end.column - 1 },
});

/** @returns of each mutant of the sample what became of it, in words that a judgement can name */
function foundIn(results, drawn, sources, project) {
  const statuses = new Map(
    results.map((one) => [
      placeOf({
        file: one.fileName.slice(project.length + 1).replaceAll("\\", "/"),
        mutator: one.mutatorName,
        replacement: one.replacement,
        location: fromZero(one.location),
      }),
      one.status,
    ]),
  );
  return drawn.map((mutant) => {
    const text = sources.get(mutant.file);
    return {
      file: mutant.file,
      at: mutant.location.start.line + 1,
      line: text.split("\n")[mutant.location.start.line].trim(),
      from: original(mutant, text),
      to: mutant.replacement,
      status: statuses.get(placeOf(mutant)) ?? "not run",
    };
  });
}

const isOf = (one) => (judgement) =>
  ["file", "line", "from", "to"].every((name) => judgement[name] === one[name]);

/**
 * @param found what became of each mutant of a sample
 * @param judged survivors that do what the source does, each as it stands there, with the reason
 * @returns the figures; a judged one counts as not caught all the same
 */
function figures(found, judged) {
  const caught = found.filter(({ status }) => CAUGHT.includes(status));
  const missed = found.filter(({ status }) => MISSED.includes(status));
  const open = missed.filter((one) => !judged.some(isOf(one)));
  const counted = caught.length + missed.length;
  return {
    caught: caught.length,
    counted,
    open,
    equivalent: missed.length - open.length,
    leftOut: found.length - counted,
    needless: judged.filter((judgement) => caught.some((one) => isOf(one)(judgement))),
  };
}

/** @returns the figures in words, the survivors that nobody has judged first */
function told(folder, { caught, counted, open, equivalent, leftOut, needless }) {
  const change = ({ file, at, line, from, to }) =>
    `${file}:${at}\n  ${line}\n  ${JSON.stringify(from)} -> ${JSON.stringify(to)}`;
  return [
    ...open.map(
      (one) => `${one.status === "NoCoverage" ? "no test goes there" : "survived"}: ${change(one)}\n`,
    ),
    ...needless.map(({ file, line }) => `${file}: judged equivalent, and caught all the same: ${line}\n`),
    `${folder}: ${caught} of ${counted} caught, ${((caught / (counted || 1)) * 100).toFixed(1)} %; of the ${counted - caught} others ${equivalent} are judged equivalent, ${open.length} are not.`,
    ...(leftOut > 0
      ? [`${leftOut} more of the sample ran only while a file was loaded, or could not run.`]
      : []),
  ];
}

module.exports = { foundIn, figures, told };
