/** The desk as one HTML file that asks for nothing: opened from a disk, a stick, a mail. */
import { ICON_SVG, pageHtml, SCRIPTS, STYLES } from "../../hosts/desk/pageHtml";
import { LOADED_LATER } from "../../hosts/desk/server/assets";
import { deskFiles, packed, type Files } from "./deskFiles";

const POLICY = [
  "default-src 'none'",
  // Every script stands in the file; the grid library compiles its templates with `new Function`.
  "script-src 'unsafe-inline' 'unsafe-eval'",
  "style-src 'unsafe-inline'",
  "img-src data: blob:",
  "font-src data:",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

const STUCK =
  "If nothing follows, this file is not whole, or no script runs where it was opened: save it to a disk and open it from there in a browser.";

const LINE = 100_000;

/** @param dist where the build put everything */
export async function oneFile(dist: string): Promise<Uint8Array> {
  const { page, help, parts } = await deskFiles(dist);
  const text = (name: string): string => new TextDecoder().decode(page.get(name)!);
  const inside: Files = new Map(parts);
  inside.set("library/o_spreadsheet.xml", packed(page.get("library/o_spreadsheet.xml")!));
  for (const name of LOADED_LATER) inside.set(name, packed(page.get(name)!));
  const pages = Object.fromEntries([...help].map(([name, bytes]) => [name, new TextDecoder().decode(bytes)]));
  inside.set("help", packed(new TextEncoder().encode(JSON.stringify(pages))));
  const icon = `data:image/svg+xml;base64,${Buffer.from(ICON_SVG).toString("base64")}`;
  const font = Buffer.from(page.get("library/fonts/fontawesome-webfont.woff2")!).toString("base64");
  const styles = STYLES.map((file) => {
    const css = text(file);
    const whole =
      file === "library/css/font-awesome.css"
        ? css
            .replace(/src:url\([^}]*?(?=;font-weight)/, "")
            .replace(
              "@font-face{font-family:'FontAwesome';",
              () =>
                `@font-face{font-family:'FontAwesome';src:url(data:font/woff2;base64,${font}) format('woff2')`,
            )
        : css;
    return `<style data-file="${file}">\n${fit(whole, "style", file)}\n</style>`;
  });
  return new TextEncoder().encode(
    pageHtml({
      attributes: { "data-stand": "file" },
      head: [
        `<meta http-equiv="Content-Security-Policy" content="${POLICY}" />`,
        `<link rel="icon" href="${icon}" type="image/svg+xml" />`,
        ...styles,
      ].join("\n    "),
      foot: [
        ...[...inside].map(
          ([name, bytes]) =>
            `<script type="application/octet-stream" id="part:${name}">\n${inLines(Buffer.from(bytes).toString("base64"))}\n</script>`,
        ),
        // Each library is an element of its own, unmodified: another version can take its place.
        ...SCRIPTS.map(
          (file) => `<script data-file="${file}">\n${fit(text(file), "script", file)}\n</script>`,
        ),
        "",
      ].join("\n"),
      ifStuck: STUCK,
    }),
  );
}

/**
 * Of the page's own script what would end its element is written otherwise: it stands in texts only.
 *
 * @throws for a library in which such a thing stands: it is not changed
 */
function fit(text: string, element: "script" | "style", file: string): string {
  const own = file === "desk.js" ? text.replace(/<(?=\/?script)/gi, "\\x3c") : text;
  // A comment of HTML alone does no harm there (HTML Standard, 13.2.5.15 to 13.2.5.31).
  if (new RegExp(`</?${element}`, "i").test(own)) throw new Error(`${file} can't stand in a page as it is.`);
  return own;
}

/** A shorter last line is matched too: looked for in vain, from each place anew, it took two minutes. */
const inLines = (base64: string): string => (base64.match(new RegExp(`.{1,${LINE}}`, "g")) ?? []).join("\n");
