/** The help inside the one file: a link into it is shown here, since there is no page that it could lead to. */
import { SCRIPT_FILE, STYLE_FILE } from "../../../help/frame";
import { make } from "./dom";
import { inside } from "./pageParts";

const FOLDER = "help/";
/** How a page of the help names another one of it, with a place in it or without. */
const PAGE = /^([\w.-]+\.(?:html|txt))?(#.*)?$/;

type Pages = Readonly<Record<string, string>>;
let pages: Promise<Pages> | undefined;

/** From here on links into the help are followed here. @param trouble is told what can't be shown */
export function showHelpHere(trouble: (error: unknown) => void): void {
  document.addEventListener("click", (event) => {
    const link = (event.target as Element | null)?.closest?.("a");
    const address = link?.getAttribute("href");
    if (!address?.startsWith(FOLDER)) return;
    event.preventDefault();
    void open(address.slice(FOLDER.length)).catch(trouble);
  });
}

async function open(address: string): Promise<void> {
  pages ??= inside("help").then((bytes) => JSON.parse(new TextDecoder().decode(bytes)) as Pages);
  const all = await pages;
  const frame = make("iframe", { className: "desk-help-page", title: "Help" });
  const dialog = make(
    "dialog",
    { className: "desk-dialog desk-help" },
    frame,
    make(
      "div",
      { className: "desk-dialog-buttons" },
      make(
        "button",
        { type: "button", className: "desk-button", onclick: () => dialog.close() },
        "Close the help",
      ),
    ),
  );
  dialog.ariaLabel = "Help";
  dialog.addEventListener("close", () => dialog.remove());
  const show = (to: string): void => {
    const [, page = "", place = ""] = PAGE.exec(to) ?? [];
    const text = all[page];
    if (text === undefined) return;
    frame.onload = () => {
      const inner = frame.contentDocument!;
      inner.getElementById(decodeURIComponent(place.slice(1)))?.scrollIntoView();
      inner.addEventListener("keydown", ({ key }) => {
        if (key === "Escape") dialog.close();
      });
      inner.addEventListener("click", (event) => {
        const next = (event.target as Element | null)?.closest?.("a")?.getAttribute("href");
        if (next === null || next === undefined || !PAGE.test(next)) return;
        event.preventDefault();
        if (next.startsWith("#")) inner.getElementById(decodeURIComponent(next.slice(1)))?.scrollIntoView();
        else show(next);
      });
    };
    frame.srcdoc = page.endsWith(".txt") ? plain(text) : whole(text, all);
  };
  show(address);
  document.body.append(dialog);
  dialog.showModal();
}

/** With what stands beside it in a folder put into it. */
const whole = (page: string, all: Pages): string =>
  page
    .replace(/<link rel="stylesheet"[^>]*>/, () => `<style>${all[STYLE_FILE]}</style>`)
    .replace(/<script src="[^>]*><\/script>/, () => `<script type="module">${all[SCRIPT_FILE]}</script>`);

function plain(text: string): string {
  const pre = make("pre", {}, text);
  return `<style>pre { white-space: pre-wrap; }</style>${pre.outerHTML}`;
}
