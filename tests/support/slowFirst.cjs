/**
 * The order in which test files run. The runner's own goes by how long each took
 * the last time; a fresh clone does not know that, and one that takes minutes
 * must not be left for the end, when the other workers have nothing to do.
 */
const { default: TestSequencer } = require("@jest/test-sequencer");

/** From what takes longest, by what a file needs. */
const RANKS = ["browser", "built", "office", "engine", "pure"];

module.exports = class SlowFirst extends TestSequencer {
  sort(tests) {
    const sorted = super.sort(tests);
    if (sorted.every(({ duration }) => duration !== undefined)) return sorted;
    const rankOf = ({ context }) => RANKS.indexOf(context.config.displayName?.name);
    return [...sorted].sort((a, b) => rankOf(a) - rankOf(b));
  }
};
