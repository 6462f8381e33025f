import type { BookValidation } from "../book";
import type { InputRule } from "../definition";

const TEXTS: ReadonlySet<string> = new Set(["text", "named", "choice"]);

/**
 * Whether what is typed under a rule is a name or a word, and stays text by whatever road it comes.
 * A slot is not among them: our functions take one as a number of degrees east too, and older workbooks hold such.
 */
export const holdsText = ({ kind }: InputRule["rule"] | BookValidation["rule"]): boolean => TEXTS.has(kind);
