/** Held against the checklist of someone who had read neither source nor tests; its rules are in its README. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { apartmentBlock } from "../../src/workbooks/multiRoom/apartmentBlock";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { hostel } from "../../src/workbooks/multiRoom/hostel";
import { computedJob, madeOf, wordsIn } from "../support/proposals";

interface Check {
  readonly id: string;
  readonly mustContain?: readonly string[];
  readonly mustNotContain?: readonly string[];
  readonly anyOf?: true;
  readonly when?: string;
  readonly weak?: true;
}

const checklist = JSON.parse(
  readFileSync(path.join(__dirname, "../fixtures/proposals/checklist.json"), "utf8"),
) as Readonly<Record<string, readonly Check[]>>;

const JOBS = {
  "multi-room-demonstration": guestHouse,
  "multi-room-hostel": hostel,
  "multi-room-apartment-block": apartmentBlock,
};
/** The parts that the checks are asked with: all. */
const WANTED = ["sky", "names"];

const plain = (text: string): string =>
  text
    .normalize("NFC")
    .replace(/[\u00ad\u200b\u200e\u200f\u2066-\u2069\ufeff]/g, "")
    .replace(/\u2019/g, "'")
    .replace(/\s+/g, " ");

function stands(wanted: string, text: string, isAnyCase: boolean): boolean {
  const words = plain(wanted);
  const isWord = (sign: string | undefined): boolean => /[\p{L}\p{N}]/u.test(sign ?? "");
  const before = isWord(words[0]) ? "(?<![0-9A-Za-z])(?<!\\d[.,])" : "";
  const behind = isWord(words.at(-1)) ? "(?![0-9A-Za-z])(?![.,]\\d)" : "";
  const escaped = words.replace(/[.*+?^${}()|[\]\\/-]/g, "\\$&");
  return new RegExp(`${before}${escaped}${behind}`, isAnyCase ? "i" : "").test(text);
}

function findings({ id, mustContain = [], mustNotContain = [], anyOf }: Check, text: string): string[] {
  const lacking = mustContain.filter((one) => !stands(one, text, false));
  return [
    ...(anyOf && lacking.length < mustContain.length ? [] : lacking.map((one) => `${id} lacks ${one}`)),
    ...mustNotContain
      .filter((one) => (id === "unrounded" ? text.includes(plain(one)) : stands(one, text, true)))
      .map((one) => `${id} has ${one}`),
  ];
}

const asked = (name: string): readonly Check[] =>
  checklist[name]!.filter(({ when }) => !when || WANTED.some((one) => when.includes(one)));

test.each(Object.entries(JOBS))("%s", (name, job) => {
  const { document } = madeOf(computedJob(job));
  const text = plain(wordsIn(document).join("\n"));
  expect(asked(name).length).toBeGreaterThan(55);
  expect(asked(name).flatMap((check) => findings(check, text))).toEqual([]);
  // Of an empty page nearly all is wanting, and what must not be would be found.
  expect(asked(name).flatMap((check) => findings(check, "")).length).toBeGreaterThan(60);
  const internal = asked(name).flatMap(({ mustNotContain = [] }) => mustNotContain);
  const spilt = plain(internal.join("\n"));
  expect(internal.length).toBeGreaterThan(60);
  expect(asked(name).flatMap((check) => findings({ ...check, mustContain: [] }, spilt)).length).toBe(
    internal.length,
  );
});
