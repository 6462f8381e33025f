/** Counts a run's tests: how many passed, failed and were skipped. `npm test` prints the line last of all. */
const { writeFileSync } = require("node:fs");

module.exports = class ClosingLine {
  onRunComplete(_contexts, results) {
    const failed = results.numFailedTests + results.numRuntimeErrorTestSuites;
    const skipped = results.numPendingTests + results.numTodoTests;
    const line = `${results.numPassedTests} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ""}`;
    const file = process.env.RIGSHEET_CLOSING_LINE;
    if (file) writeFileSync(file, line);
    else process.stdout.write(`\n${line}\n`);
  }
};
