/** A storage that ends with the page: for a browser that keeps nothing for it. */
import { joined } from "../../jobs/joined";
import { WrittenElsewhere, type Storage } from "../../jobs/storage";

export class MemoryStorage implements Storage {
  private readonly things = new Map<string, Uint8Array>();

  async list(): Promise<string[]> {
    return [...this.things.keys()];
  }

  async read(name: string): Promise<Uint8Array | undefined> {
    return this.things.get(name);
  }

  async size(name: string): Promise<number | undefined> {
    return this.things.get(name)?.length;
  }

  async create(name: string, bytes: Uint8Array): Promise<void> {
    if (this.things.has(name)) throw new WrittenElsewhere(`There is a ${name} already.`);
    this.things.set(name, bytes);
  }

  async append(name: string, bytes: Uint8Array): Promise<void> {
    const before = this.things.get(name);
    if (!before) throw new Error(`There is no ${name} to add to.`);
    this.things.set(name, joined([before, bytes]));
  }

  async moveAside(name: string, to: string): Promise<void> {
    const thing = this.things.get(name);
    if (!thing) return;
    this.things.set(to, thing);
    this.things.delete(name);
  }

  async drop(name: string): Promise<void> {
    this.things.delete(name);
  }

  async writesOfOthers(): Promise<number> {
    return 0;
  }
}
