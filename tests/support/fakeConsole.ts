import type { Console } from "../../src/cli/console";
import { run } from "../../src/cli/run";

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command in this process, with what it would have printed. */
export async function runCommand(words: readonly string[], input = ""): Promise<Ran> {
  const out: string[] = [];
  const err: string[] = [];
  const console: Console = {
    out: (line) => void out.push(line),
    err: (line) => void err.push(line),
    readInput: async () => input,
  };
  const code = await run(words, console);
  return { code, out: out.join("\n"), err: err.join("\n") };
}
