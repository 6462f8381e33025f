/**
 * `npm test`: installs what is missing, builds and beside that checks types and
 * style, then runs every test that this machine can run. Words after it go to
 * the test runner: `npm test -- tests/engine`.
 */
import { build } from "./build.mjs";
import { install } from "./install.mjs";
import { writeFunctionList } from "./list-functions.mjs";
import { fetchOfficeJs } from "./officeJs/fetchOfficeJs.mjs";
import { checks, test } from "./testSteps.mjs";
import { fetchValidator } from "./validator/fetchValidator.mjs";

const words = process.argv.slice(2);

install();
fetchValidator();
fetchOfficeJs();
// All of them read it.
writeFunctionList();
const [steps] = await Promise.all([words.length > 0 ? [true] : checks(), build()]);
process.exitCode = [...steps, test(...words)].every(Boolean) ? 0 : 1;
