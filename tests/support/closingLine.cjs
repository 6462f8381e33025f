/**
 * Counts a run's tests: how many passed, failed and were skipped. `npm test`
 * prints the line last of all; it asks for the counts themselves, with the
 * files that failed and what each needs, in the file that the environment names.
 */
const path = require("node:path");
const { writeFileSync } = require("node:fs");
const { closingLine } = require("../../src/build/closingLine.cjs");

module.exports = class ClosingLine {
  failedFiles = [];

  onTestResult({ path: file, context }, { numPassingTests, numFailingTests, testExecError }) {
    if (numFailingTests === 0 && !testExecError) return;
    this.failedFiles.push({
      file: path.relative(context.config.rootDir, file).split(path.sep).join("/"),
      needs: context.config.displayName?.name,
      passed: numPassingTests,
      failed: testExecError && numFailingTests === 0 ? 1 : numFailingTests,
    });
  }

  onRunComplete(_contexts, results) {
    const counts = {
      passed: results.numPassedTests,
      failed: results.numFailedTests + results.numRuntimeErrorTestSuites,
      skipped: results.numPendingTests + results.numTodoTests,
    };
    const file = process.env.RIGSHEET_TEST_COUNTS;
    if (file) writeFileSync(file, JSON.stringify({ ...counts, failedFiles: this.failedFiles }));
    else process.stdout.write(`\n${closingLine(counts)}\n`);
  }
};
