/** The last line of a run: how many tests passed, failed and were skipped. */
module.exports = class ClosingLine {
  onRunComplete(_contexts, results) {
    const failed = results.numFailedTests + results.numRuntimeErrorTestSuites;
    const skipped = results.numPendingTests + results.numTodoTests;
    this.line = `${results.numPassedTests} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ""}`;
    process.stdout.write(`\n${this.line}\n`);
  }
};
