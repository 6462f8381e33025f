/** The one page. Its scripts are files: the policy forbids inline ones. */
export const PAGE_HTML = `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <title>Rigsheet</title>
    <link rel="icon" href="/icon.svg" type="image/svg+xml" />
    <link rel="stylesheet" href="/library/bootstrap.css" />
    <link rel="stylesheet" href="/library/css/font-awesome.css" />
    <link rel="stylesheet" href="/library/o_spreadsheet.css" />
    <link rel="stylesheet" href="/pane.css" />
    <link rel="stylesheet" href="/desk.css" />
    <script src="/library/owl.js" defer></script>
    <script src="/library/chart.js" defer></script>
    <script src="/library/o_spreadsheet.js" defer></script>
    <script src="/desk.js" defer></script>
  </head>
  <body>
    <header id="bar" class="desk-bar"></header>
    <div id="strip" class="desk-strip" role="status" hidden></div>
    <div id="line" class="desk-line"></div>
    <div class="desk-area">
      <main id="grid" class="desk-grid" aria-label="Workbook"></main>
      <aside id="reviews" class="desk-beside" aria-label="Review" hidden></aside>
      <section id="jobs" class="desk-jobs" aria-label="Jobs" hidden></section>
      <aside id="pane" class="desk-pane" aria-label="Pane" hidden></aside>
    </div>
    <noscript>The local workbook needs JavaScript. Allow it for this address and reload.</noscript>
  </body>
</html>
`;

export const ICON_SVG = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16"><rect width="16" height="16" rx="2" fill="#2b3f55"/><path d="M3 5h10M3 8h10M3 11h10M7 3v10" stroke="#fff" stroke-width="1"/></svg>
`;
