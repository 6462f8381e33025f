import type { Storage } from "./storage";

/**
 * @param mustOwn throws where another program has the jobs now
 * @returns the same storage, which asks before each write
 */
export function guarded(storage: Storage, mustOwn: () => void): Storage {
  const asked =
    <Words extends unknown[]>(write: (...words: Words) => Promise<void>) =>
    async (...words: Words): Promise<void> => {
      mustOwn();
      await write(...words);
      // It may have been taken over while this program stood still.
      mustOwn();
    };
  return {
    list: () => storage.list(),
    read: (name) => storage.read(name),
    size: (name) => storage.size(name),
    create: asked((name: string, bytes: Uint8Array) => storage.create(name, bytes)),
    append: asked((name: string, bytes: Uint8Array) => storage.append(name, bytes)),
    moveAside: asked((name: string, to: string) => storage.moveAside(name, to)),
    drop: asked((name: string) => storage.drop(name)),
  };
}
