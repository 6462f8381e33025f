/**
 * The grid library as a later version might come: each member that we stand on
 * is taken away in turn. What is said must name it; where figures depend on it,
 * nothing may be computed, and where they don't, they must be the same.
 */
import * as library from "@odoo/o-spreadsheet";
import {
  checkVersion,
  CONTRACT,
  requireMembers,
  requireMembersInside,
  TRIED_VERSION,
  troublesOf,
  type Part,
} from "../../../src/hosts/grid/gridContract";
import type { GridLibrary } from "../../../src/hosts/grid/library";
import { quietly } from "../../../src/hosts/headless/loadLibrary";

type Anything = Record<string, unknown>;
const parts = Object.keys(CONTRACT) as Part[];

/** The same object with one member away: a copy on the way, what is not on it stays the library's own. */
function without(from: unknown, path: string): unknown {
  const { head, key, rest } = /^(?:(?<head>[^.[\]]+)|\[(?<key>[^\]]+)\])\.?(?<rest>.*)$/.exec(path)!.groups!;
  const own = from as Anything & { get(name: string): unknown };
  const under = (next: unknown): unknown => (rest === "" ? undefined : without(next, rest!));
  return new Proxy(own, {
    get(target, name) {
      if (key !== undefined && name === "get")
        return (asked: string) => (asked === key ? under(target.get(asked)) : target.get(asked));
      if (name === head) return under(target[head!]);
      return Reflect.get(target, name) as unknown;
    },
  });
}

/** @returns the first model's plugin under a name of the registry, as the library makes it */
function made(path: string): Anything {
  const name = /\[([^\]]+)\]</.exec(path)![1]!;
  const { coreViewsPluginRegistry: plugins } = library.registries;
  const Own = plugins.get(name as never) as unknown as new (...args: unknown[]) => Anything;
  let one: Anything | undefined;
  class Kept extends Own {
    constructor(...args: unknown[]) {
      super(...args);
      one ??= this as Anything;
    }
  }
  plugins.replace(name as never, Kept as never);
  quietly(() => new library.Model());
  plugins.replace(name as never, Own as never);
  return one!;
}

const of = (part: Part): { needs: readonly string[]; without: string; isVital?: true } => CONTRACT[part];
const needs = parts.flatMap((part) => of(part).needs.map((path) => [part, path] as const));

test("nothing is missing in the library that is installed, and nothing is said of it", () => {
  expect((library.__info__ as { version: string }).version).toBe(TRIED_VERSION);
  checkVersion(library);
  for (const part of parts) {
    let used = 0;
    requireMembers(library, part, () => (used += 1));
    expect([part, used]).toEqual([part, 1]);
    const inside = of(part).needs.find((path) => path.includes("<"));
    if (inside) expect([part, requireMembersInside(library, part, made(inside))]).toEqual([part, true]);
  }
  expect(troublesOf(library)).toEqual([]);
});

test.each(needs)("%s without %s: a sentence, not a silence", (part, path) => {
  const name = `“${path.split(/[.<]/).at(-1)!}”`;
  let lacking = library as GridLibrary;
  let used = false;
  const attempt = (): void => {
    if (path.includes("<")) {
      used = requireMembersInside(lacking, part, without(made(path), path.split("<")[1]!) as object);
    } else {
      lacking = without(library, path) as GridLibrary;
      requireMembers(lacking, part, () => (used = true));
    }
  };
  if (of(part).isVital) {
    expect(attempt).toThrow(name);
    expect(attempt).toThrow(of(part).without);
  } else {
    // A library of its own each time: what is said is kept by the library.
    lacking = without(library, "nothing") as GridLibrary;
    attempt();
    expect(troublesOf(lacking)).toEqual([expect.stringContaining(name)]);
    expect(troublesOf(lacking)[0]).toContain(of(part).without);
  }
  expect(used).toBe(false);
});

test.each([["19.4.0"], [undefined]])("version %s: said, with the one that was tried", (version) => {
  const other = { ...library, __info__: { version } } as GridLibrary;
  checkVersion(other);
  checkVersion(other);
  expect(troublesOf(other)).toEqual([expect.stringContaining(`version ${version ?? "unknown"}`)]);
  expect(troublesOf(other)[0]).toContain(TRIED_VERSION);
});
