import { inputsIn } from "../inputsIn";
import type { Finding } from "../finding";
import { deceives, hasOtherBlanks, seenAs } from "../lookAlike";
import type { Rule } from "../rule";

export const looksAlike: Rule = {
  id: "text that looks like another",
  reason: "A letter of another alphabet or a character that nobody sees makes a name another name.",
  example: "A cable named trunk with a Cyrillic k is no cable of Parts.",
  find: ({ read, definition }) => {
    const inputs = inputsIn(read, definition);
    const names = new Set(
      inputs
        .filter(({ namesRows }) => namesRows)
        .flatMap(({ cells }) => cells.flatMap(({ value }) => (typeof value === "string" ? [value] : []))),
    );
    return inputs.flatMap(({ label, input, namesRows, cells }) =>
      cells.flatMap(({ place, value, typed }): Finding[] => {
        if (!typed || typeof value !== "string") return [];
        const strange = deceives(value);
        const isName = namesRows || input.rule.kind === "named" || input.rule.kind === "choice";
        // In a sentence another blank is a matter of setting.
        const blank =
          isName && hasOtherBlanks(value) ? "a blank of another kind (a no-break space)" : undefined;
        const what = strange ?? blank;
        if (what === undefined) return [];
        const meant = seenAs(value).trim();
        const known = names.has(meant) && meant !== value;
        return [
          {
            weight: isName ? (known && !namesRows ? "wrong" : "doubtful") : "worth knowing",
            place,
            message: `${label} “${value}” holds ${what}.`,
            expected: `“${meant}”${known ? ", as it stands on its list" : ""}.`,
            ...(isName && { meant }),
            effect: known
              ? namesRows
                ? "Two entries look alike and are two: which one counts hangs on the keyboard."
                : "It looks like it and is another name: it is not found on its list (Parts, Site)."
              : "It is not found again under what it looks like.",
            remedy: "Type it again by hand.",
          },
        ];
      }),
    );
  },
};
