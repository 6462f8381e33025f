const fs = require("fs");
const path = require("path");
const { BannerPlugin, DefinePlugin, NormalModuleReplacementPlugin } = require("webpack");

const source = (file) => path.join(__dirname, "src", file);
const dist = (...parts) => path.join(__dirname, "dist", ...parts);

const common = {
  mode: "production",
  // The sources are read in stack traces, and the bundles are small.
  optimization: { minimize: false },
  devtool: false,
  // A build after an edit takes a fraction of the first one; npm ci throws it away with the packages.
  cache: {
    type: "filesystem",
    cacheDirectory: path.join(__dirname, "node_modules", ".cache", "webpack"),
    buildDependencies: {
      config: [path.join(__dirname, "webpack.config.js"), path.join(__dirname, "tsconfig.json")],
    },
  },
  resolve: {
    extensions: [".ts", ".mjs", ".js", ".json"],
    // The builds for pages, everywhere: Node's own packs otherwise, and a PDF must come out the same.
    alias: {
      pdfkit$: path.join(__dirname, "node_modules/pdfkit/js/pdfkit.browser.mjs"),
      fontkit$: path.join(__dirname, "node_modules/fontkit/dist/browser-module.mjs"),
      "png-js$": path.join(__dirname, "node_modules/png-js/lib/png-js.browser.js"),
    },
  },
  performance: { hints: false },
  stats: "errors-warnings",
};

/** Types are checked by `npm run typecheck`; the bundles only strip them. */
const types = {
  test: /\.ts$/,
  loader: "ts-loader",
  options: { transpileOnly: true, compilerOptions: { noEmit: false } },
};

/** Not bundled: shipped whole beside the bundles (build/shipped.mjs), or installed packages. */
const SEPARATE = {
  "@odoo/o-spreadsheet": "commonjs ./library/grid.cjs",
  "@resvg/resvg-wasm": "commonjs ./library/@resvg/resvg-wasm/index.js",
  geomagnetism: "commonjs geomagnetism",
  piscina: "commonjs piscina",
  "subset-font": "commonjs subset-font",
};

/** Part of what writes PDF. */
const COLOUR_PROFILE = { test: /\.icc$/, type: "asset/inline" };

/** At once, everywhere: a page's policy forbids the worker that would do it, and the order of a PDF's parts must be one. */
const PNG_AT_ONCE = new NormalModuleReplacementPlugin(/^fflate$/, (asked) => {
  if (/[\\/]png-js[\\/]/.test(asked.context)) asked.request = source("hosts/file/inflatedAtOnce.ts");
});

const node = (name, entry, output, more = {}) => ({
  ...common,
  name,
  target: "node20",
  entry: source(entry),
  output: { path: path.dirname(output), filename: path.basename(output) },
  externals: SEPARATE,
  // What finds installed files must go on doing so by itself.
  module: { rules: [types, COLOUR_PROFILE], parser: { javascript: { createRequire: false } } },
  node: { __dirname: false, __filename: false },
  ...more,
});

/** What a browser lacks, and what no file of ours holds: a page is fetched by a phone. */
const IN_BROWSERS = [
  new NormalModuleReplacementPlugin(/^node:zlib$/, source("hosts/file/zlibInBrowser.ts")),
  new NormalModuleReplacementPlugin(/\/chart-writer\.mjs$/, source("hosts/file/noChartWriter.ts")),
];

/** A script of the add-in's page, small: Excel loads it each time. */
const addIn = (name, entry, filename) => ({
  ...common,
  name,
  target: ["web", "es2020"],
  optimization: { minimize: true },
  entry: source(entry),
  output: { path: dist("addin"), filename },
  module: {
    rules: [types, { test: /\.css$/, type: "asset/resource", generator: { filename: "[name][ext]" } }],
  },
  plugins: IN_BROWSERS,
});

const bundles = [
  addIn("add-in functions", "hosts/excel/functions.ts", "functions.js"),
  addIn("add-in pane", "hosts/excel/taskpane.ts", "taskpane.js"),
  addIn("page for an office's address", "hosts/excel/addIn/addressScript.ts", "address.js"),
  {
    ...common,
    name: "desk page",
    target: "web",
    optimization: { minimize: true },
    entry: source("hosts/desk/page/main.ts"),
    // No file is loaded by it: it may stand in a page that is one file.
    output: { path: dist("desk"), filename: "desk.js", publicPath: "" },
    // Loaded by scripts of their own on the page, so that they stay separate and replaceable.
    externals: { "@odoo/o-spreadsheet": "o_spreadsheet", "@odoo/owl": "owl" },
    module: {
      rules: [types, { test: /\.css$/, type: "asset/resource", generator: { filename: "[name][ext]" } }],
    },
    plugins: IN_BROWSERS,
  },
  {
    ...common,
    name: "PDF in a page",
    target: ["web", "es2022"],
    optimization: { minimize: true },
    entry: source("pane/pdfScript.ts"),
    // A script of its own, for whoever prints: the page itself stays small.
    output: { path: dist("desk"), filename: "pdf.js", library: { type: "window", name: "rigsheetPdf" } },
    module: { rules: [types, COLOUR_PROFILE] },
    // Asked after by what copies tables of a font: a page has none.
    plugins: [
      ...IN_BROWSERS,
      PNG_AT_ONCE,
      new DefinePlugin({ "typeof Buffer": JSON.stringify("undefined") }),
    ],
  },
  {
    ...common,
    name: "offline worker",
    target: "webworker",
    optimization: { minimize: true },
    entry: source("hosts/desk/worker/offlineWorker.ts"),
    output: { path: dist("desk"), filename: "offlineWorker.js" },
    module: { rules: [types] },
  },
  node("generator", "build/generate.ts", dist("generate.js")),
  node("bench", "build/bench.ts", dist("bench.js")),
  node("review worker", "cli/reviewWorker.ts", dist("reviewWorker.js"), {
    output: { path: dist(), filename: "reviewWorker.js", library: { type: "commonjs2" } },
  }),
  node("calc worker", "cli/calcWorker.ts", dist("calcWorker.js"), {
    output: { path: dist(), filename: "calcWorker.js", library: { type: "commonjs2" } },
  }),
  node("command", "cli/main.ts", dist("rigsheet.js"), {
    output: { path: dist(), filename: "rigsheet.js", chunkFilename: "[name].js" },
    optimization: { minimize: false, splitChunks: false },
    plugins: [PNG_AT_ONCE, new BannerPlugin({ banner: "#!/usr/bin/env node", raw: true })],
  }),
  node("start of an executable", "cli/executable/main.ts", dist("executable.js")),
];

module.exports = bundles.filter(({ entry }) => fs.existsSync(entry));
