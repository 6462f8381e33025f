import type { Finding } from "../finding";
import { missingLines } from "../missingLines";
import type { Rule } from "../rule";

export const removedChecks: Rule = {
  id: "check deleted",
  reason: "A check that is gone cannot fail, and the head of every sheet says that all pass.",
  example: "The line that counts outlets with too little level is gone from Checks.",
  find: ({ read, definition, earlier }) =>
    definition && !earlier
      ? missingLines(read, definition, (part) =>
          part.kind === "checks" ? part.checks.map(({ what }) => what) : [],
        ).map(({ place, line }): Finding => ({
          weight: "wrong",
          place,
          message: "A check of the template is gone or changed.",
          expected: line,
          effect: "What it looked for is no longer found.",
          remedy: "Write it there again, or copy the sheet Checks from the template.",
        }))
      : [],
};
