/**
 * Loads the spreadsheet library that stands beside this file, unmodified. It
 * asks for its view library by the package's name, which is found here by its
 * place instead: the packages of both bring tools and bindings of many times
 * their size, which nobody here needs.
 */
const { readFileSync } = require("node:fs");
const path = require("node:path");
const { compileFunction } = require("node:vm");

const file = path.join(__dirname, "@odoo", "o-spreadsheet", "dist", "o_spreadsheet.cjs");
const load = compileFunction(readFileSync(file, "utf8"), ["module", "exports", "require"], {
  filename: file,
});
const view = path.join(__dirname, "@odoo", "owl", "dist", "owl.cjs.js");
load(module, module.exports, (name) => require(name === "@odoo/owl" ? view : name));
