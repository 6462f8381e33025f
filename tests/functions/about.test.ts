import packageJson from "../../package.json";
import { call, describeGroup, sentence } from "../support/functionGroup";

describeGroup("About");

test("VERSION is the version of package.json", () => {
  expect(call("VERSION")).toBe(packageJson.version);
});

test("VERSION takes no argument", () => {
  expect(sentence(call("VERSION", 1))).toContain("it takes 0 at the most");
});
