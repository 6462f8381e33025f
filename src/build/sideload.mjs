/**
 * `npm run sideload`: prints how the add-in is loaded into Excel for trying it
 * out, and with `--certificate` makes the development certificate that Excel
 * needs to load pages from this computer.
 */
import { createRequire } from "node:module";
import path from "node:path";
import { build } from "./build.mjs";
import { project, stop } from "./install.mjs";

const DAYS = 30;
const USE = `npm run sideload                                the steps
npm run sideload -- --certificate [--days N]    makes the development certificate, for N days (${DAYS} where absent)`;

const manifest = path.join(project, "dist", "addin", "manifest.xml");
const STEPS = `How to load the add-in into Excel

First, on this computer:
  1. npm run sideload -- --certificate    once; your system asks whether to trust the certificate
  2. npm run serve:addin                  leave it running; it serves dist/addin at https://localhost:3000
  The manifest is ${manifest}

Excel on Windows
  3. Share the folder that holds the manifest (its Properties, Sharing) and note its network path.
  4. Excel: File, Options, Trust Center, Trust Center Settings, Trusted Add-in Catalogs. Add the network path,
     tick Show in Menu, and start Excel again.
  5. Home, Add-ins, More Add-ins (Advanced), Shared Folder: choose Rigsheet.

Excel on a Mac
  3. Copy the manifest into ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef (make the folder if it
     is missing), and start Excel again.
  4. Home, Add-ins: choose Rigsheet under the developer add-ins.

Excel on the web
  3. Open https://localhost:3000/taskpane.html once in the same browser and see that it shows without a warning.
  4. Open a workbook: Home, Add-ins, More Add-ins, My Add-ins, Upload My Add-in: choose the manifest.

For a whole firm
  rigsheet addin --address https://addins.example.com/rigsheet --out folder
  writes the folder to serve at that address, with the steps in its deploy.html.

Then try it by hand: manifest/README.md has the list. To take the add-in out again, remove the manifest from where
it was put and start Excel again.`;

const words = process.argv.slice(2);

if (words.length === 0) {
  await build();
  console.log(STEPS);
} else if (words[0] === "--certificate") {
  await certificate(words.slice(1));
} else {
  stop(`Not understood: ${words.join(" ")}\n\n${USE}`);
}

async function certificate(more) {
  if (more.length > 0 && (more[0] !== "--days" || more.length !== 2)) {
    stop(`Not understood: ${more.join(" ")}\n\n${USE}`);
  }
  const require = createRequire(import.meta.url);
  const { parseNumber } = require("office-addin-cli");
  const { ensureCertificatesAreInstalled } = require("office-addin-dev-certs");
  let days = DAYS;
  try {
    days = parseNumber(more[1]) ?? DAYS;
  } catch {
    days = NaN;
  }
  if (!Number.isInteger(days) || days < 1 || days > 3650) {
    stop(`--days ${more[1]} is no number of days. Give a whole number from 1 to 3650.`);
  }
  try {
    await ensureCertificatesAreInstalled(days);
  } catch (error) {
    stop(`The certificate could not be made or trusted. ${error.message}`);
  }
}
