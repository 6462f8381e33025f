/** What the test's page runs: the pane over a fake host, or over none. */
import { mountPane } from "../../src/pane/mountPane";
import { RIGSHEET_VERSION } from "../../src/version";
import { fakeHost, type FakeHost, type FakeOptions } from "./fakeHost";

export interface PanePage {
  host?: FakeHost;
  open(options?: FakeOptions): void;
}

const page: PanePage = {
  open(options) {
    page.host = options && fakeHost(RIGSHEET_VERSION, options);
    mountPane(document.getElementById("pane")!, page.host);
  },
};
(globalThis as unknown as { panePage: PanePage }).panePage = page;
