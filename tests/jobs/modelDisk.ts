/**
 * A disk in memory that keeps only what was synced: what a file calls "written"
 * and a folder "renamed" may or may not be there after the power goes, each by
 * itself and in any order. Every call can be made to fail, before or after it
 * did its work, or to be the last.
 */
import { constants } from "node:fs";
import type { StorageDisk } from "../../src/hosts/storage/diskStorage";

interface Inode {
  /** What is on the disk. */
  durable: Uint8Array;
  /** What a reader sees now. */
  now: Uint8Array;
  mode: number;
  /** From where to where bytes were dropped by a sync that failed: a reader sees them still, and no later sync brings them to the disk. */
  lost?: readonly [from: number, to: number];
}
const FOLDER = "folder";
type Entry = Inode | typeof FOLDER;
type Names = Map<string, Entry>;

/** A change of a folder that is not on the disk yet: a name that points to something now, or to nothing. */
interface Renaming {
  readonly changes: readonly (readonly [path: string, entry: Entry | undefined])[];
}

export const FAULTS = ["dies", "is full", "fails", "fails after its work", "writes half", "loses"] as const;
/** "loses" is a sync that fails and drops what it was to write, as Linux does; any other call just fails. */
export type Fault = (typeof FAULTS)[number];
export interface FaultAt {
  /** The number of the call, from 0. */
  readonly at: number;
  readonly kind: Fault;
}

/** The process is gone: nothing it does from here on reaches the disk. */
export class Dead extends Error {}

const failing = (code: string): NodeJS.ErrnoException => Object.assign(new Error(code), { code });
const folderOf = (path: string): string => path.slice(0, path.lastIndexOf("/")) || "/";
const nothing = new Uint8Array();

function apply(names: Names, path: string, entry: Entry | undefined): void {
  if (entry) names.set(path, entry);
  else names.delete(path);
}

const { O_APPEND, O_CREAT, O_EXCL, O_RDONLY, O_RDWR, O_TRUNC, O_WRONLY } = constants;
const FLAGS: Readonly<Record<string, number>> = {
  r: O_RDONLY,
  "r+": O_RDWR,
  w: O_WRONLY | O_CREAT | O_TRUNC,
  wx: O_WRONLY | O_CREAT | O_EXCL,
  a: O_WRONLY | O_CREAT | O_APPEND,
};
/** What a process takes away from the modes that it asks for, as is usual. */
const MASK = 0o022;

export class ModelDisk {
  /** What the disk would have if all pending renamings were lost. */
  private names: Names = new Map();
  private pending: Renaming[] = [];
  isDead = false;
  calls = 0;
  faults: readonly FaultAt[] = [];
  /** Modes with which files and folders were made. */
  readonly modes = new Set<number>();

  /** @param folder that is there, and stays */
  constructor(private readonly folder: string) {
    this.names.set(folder, FOLDER);
  }

  set fault(one: FaultAt | undefined) {
    this.faults = one ? [one] : [];
  }

  /** Names as the process sees them; worked out again once one has changed. */
  private get seen(): Names {
    if (this.seenLast) return this.seenLast;
    const seen = new Map(this.names);
    for (const { changes } of this.pending) for (const [path, entry] of changes) apply(seen, path, entry);
    return (this.seenLast = seen);
  }
  private seenLast: Names | undefined;

  private change(...changes: Renaming["changes"]): void {
    this.pending.push({ changes });
    this.seenLast = undefined;
  }

  /** The bytes of a file as they are seen now, and room to change them behind everyone's back. */
  file(path: string): Uint8Array | undefined {
    const there = this.seen.get(path);
    return there && there !== FOLDER ? there.now : undefined;
  }
  put(path: string, bytes: Uint8Array): void {
    this.names.set(path, { durable: bytes, now: bytes, mode: 0o600 });
    this.seenLast = undefined;
  }
  get paths(): string[] {
    return [...this.seen].flatMap(([path, entry]) => (entry === FOLDER ? [] : [path]));
  }

  /**
   * Every disk that can be found after the power has gone now; a sample where
   * there are too many.
   * @param random numbers from 0 to 1
   */
  *after(random: () => number, most = 40): Generator<ModelDisk> {
    const unsure = [...new Set([...this.seen.values(), ...this.names.values()])].filter(
      (entry): entry is Inode => entry !== FOLDER && entry.durable !== entry.now,
    );
    const ways = 2 ** this.pending.length * WAYS ** unsure.length;
    const all = ways <= most;
    for (let turn = 0; turn < (all ? ways : most); turn++) {
      let choice = all ? turn : Math.floor(random() * ways);
      const next = (of: number): number => {
        const chosen = choice % of;
        choice = Math.floor(choice / of);
        return chosen;
      };
      const disk = new ModelDisk(this.folder);
      const copies = new Map<Inode, Inode>();
      const copyOf = (entry: Entry): Entry => {
        if (entry === FOLDER) return entry;
        const known = copies.get(entry);
        if (known) return known;
        const durable = unsure.includes(entry) ? left(entry, next(WAYS), random) : entry.durable;
        const copy = { durable, now: durable, mode: entry.mode };
        copies.set(entry, copy);
        return copy;
      };
      for (const [path, entry] of this.names) disk.names.set(path, copyOf(entry));
      for (const { changes } of this.pending) {
        if (next(2) === 0) continue;
        for (const [path, entry] of changes) apply(disk.names, path, entry && copyOf(entry));
      }
      // With a folder's own name all in it is lost.
      for (const path of disk.names.keys())
        if (path !== this.folder && disk.names.get(folderOf(path)) !== FOLDER) disk.names.delete(path);
      yield disk;
    }
  }

  /** Whether a reader sees what is not on the disk and never will be. */
  get pretends(): boolean {
    return [...this.seen.values()].some(
      (entry) => entry !== FOLDER && entry.lost !== undefined && entry.now.length > entry.lost[0],
    );
  }

  /** Does the work of one call, unless it fails here. */
  private call<T>(
    work: () => T,
    instead: { readonly half?: () => void; readonly loses?: () => void } = {},
  ): T {
    if (this.isDead) throw new Dead();
    const now = this.calls++;
    const kind = this.faults.find(({ at }) => at === now)?.kind;
    switch (kind) {
      case undefined:
        return work();
      case "dies":
        this.isDead = true;
        throw new Dead();
      case "loses":
        instead.loses?.();
        throw failing("EIO");
      case "fails":
        throw failing("EIO");
      case "fails after its work":
        work();
        throw failing("EIO");
      default:
        if (kind === "writes half") instead.half?.();
        throw failing("ENOSPC");
    }
  }

  private inode(path: string): Inode {
    const there = this.seen.get(path);
    if (!there) throw failing("ENOENT");
    if (there === FOLDER) throw failing("EISDIR");
    return there;
  }

  private handle(entry: Entry, path: string, flags: number) {
    const access = flags & (O_RDONLY | O_WRONLY | O_RDWR);
    let position = 0;
    const file = (wanted: "read" | "write"): Inode => {
      if (entry === FOLDER) throw failing("EISDIR");
      if (access === (wanted === "read" ? O_WRONLY : O_RDONLY)) throw failing("EBADF");
      return entry;
    };
    const write = (bytes: Uint8Array): void => {
      const inode = file("write");
      const at = flags & O_APPEND ? inode.now.length : position;
      const all = new Uint8Array(Math.max(inode.now.length, at + bytes.length));
      all.set(inode.now);
      all.set(bytes, at);
      inode.now = all;
      position = at + bytes.length;
    };
    return {
      writeFile: async (bytes: Uint8Array) =>
        this.call(() => write(bytes), { half: () => write(bytes.subarray(0, bytes.length >> 1)) }),
      readFile: async () => this.call(() => file("read").now.slice()),
      sync: async () =>
        this.call(
          () => {
            if (entry === FOLDER) this.settle(path);
            else entry.durable = arrived(entry);
          },
          {
            loses: () => {
              if (entry !== FOLDER && entry.now !== entry.durable)
                entry.lost = [Math.min(entry.durable.length, entry.now.length), entry.now.length];
            },
          },
        ),
      truncate: async (length: number) =>
        this.call(() => {
          const inode = file("write");
          inode.now = inode.now.slice(0, length);
        }),
      stat: async () => this.call(() => this.facts(entry)),
      close: async () => this.call(() => undefined),
    };
  }

  private facts(entry: Entry) {
    const isFile = entry !== FOLDER;
    return {
      isFile: () => isFile,
      isDirectory: () => !isFile,
      mode: isFile ? entry.mode : 0o700,
      size: isFile ? entry.now.length : 0,
      nlink: [...this.seen.values()].filter((one) => one === entry).length,
      uid: 0,
      gid: 0,
    };
  }

  /** The names of a folder are on the disk. */
  private settle(folder: string): void {
    this.seenLast = undefined;
    this.pending = this.pending.flatMap(({ changes }) => {
      const here = changes.filter(([path]) => folderOf(path) === folder);
      for (const [path, entry] of here) apply(this.names, path, entry);
      const rest = changes.filter((change) => !here.includes(change));
      return rest.length > 0 ? [{ changes: rest }] : [];
    });
  }

  /** @throws where something can't be named so */
  private named(path: string): void {
    if (this.seen.get(folderOf(path)) !== FOLDER) throw failing("ENOENT");
  }

  readonly disk = {
    mkdir: async (path: string, { mode = 0o777 }: { mode?: number } = {}) =>
      this.call(() => {
        this.named(path);
        if (this.seen.has(path)) throw failing("EEXIST");
        this.modes.add(mode & ~MASK);
        this.change([path, FOLDER]);
      }),
    open: async (path: string, given: string | number, mode = 0o666) =>
      this.call(() => {
        const flags = typeof given === "number" ? given : FLAGS[given];
        if (flags === undefined) throw failing("EINVAL");
        const there = this.seen.get(path);
        if (there === FOLDER) {
          if (flags !== O_RDONLY) throw failing("EISDIR");
          return this.handle(there, path, flags);
        }
        if (there) {
          if (flags & O_CREAT && flags & O_EXCL) throw failing("EEXIST");
          if (flags & O_TRUNC) there.now = nothing;
          return this.handle(there, path, flags);
        }
        if (!(flags & O_CREAT)) throw failing("ENOENT");
        this.named(path);
        const inode: Inode = { durable: nothing, now: nothing, mode: mode & ~MASK };
        this.modes.add(inode.mode);
        this.change([path, inode]);
        return this.handle(inode, path, flags);
      }),
    readdir: async (folder: string) =>
      this.call(() =>
        [...this.seen]
          .filter(([path]) => path !== folder && folderOf(path) === folder)
          .map(([path, entry]) => ({
            name: path.slice(folder.length + 1),
            isFile: () => entry !== FOLDER,
            isDirectory: () => entry === FOLDER,
          })),
      ),
    link: async (from: string, to: string) =>
      this.call(() => {
        const inode = this.inode(from);
        this.named(to);
        if (this.seen.has(to)) throw failing("EEXIST");
        this.change([to, inode]);
      }),
    rename: async (from: string, to: string) =>
      this.call(() => {
        const inode = this.inode(from);
        this.named(to);
        this.change([to, inode], [from, undefined]);
      }),
    rm: async (path: string, { force = false }: { force?: boolean } = {}) =>
      this.call(() => {
        if (force && !this.seen.has(path)) return;
        this.inode(path);
        this.change([path, undefined]);
      }),
    stat: async (path: string) =>
      this.call(() => {
        const there = this.seen.get(path);
        if (!there) throw failing("ENOENT");
        return this.facts(there);
      }),
  } as unknown as StorageDisk;
}

/** What a sync brings to the disk. */
function arrived({ now, lost }: Inode): Uint8Array {
  return lost && now.length > lost[0] ? now.slice().fill(0, ...lost) : now;
}

/**
 * What can be left of a file that was not synced: what was, what is, the first
 * part of what came, its length without it, the first part with the rest empty,
 * and an empty hole with the rest behind it.
 */
const WAYS = 6;
function left({ durable, now }: Inode, way: number, random: () => number): Uint8Array {
  if (way === 0) return durable;
  if (way === 1) return now;
  const end = now.length;
  const from = Math.min(durable.length, end);
  const at = from + Math.floor(random() * (end - from));
  if (way === 2) return now.slice(0, at);
  return now.slice().fill(0, way === 4 ? at : from, way === 5 ? at : end);
}
