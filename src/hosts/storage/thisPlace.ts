import { createHash, randomUUID } from "node:crypto";
import { readFileSync, readlinkSync } from "node:fs";
import { networkInterfaces } from "node:os";

const NO_ADDRESS = "00:00:00:00:00:00";

/**
 * Names where this process's number counts: this machine since it was started,
 * or a container on it. The name of a host does not tell: two machines, or two
 * containers, may have the same. Where nothing tells them apart, no two are the
 * same place.
 */
export function thisPlace(): string {
  const facts = process.platform === "linux" ? ofLinux() : ofNetwork();
  return createHash("sha256")
    .update((facts.length > 0 ? facts : [randomUUID()]).join("\n"))
    .digest("hex")
    .slice(0, 32);
}

/** The number of this start, and the space of process numbers, which a container has of its own. */
function ofLinux(): string[] {
  try {
    return [
      readFileSync("/proc/sys/kernel/random/boot_id", "utf8").trim(),
      readlinkSync("/proc/self/ns/pid"),
    ];
  } catch {
    return [];
  }
}

function ofNetwork(): string[] {
  try {
    const all = Object.values(networkInterfaces()).flatMap((some) => some ?? []);
    const macs = all.filter(({ internal, mac }) => !internal && mac !== NO_ADDRESS).map(({ mac }) => mac);
    return [...new Set(macs)].sort();
  } catch {
    return [];
  }
}
