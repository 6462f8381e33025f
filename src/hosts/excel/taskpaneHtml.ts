/** The add-in's one page: Excel runs the functions, the ribbon's commands and the pane in it. */

/** Microsoft's own address; its terms ask that office.js comes from there and from nowhere else. */
export const OFFICE_ADDRESS = "https://appsforoffice.microsoft.com";
const OFFICE_JS = `${OFFICE_ADDRESS}/lib/1/hosted/office.js`;

/** Nothing is fetched but the add-in's files and office.js, which fetches its own parts from its own address. */
const POLICY = [
  "default-src 'none'",
  `script-src 'self' ${OFFICE_ADDRESS}`,
  "style-src 'self'",
  "img-src 'self' data:",
  `connect-src 'self' ${OFFICE_ADDRESS}`,
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

export const TASKPANE_HTML = `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta http-equiv="Content-Security-Policy" content="${POLICY}" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <title>Rigsheet</title>
    <link rel="icon" href="icons/icon-32.png" type="image/png" />
    <link rel="stylesheet" href="pane.css" />
    <link rel="stylesheet" href="taskpane.css" />
    <script src="${OFFICE_JS}"></script>
    <script src="functions.js" defer></script>
    <script src="taskpane.js" defer></script>
  </head>
  <body>
    <p id="notice" role="status"></p>
    <main id="pane"></main>
    <noscript>The pane needs JavaScript. Allow it for this address and reload.</noscript>
  </body>
</html>
`;
