/**
 * A disk in memory that keeps only what was synced: what a file calls "written"
 * and a folder "renamed" may or may not be there after the power goes, each by
 * itself and in any order. Every call can be made to fail, or to be the last.
 */
import type { StorageDisk } from "../../src/hosts/storage/diskStorage";

interface Inode {
  /** What is on the disk. */
  durable: Uint8Array;
  /** What a reader sees now. */
  now: Uint8Array;
  mode: number;
}

/** A change of a folder that is not on the disk yet: a name that points to an inode now, or to nothing. */
interface Renaming {
  readonly changes: readonly (readonly [path: string, inode: Inode | undefined])[];
}

export type Fault = "dies" | "is full" | "fails" | "writes half";

/** The process is gone: nothing it does from here on reaches the disk. */
export class Dead extends Error {}

const failing = (code: string): NodeJS.ErrnoException => Object.assign(new Error(code), { code });
const folderOf = (path: string): string => path.slice(0, path.lastIndexOf("/")) || "/";

function apply(names: Map<string, Inode>, path: string, inode: Inode | undefined): void {
  if (inode) names.set(path, inode);
  else names.delete(path);
}

export class ModelDisk {
  private readonly folders = new Set<string>();
  /** What the disk would have if all pending renamings were lost. */
  private names = new Map<string, Inode>();
  private pending: Renaming[] = [];
  private dead = false;
  calls = 0;
  fault: { readonly at: number; readonly kind: Fault } | undefined;

  constructor(...folders: readonly string[]) {
    for (const folder of folders) this.folders.add(folder);
  }

  /** Names as the process sees them. */
  private get seen(): Map<string, Inode> {
    const seen = new Map(this.names);
    for (const { changes } of this.pending) for (const [path, inode] of changes) apply(seen, path, inode);
    return seen;
  }

  /** The bytes of a file as they are seen now, and room to change them behind everyone's back. */
  file(path: string): Uint8Array | undefined {
    return this.seen.get(path)?.now;
  }
  put(path: string, bytes: Uint8Array): void {
    this.names.set(path, { durable: bytes, now: bytes, mode: 0o600 });
  }
  get paths(): string[] {
    return [...this.seen.keys()];
  }

  /**
   * Every disk that can be found after the power has gone now; a sample where
   * there are too many.
   * @param random numbers from 0 to 1
   */
  *after(random: () => number, most = 40): Generator<ModelDisk> {
    const files = [...new Set([...this.seen.values(), ...this.names.values()])].filter(
      ({ durable, now }) => durable !== now,
    );
    const ways = 2 ** this.pending.length * WAYS ** files.length;
    const all = ways <= most;
    for (let turn = 0; turn < (all ? ways : most); turn++) {
      let choice = all ? turn : Math.floor(random() * ways);
      const next = (of: number): number => {
        const chosen = choice % of;
        choice = Math.floor(choice / of);
        return chosen;
      };
      const disk = new ModelDisk(...this.folders);
      const copies = new Map<Inode, Inode>();
      const copyOf = (inode: Inode): Inode => {
        const known = copies.get(inode);
        if (known) return known;
        const durable = files.includes(inode) ? left(inode, next(WAYS), random) : inode.durable;
        const copy = { durable, now: durable, mode: inode.mode };
        copies.set(inode, copy);
        return copy;
      };
      for (const [path, inode] of this.names) disk.names.set(path, copyOf(inode));
      for (const { changes } of this.pending) {
        if (next(2) === 0) continue;
        for (const [path, inode] of changes) apply(disk.names, path, inode && copyOf(inode));
      }
      yield disk;
    }
  }

  /** Counts a call and lets it fail where it should. */
  private step(writes = false): Fault | undefined {
    if (this.dead) throw new Dead();
    const now = this.calls++;
    if (this.fault?.at !== now) return undefined;
    const { kind } = this.fault;
    if (kind === "dies") {
      this.dead = true;
      throw new Dead();
    }
    if (kind === "writes half" && writes) return kind;
    throw failing(kind === "fails" ? "EIO" : "ENOSPC");
  }

  private handle(inode: Inode | undefined, folder: string, append: boolean) {
    return {
      writeFile: async (bytes: Uint8Array) => {
        const half = this.step(true);
        const given = half ? bytes.subarray(0, bytes.length >> 1) : bytes;
        const kept = append ? inode!.now : new Uint8Array();
        const all = new Uint8Array(kept.length + given.length);
        all.set(kept);
        all.set(given, kept.length);
        inode!.now = all;
        if (half) throw failing("ENOSPC");
      },
      readFile: async () => {
        this.step();
        return inode!.now;
      },
      sync: async () => {
        this.step();
        if (inode) inode.durable = inode.now;
        else this.settle(folder);
      },
      chmod: async (mode: number) => {
        this.step();
        inode!.mode = mode;
      },
      stat: async () => ({ uid: 0, gid: 0 }),
      close: async () => this.step(),
    };
  }

  /** The names of a folder are on the disk. */
  private settle(folder: string): void {
    this.pending = this.pending.flatMap(({ changes }) => {
      const here = changes.filter(([path]) => folderOf(path) === folder);
      for (const [path, inode] of here) apply(this.names, path, inode);
      const rest = changes.filter((change) => !here.includes(change));
      return rest.length > 0 ? [{ changes: rest }] : [];
    });
  }

  readonly disk = {
    mkdir: async (path: string) => {
      this.step();
      if (this.folders.has(path)) throw failing("EEXIST");
      this.folders.add(path);
    },
    open: async (path: string, flags: string | number) => {
      this.step();
      if (this.folders.has(path)) return this.handle(undefined, path, false);
      const there = this.seen.get(path);
      if (flags === "wx") {
        if (there) throw failing("EEXIST");
        const inode: Inode = { durable: new Uint8Array(), now: new Uint8Array(), mode: 0o600 };
        this.pending.push({ changes: [[path, inode]] });
        return this.handle(inode, folderOf(path), false);
      }
      if (!there) throw failing("ENOENT");
      return this.handle(there, folderOf(path), typeof flags === "number");
    },
    readdir: async (folder: string) => {
      this.step();
      return [...this.seen.keys()]
        .filter((path) => folderOf(path) === folder)
        .map((path) => ({ name: path.slice(folder.length + 1), isFile: () => true }));
    },
    readlink: async () => {
      throw failing("EINVAL");
    },
    realpath: async (path: string) => path,
    rename: async (from: string, to: string) => {
      this.step();
      const there = this.seen.get(from);
      if (!there) throw failing("ENOENT");
      this.pending.push({
        changes: [
          [to, there],
          [from, undefined],
        ],
      });
    },
    rm: async (path: string) => {
      this.step();
      if (this.seen.has(path)) this.pending.push({ changes: [[path, undefined]] });
    },
    stat: async (path: string) => {
      this.step();
      const there = this.seen.get(path);
      if (!there && !this.folders.has(path)) throw failing("ENOENT");
      return {
        isFile: () => there !== undefined,
        isDirectory: () => !there,
        mode: 0o600,
        nlink: 1,
        uid: 0,
        gid: 0,
      };
    },
  } as unknown as StorageDisk;
}

/** What can be left of a file that was not synced: what was, what is, a part of what came, or its length without it. */
const WAYS = 4;
function left({ durable, now }: Inode, way: number, random: () => number): Uint8Array {
  if (way === 0) return durable;
  if (way === 1) return now;
  const at = durable.length + Math.floor(random() * Math.max(0, now.length - durable.length));
  if (way === 2) return now.slice(0, at);
  const hollow = now.slice();
  hollow.fill(0, Math.min(at, durable.length), now.length);
  return hollow;
}
