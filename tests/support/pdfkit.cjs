/**
 * What writes PDF, in its build for pages as in our bundles (webpack.config.js),
 * by which a PDF comes out the same everywhere. The spreadsheet library leaves a
 * `document` behind in Node, by which that build would take itself for a page's.
 */
const path = require("node:path");

const { document } = globalThis;
delete globalThis.document;
module.exports = require(path.join(__dirname, "../../node_modules/pdfkit/js/pdfkit.browser.js"));
if (document !== undefined) globalThis.document = document;
