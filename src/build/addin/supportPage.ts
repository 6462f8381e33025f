/** The page behind the manifests' links for support, privacy and terms. */
import { OFFICE_ADDRESS } from "../../hosts/excel/taskpaneHtml";
import { RIGSHEET_VERSION } from "../../hosts/excel/addIn/facts";

export const SUPPORT_HTML = `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <title>Rigsheet: support, privacy, terms</title>
    <link rel="stylesheet" href="help/help.css" />
  </head>
  <body>
    <main>
      <h1>Rigsheet ${RIGSHEET_VERSION}: support, privacy, terms</h1>
      <h2>Support</h2>
      <p>Ask whoever serves this add-in at your firm: the address of this page says where it comes from. The <a href="help/index.html">help</a> has every function with its units, limits, sources and errors.</p>
      <h2>Privacy</h2>
      <p>The add-in sends nothing anywhere. Formulas, workbooks and settings stay in Excel and in its browser on your computer. The only thing fetched from elsewhere is Excel's own programming interface, from ${OFFICE_ADDRESS}; what that does is Microsoft's matter.</p>
      <h2>Terms</h2>
      <p>MIT licence, without warranty. It predicts and flags; it certifies nothing. The local code and licensed practice decide.</p>
    </main>
  </body>
</html>
`;
