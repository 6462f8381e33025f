import { html, type Html } from "../../../help/html";
import { RIGSHEET_VERSION } from "./facts";

interface FolderPage {
  readonly title: string;
  readonly body: Html;
  /** Nothing else may run on the page. */
  readonly script?: string;
}

/** A page of the add-in's folder that is read in a browser, not in Excel; looks as the help does. */
export function folderPage({ title, body, script }: FolderPage): string {
  const policy = [
    "default-src 'none'",
    "style-src 'self'",
    "img-src 'self'",
    ...(script ? ["script-src 'self'"] : []),
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
  return html`<!doctype html>
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta http-equiv="Content-Security-Policy" content="${policy}" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>${title}: Rigsheet</title>
        <link rel="icon" href="icons/icon-32.png" type="image/png" />
        <link rel="stylesheet" href="help/help.css" />
        ${script && html`<script src="${script}" defer></script>`}
      </head>
      <body>
        <main>
          <h1>${title}</h1>
          ${body}
        </main>
        <footer><p>Rigsheet ${RIGSHEET_VERSION}</p></footer>
      </body>
    </html> `.markup;
}
