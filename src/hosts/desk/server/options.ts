/** The options of `rigsheet desk` and `npm start`. */
import { homedir } from "node:os";
import path from "node:path";

export interface DeskOptions {
  readonly open: boolean;
  /** Absent: the usual port, or one of the next few when it is taken. */
  readonly port?: number;
  /** Folder of the autosaved job; absent: the user's own ({@link usualDataFolder}). */
  readonly data?: string;
  /** A workbook to open, into which Save writes back. */
  readonly file?: string;
  readonly help: boolean;
}

export const USUAL_PORT = 8377;

export const HELP = `rigsheet desk [options] [job.xlsx]
npm start -- [options] [job.xlsx]      the same, in a clone

Serves the local workbook on the loopback address and opens it in the browser.
With a file, opens that file, and Save writes back into it.

  --no-open     do not open a browser
  --port N      listen on port N (usually ${USUAL_PORT}, or one of the next few when it is taken)
  --data DIR    keep the autosaved job in DIR (usually a folder of the user's own;
                in a clone .rigsheet in the project's folder)
  --help        this text

Exit: 0 stopped by you; 1 the desk could not be started; 2 wrong words.`;

/** Where programs of this system keep what is the user's. */
export function usualDataFolder(platform = process.platform, env = process.env, home = homedir()): string {
  if (platform === "win32")
    return path.join(env.LOCALAPPDATA ?? path.join(home, "AppData", "Local"), "Rigsheet");
  if (platform === "darwin") return path.join(home, "Library", "Application Support", "Rigsheet");
  return path.join(env.XDG_DATA_HOME || path.join(home, ".local", "share"), "rigsheet");
}

/** @returns the options, or a sentence that says what is wrong with them */
export function readOptions(args: readonly string[]): DeskOptions | string {
  const options: { -readonly [K in keyof DeskOptions]: DeskOptions[K] } = { open: true, help: false };
  const rest = [...args];
  for (let arg = rest.shift(); arg !== undefined; arg = rest.shift()) {
    const [name, joined] = arg.startsWith("--") && arg.includes("=") ? splitOnce(arg) : [arg, undefined];
    const value = (): string | undefined => joined ?? rest.shift();
    switch (name) {
      case "--no-open":
        options.open = false;
        break;
      case "--help":
        options.help = true;
        break;
      case "--port": {
        const text = value();
        const port = Number(text);
        if (!text || !Number.isInteger(port) || port < 1 || port > 65_535) {
          return `--port is ${text ? `"${text}"` : "not followed by a number"}; give a whole number from 1 to 65535.`;
        }
        options.port = port;
        break;
      }
      case "--data": {
        const folder = value();
        if (!folder) return "--data is not followed by a folder; give one, for example --data jobs.";
        options.data = folder;
        break;
      }
      default:
        if (arg.startsWith("-")) return `There is no option ${arg}. See: rigsheet desk --help`;
        if (options.file) return `Two files are given, ${options.file} and ${arg}; give one.`;
        options.file = arg;
    }
  }
  return options;
}

function splitOnce(arg: string): [string, string] {
  const at = arg.indexOf("=");
  return [arg.slice(0, at), arg.slice(at + 1)];
}
