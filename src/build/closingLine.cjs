/** The last line of a run of tests. */
module.exports.closingLine = ({ passed, failed, skipped }) =>
  `${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ""}`;
