const { testsByNeed } = require("./tests/support/projects.cjs");

/** Type errors are found by `npm run typecheck`, so the tests only strip types: twice as fast on two cores. */
const stripTypes = [
  "ts-jest",
  {
    tsconfig: {
      module: "commonjs",
      target: "es2022",
      moduleResolution: "bundler",
      isolatedModules: true,
      allowJs: true,
      esModuleInterop: true,
      resolveJsonModule: true,
    },
    diagnostics: false,
  },
];

/**
 * The language's own objects, handed to each module as parameters. In the
 * runner's context a global is looked up through an interceptor each time,
 * which took half of the time of all that computes. Not what a test may put
 * something else in the place of, such as Date, timers or fetch.
 */
const LANGUAGE = [
  ...[
    "Array",
    "BigInt",
    "Boolean",
    "Error",
    "JSON",
    "Map",
    "Math",
    "Number",
    "Object",
    "Promise",
    "RangeError",
  ],
  ...["RegExp", "Set", "String", "Symbol", "TypeError", "WeakMap", "WeakSet"],
  ...["DataView", "Float64Array", "Int32Array", "Uint8Array", "Uint16Array", "Uint32Array"],
  ...["Infinity", "isFinite", "isNaN", "parseFloat", "parseInt"],
];

const common = {
  rootDir: __dirname,
  testEnvironment: "node",
  roots: ["<rootDir>/tests"],
  transform: { "^.+\\.(ts|mjs)$": stripTypes, "/node_modules/(d3-[a-z-]+|internmap)/.+\\.js$": stripTypes },
  // Published as ES modules only, which the test runner's loader can't read as they are.
  transformIgnorePatterns: ["/node_modules/(?!(hucre|satellite\\.js|magvar|d3-[a-z-]+|internmap)/)"],
  sandboxInjectedGlobals: LANGUAGE,
  moduleNameMapper: {
    "^pdfkit$": "<rootDir>/tests/support/pdfkit.cjs",
    "^fontkit$": "<rootDir>/node_modules/fontkit/dist/browser.cjs",
  },
  moduleFileExtensions: ["ts", "mjs", "js", "cjs", "json"],
};

module.exports = {
  // Suites wait for a browser or for LibreOffice much of the time: a worker for each core, not one fewer.
  maxWorkers: "100%",
  // What a file leaves behind is never all given back: a worker of some gigabytes spends its time on looking through them.
  workerIdleMemoryLimit: "1GB",
  // Two busy cores make a slow test slower; a hang still ends.
  testTimeout: 60_000,
  testSequencer: "<rootDir>/tests/support/slowFirst.cjs",
  reporters: ["default", "<rootDir>/tests/support/closingLine.cjs"],
  projects: Object.entries(testsByNeed()).map(([displayName, testMatch]) => ({
    ...common,
    displayName,
    testMatch,
  })),
};
