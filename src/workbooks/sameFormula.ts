/** Whether two formulas are the same but for how programs write them: blanks and case outside quotes, TRUE() for TRUE. */
export const sameFormula = (one: string, other: string): boolean => plain(one) === plain(other);

const plain = (formula: string): string =>
  formula.replace(/"(?:[^"]|"")*"|[^"]+/g, (part) =>
    part.startsWith('"')
      ? part
      : part
          .replace(/\s+/g, "")
          .toUpperCase()
          .replace(/\b(TRUE|FALSE)\(\)/g, "$1"),
  );
