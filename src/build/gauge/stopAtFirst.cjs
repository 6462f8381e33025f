/** One failed test is enough to catch a mutant: the rest of its file is passed over. */
const { TestEnvironment } = require("jest-environment-node");

module.exports = class StopAtFirst extends TestEnvironment {
  #hasFailed = false;

  handleTestEvent({ name, test }) {
    if (name === "test_fn_failure") this.#hasFailed = true;
    if (name === "test_start" && this.#hasFailed) test.mode = "skip";
  }
};
