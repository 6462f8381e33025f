/** The folder's first page: an office enters its address and gets its manifests, without the command. */
import { Html, html } from "../../../help/html";
import { PARTS } from "./addressParts";
import { EXAMPLE_ADDRESS } from "./facts";
import { folderPage } from "./folderPage";
import { functionsJson } from "./functionsJson";

/** Built from `addressScript.ts`. */
export const ADDRESS_SCRIPT = "address.js";

/** In the page, because a page that was opened from a disk may read no file beside it. */
const functions = new Html(JSON.stringify(functionsJson(EXAMPLE_ADDRESS)).replace(/</g, "\\u003c"));

export const ADDRESS_PAGE = folderPage({
  title: "The add-in at your address",
  script: ADDRESS_SCRIPT,
  body: html`<p class="lead">
      This folder is the Rigsheet add-in for Excel. Excel finds it by a manifest that holds the address of the
      web server it lies on.
    </p>
    <form id="${PARTS.form}">
      <label for="${PARTS.address}">Address of this folder on your web server</label>
      <input
        id="${PARTS.address}"
        type="text"
        inputmode="url"
        autocomplete="off"
        spellcheck="false"
        placeholder="${EXAMPLE_ADDRESS}"
        aria-describedby="${PARTS.trouble}"
      />
      <p><button>Make the manifests</button></p>
    </form>
    <p id="${PARTS.trouble}" role="alert"></p>
    <section id="${PARTS.made}" hidden>
      <h2>Save these</h2>
      <ul id="${PARTS.files}"></ul>
      <p>
        Put all three into this folder on the server, in place of those that are there: the help links in
        functions.json hold the address too.
      </p>
    </section>
    <noscript>
      <p class="caution">
        This page needs JavaScript. Or write the folder by the command: rigsheet addin --help.
      </p>
    </noscript>
    <p>Nothing is sent or fetched: the files are made on this page.</p>
    <h2>Then</h2>
    <p><a href="deploy.html">How the folder is served, and how Excel gets the manifest</a>.</p>
    <script id="${PARTS.functions}" type="application/json">
      ${functions}
    </script>`,
});
