/** Text in lines: of letters that are each ten points wide. */
import { lines } from "../../../src/hosts/pdf/lines";

const set = (text: string, room: number): string[] => lines(text, room, (line) => 10 * line.length);

test.each([
  ["a text that fits", "one two", 70, ["one two"]],
  ["one letter too wide", "one two", 69, ["one", "two"]],
  ["its own line breaks", "one\n\ntwo", 100, ["one", "", "two"]],
  ["a word longer than a line", "abcdefg h", 30, ["abc", "def", "g h"]],
  ["blanks that move the first word in", "  a b", 40, ["  a", "b"]],
  ["no room for a letter", "abc", 5, ["a", "b", "c"]],
  ["nothing", "", 50, [""]],
])("%s", (_, text, room, wanted) => expect(set(text, room)).toEqual(wanted));
