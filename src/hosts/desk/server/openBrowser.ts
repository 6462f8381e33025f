import { spawn } from "node:child_process";

/** Opens the address in the usual browser; where that can't be done the printed address is enough. */
export function openBrowser(address: string): void {
  const [command, ...args] =
    process.platform === "darwin"
      ? ["open", address]
      : process.platform === "win32"
        ? ["cmd", "/c", "start", "", address]
        : ["xdg-open", address];
  const child = spawn(command!, args, { stdio: "ignore", detached: true });
  child.on("error", () => undefined);
  child.unref();
}
