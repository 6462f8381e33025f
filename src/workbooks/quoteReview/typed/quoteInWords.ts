/** What was read of a typed quote and what was not, in sentences for whoever gave the list. */
import type { TypedQuote } from "./typedQuote";

const LONGEST = 100;
/** Beyond these, how many more. */
const MOST_TOLD = 20;

export interface QuoteTold {
  readonly read: string;
  /** Lines that were lost or that contradict the rest. */
  readonly look: readonly string[];
  /** Lines that hold no figure of a quote. */
  readonly words: readonly string[];
}

export function quoteInWords({ source, lines, figures, remarks }: TypedQuote): QuoteTold {
  const told = (kinds: readonly string[]): string[] => {
    const all = remarks
      .filter(({ kind }) => kinds.includes(kind))
      .map(
        ({ line, text, why }) =>
          `line ${line}, “${text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text}”: ${why}`,
      );
    const more = all.length - MOST_TOLD;
    return more > 0 ? [...all.slice(0, MOST_TOLD), `and ${more} more`] : all;
  };
  const options = lines.filter(({ optional }) => optional).length;
  const many = Object.keys(figures).length;
  return {
    read: `${counted(lines.length - options, "line")}${options > 0 ? ` and ${counted(options, "option")} beside them` : ""}, ${counted(many, "figure")} (${source})`,
    look: told(["unread", "off"]),
    words: told(["words"]),
  };
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;
