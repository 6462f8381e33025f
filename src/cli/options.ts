import { parseArgs, type ParseArgsConfig } from "node:util";
import { UsageTrouble } from "./console";

/** Reads a command's words; an unknown or unfinished option becomes a sentence. */
export function readOptions<const T extends NonNullable<ParseArgsConfig["options"]>>(
  words: readonly string[],
  options: T,
  command: string,
) {
  try {
    return parseArgs({ args: [...words], options, allowPositionals: true, strict: true });
  } catch (error) {
    const detail = error instanceof Error ? error.message.split(". ")[0] : String(error);
    throw new UsageTrouble(`${detail}. See: rigsheet ${command} --help`);
  }
}
