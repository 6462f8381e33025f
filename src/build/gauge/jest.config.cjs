/** The tests' own settings, with the judges of one folder and the same random cases each time. */
const path = require("node:path");
const { projects } = require("../../../jest.config.cjs");
const { judgesOf } = require("./folders.cjs");

const root = path.join(__dirname, "..", "..", "..");
const common = { ...projects[0] };
delete common.displayName;

module.exports = {
  ...common,
  testMatch: judgesOf(process.env.RIGSHEET_GAUGE_FOLDER).map((file) => path.join(root, file)),
  testEnvironment: path.join(__dirname, "stopAtFirst.cjs"),
  testTimeout: 60_000,
  setupFiles: [path.join(__dirname, "sameCases.cjs")],
};
