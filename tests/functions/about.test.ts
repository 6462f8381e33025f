import packageJson from "../../package.json";
import { call, describeGroup, sentence } from "../support/functionGroup";

describeGroup("About");

test("VERSION is the version of package.json", () => {
  expect(call("VERSION")).toBe(packageJson.version);
});

test("VERSION says where a blank cell comes as 0, which some builds of Excel do", () => {
  expect(call("VERSION", [[null]])).toBe(packageJson.version);
  expect(call("VERSION", [[""]])).toBe(packageJson.version);
  expect(call("VERSION", 0)).toBe(`${packageJson.version}, blanks read as 0`);
  expect(call("VERSION", [[0]])).toBe(`${packageJson.version}, blanks read as 0`);
});

test("VERSION takes nothing but a blank cell", () => {
  expect(sentence(call("VERSION", 1))).toMatch(/^blank is 1; it must be/);
  expect(sentence(call("VERSION", "x"))).toContain("blank");
  expect(sentence(call("VERSION", 0, 1))).toContain("it takes 1 at the most");
});
