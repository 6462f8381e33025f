/**
 * The steps from the folder to Excel, in plain words. What is said of Excel is
 * Microsoft's documentation (office-js-docs-pr: publish, add-in-manifests,
 * unified-manifest-overview, configure-your-add-in-to-use-a-shared-runtime,
 * referencing-the-javascript-api), unless the page calls it expected.
 */
import type { Html } from "../../../help/html";
import { html } from "../../../help/html";
import { OFFICE_ADDRESS } from "../taskpaneHtml";
import { addresses } from "./facts";
import { folderPage } from "./folderPage";
import { serverSnippets } from "./serverSnippets";

/** Lines that stand as they are: nothing may indent them. */
const lines = (text: string): Html => html`<pre>${text}</pre>`;

/** @param address where the add-in is served, without a slash at its end */
export function deployPage(address: string): string {
  const at = addresses(address);
  const { nginx, apache, iis } = serverSnippets(address);
  return folderPage({
    title: "Serve the add-in to your office",
    body: html`<p class="lead">
        The steps are written for <code>${address}</code>. At another address,
        <a href="index.html">get manifests for it</a> first, and put it in the snippets below.
      </p>
      <p class="caution">
        Nobody has run Rigsheet in Excel yet. Try it with one person before you give it to all: in the pane,
        under Start, “Try this Excel” says what that Excel does. The snippets for nginx (1.22) and Apache
        (2.4) were run; the one for IIS follows its manual.
      </p>

      <h2>1. Put this folder on a web server</h2>
      <ul>
        <li>
          Any server of plain files will do; nothing runs on it. Everything in this folder must be found below
          <code>${address}/</code>.
        </li>
        <li>
          It must be <strong>https</strong>, with a certificate that every computer of the office trusts.
          Excel shows a blank pane or an error where a browser would warn.
        </li>
        <li>
          Excel fetches <code>functions.json</code> itself, on the web from a page of Microsoft's. So the
          server must send <code>Access-Control-Allow-Origin: *</code>. The files hold nothing secret.
        </li>
        <li>
          Each file needs its type, <code>application/json</code> and <code>text/javascript</code> among them.
        </li>
        <li>
          Pictures must not be sent with <code>Cache-Control: no-store</code> or <code>no-cache</code>: Office
          may then show no icons.
        </li>
        <li>
          Excel on the web shows the pane in a frame. Send no <code>X-Frame-Options</code> and no
          <code>frame-ancestors</code> for this folder. No sign-in page may stand before it.
        </li>
      </ul>
      <h3>nginx</h3>
      ${lines(nginx)}
      <h3>Apache</h3>
      <p>It needs its modules ssl, alias, mime, dir and headers.</p>
      ${lines(apache)}
      <h3>IIS</h3>
      <p>Save this as <code>web.config</code> in this folder; bind the site to https in IIS Manager.</p>
      ${lines(iis)}
      <h3>See whether it works</h3>
      <p>
        Open <a href="taskpane.html">taskpane.html</a>, <a href="support.html">support.html</a> and
        <a href="help/index.html">the help</a> at the server's address, in a browser on somebody's computer:
        no warning may appear. Then look at what the server sends with the functions:
      </p>
      ${lines(`curl -sI ${at.metadata}`)}
      <p>
        It must answer 200, <code>Content-Type: application/json</code> and
        <code>Access-Control-Allow-Origin: *</code>.
      </p>

      <h2>2. Give the manifest to Excel</h2>
      <h3>For the office: the Microsoft 365 admin center</h3>
      <ol>
        <li>Sign in as an administrator: Settings, Integrated apps, Upload custom apps.</li>
        <li>
          Choose Office Add-in and give <a href="manifest.xml">manifest.xml</a>, as a file or by its link. It
          serves Excel on Windows, on the Mac and on the web.
        </li>
        <li>Choose who gets it: first yourself, later everybody.</li>
        <li>It may take a day to appear under Home, Add-ins. Starting Excel again helps.</li>
      </ol>
      <p>Government clouds have Centralized Deployment in place of Integrated apps.</p>
      <p>
        <a href="manifest.json">manifest.json</a> says the same in the newer form, for Excel on the web,
        Microsoft 365 on Windows from version 2501 and on the Mac from 16.103, not for versions that are
        bought once. Where the admin center asks for that form, give it a zip file with manifest.json and, in
        a folder icons, color.png and outline.png. Never give both: two add-ins would claim the same
        functions.
      </p>
      <h3>To try it on one Windows computer: a network share</h3>
      <ol>
        <li>Put manifest.xml, nothing else, into a shared folder.</li>
        <li>
          In Excel: File, Options, Trust Center, Trust Center Settings, Trusted Add-in Catalogs. Add the
          folder's network path, tick Show in Menu, start Excel again.
        </li>
        <li>Home, Add-ins, More Add-ins, Shared Folder: choose Rigsheet.</li>
      </ol>
      <p>
        Microsoft supports this for trying only. It works on Windows only, and changed buttons appear only
        after the add-in was taken out and put in again.
      </p>
      <h3>Not from SharePoint's app catalog</h3>
      <p>
        It passes over the part of the manifest that brings ribbon buttons and functions: the pane would open,
        and every <code>=RIG.</code> formula would stand at <code>#NAME?</code>. It does not serve the Mac
        either.
      </p>
      <h3>Which Excel</h3>
      <p>
        Excel on the web, and Microsoft 365 on Windows and the Mac. Bought versions: 2024, and 2021 as far as
        its build has functions of add-ins. Not 2019, not 2016, not on an iPad.
      </p>

      <h2>What needs the internet</h2>
      <p>
        One thing: Excel's own programming interface, office.js, which the pane loads from
        <code>${OFFICE_ADDRESS}</code>. Microsoft's terms ask that it comes from there; it fetches further
        parts of itself from that address. Let the office's firewall pass it. Clouds for governments and China
        have another address, for which this folder is not made. Everything else comes from your server, and
        the add-in sends nothing anywhere: of office.js the page refuses the hidden frame of Microsoft's own
        measuring (telemetryservice.firstpartyapps.oaspapps.com), which shows as a line in the browser's
        console.
      </p>

      <h2>What Excel shows without a network</h2>
      <p>Microsoft does not document it. To be expected:</p>
      <ul>
        <li>The pane stays blank or says that the add-in could not be started.</li>
        <li>
          Formulas with <code>RIG.</code> show the values of the last save until something recalculates, then
          <code>#NAME?</code>. What was typed in is safe. Back on the network, open the pane and choose Check,
          Repair formulas.
        </li>
        <li>Where Excel still has the files of an earlier visit, it may work for a while.</li>
      </ul>
      <p>
        Who works without a network uses the desk, a page in the browser that opens the same workbooks, or a
        copy without add-in, which recalculates in any Excel (Hand over, Copies in the pane).
      </p>

      <h2>A new version</h2>
      <p>
        Put the new folder in place of this one at the same address. Excel keeps functions.json and
        functions.js for up to a day. Where the new manifest has another version, give it to the admin center
        too (Update).
      </p>`,
  });
}
