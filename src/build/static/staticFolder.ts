/** The desk as a folder that any web server can hold: relative addresses only, and nothing to run there. */
import { createHash } from "node:crypto";
import { readdir, readFile } from "node:fs/promises";
import path from "node:path";
import { ICON_SVG, linkedHead, pageHtml } from "../../hosts/desk/pageHtml";
import { NOTICES_PAGE } from "../../hosts/desk/protocol";
import { LOADED_LATER } from "../../hosts/desk/server/assets";
import type { Release } from "../../hosts/desk/worker/release";
import { renderPng } from "../../hosts/headless/renderPng";
import { RIGSHEET_VERSION } from "../../version";
import { deskFiles, packed, type DeskFiles, type Files } from "./deskFiles";
import { FOLDER_README } from "./folderReadme";

/** What an office may put in the place of a library under the LGPL is known by no checksum. */
const REPLACEABLE = /\/library\/(?:o_spreadsheet|owl)\./;
/** Its font is asked for by the name that the worker knows, else a first visit fetches it twice. */
const ICONS = "library/css/font-awesome.css";
/** Licences of libraries as they came: they lie beside them, and no visit to the desk asks for them. */
const LICENCE_TEXT = /\.LICENSE\.txt$/;
/** Never asked for by a visit to the desk. */
const APART = /^(?:addin\/|readme\.txt$|sw\.js$)/i;
const ICON_SIZES = [192, 512] as const;
/** The renderer draws at twice the size that a drawing gives. */
const RENDERED_SCALE = 2;
const SHORT = 10;

/**
 * All addresses of the page are relative, so its own has to end in a stroke. A server that answers without it is asked
 * again; once, as another may take the stroke away each time.
 */
const WITH_STROKE = `try {
  if (!/(?:\\/|\\.html?|\\/index)$/.test(location.pathname) && !sessionStorage.getItem("rigsheet.stroke")) {
    sessionStorage.setItem("rigsheet.stroke", "asked");
    location.replace(location.pathname + "/" + location.search + location.hash);
  }
} catch {}`;

// As the server has it (see server/guard.ts for why); `frame-ancestors` counts in a header only.
const POLICY = [
  "default-src 'none'",
  `script-src 'self' 'unsafe-eval' 'sha256-${createHash("sha256").update(WITH_STROKE).digest("base64")}'`,
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

const STUCK =
  "If nothing follows, this server does not send Rigsheet's files as they are: it may send scripts as text, or another page in their place, or the address of this page lacks the stroke at its end. Tell whoever keeps it; once it is mended, reload with Ctrl+F5. Until then use rigsheet.html, the one file.";

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
const sha256 = (bytes: Uint8Array | string): string => createHash("sha256").update(bytes).digest("hex");

/**
 * @param dist where the build put everything
 * @param other what is in it, where that is not what was built
 */
export async function staticFolder(
  dist: string,
  other: { readonly files?: DeskFiles; readonly version?: string } = {},
): Promise<Files> {
  const { files: { page, help, parts } = await deskFiles(dist), version = RIGSHEET_VERSION } = other;
  const own: Files = new Map([...page].filter(([name]) => !name.startsWith("help/")));
  for (const [name, bytes] of parts) own.set(`${name}.pack`, bytes);
  // A page that is open goes on with its own parts when another release lies on the server.
  const folder = `desk-${hashOf(own).slice(0, SHORT)}`;
  const files: Files = new Map();
  own.set(ICONS, encode(new TextDecoder().decode(own.get(ICONS)).replace(/(\.woff2)\?v=[\d.]+/g, "$1")));
  for (const [name, bytes] of own) files.set(`${folder}/${name}`, readable(name, bytes));
  const script = await readFile(path.join(dist, "desk", "offlineWorker.js"), "utf8");
  files.delete(`${folder}/offlineWorker.js`);
  for (const [name, bytes] of help) files.set(`help/${name}`, readable(name, bytes));
  // Many small pages as one: a fraction of the bytes, and of the requests. Nobody without a network wants the notices.
  const kept = [...help].filter(([name]) => name !== NOTICES_PAGE);
  files.set(HELP_PACK, packed(encode(JSON.stringify(Object.fromEntries(kept.map(textOf))))));
  files.set("icon.svg", encode(ICON_SVG));
  for (const size of ICON_SIZES) files.set(`icon-${size}.png`, await icon(size));
  files.set("manifest.webmanifest", encode(WEB_MANIFEST));
  files.set("LICENSE.txt", await readFile(path.join(dist, "..", "LICENSE")));
  const edition = sha256(`${hashOf(files)} ${script} ${POLICY}`).slice(0, SHORT);
  files.set(
    "index.html",
    readable(
      "index.html",
      encode(
        pageHtml({
          attributes: { "data-stand": "folder", "data-edition": edition },
          head: [
            `<script>${WITH_STROKE}</script>`,
            `<meta http-equiv="Content-Security-Policy" content="${POLICY}" />`,
            `<link rel="manifest" href="manifest.webmanifest" />`,
            linkedHead(`${folder}/`, "icon.svg"),
          ].join("\n    "),
          ifStuck: STUCK,
        }),
      ),
    ),
  );
  const release: Release = {
    edition,
    version,
    files: Object.fromEntries(
      [...files]
        .filter(([name]) => isKept(name))
        .map(([name, bytes]) => [name, REPLACEABLE.test(name) ? null : sha256(bytes)] as const),
    ),
    packs: { [HELP_PACK]: "help/" },
    later: Object.fromEntries(
      [...files].filter(([name]) => isLater(name)).map(([name, bytes]) => [name, sha256(bytes)] as const),
    ),
  };
  files.set("sw.js", encode(`self.rigsheetRelease = ${JSON.stringify(release, null, 1)};\n${script}`));
  files.set("README.txt", encode(FOLDER_README));
  for (const [name, bytes] of await filesIn(path.join(dist, "addin"))) files.set(`addin/${name}`, bytes);
  return files;
}

/** What a first visit to the desk fetches, the worker's own fetching included. */
export const fetchedAtFirst = (files: Files): Files =>
  new Map([...files].filter(([name]) => !APART.test(name) && isKept(name)));

const HELP_PACK = "help/all.pack";
/** Fetched once the page has started, and for whoever prints. */
const isLater = (name: string): boolean => LOADED_LATER.some((one) => name.endsWith(`/${one}`));
/** By the worker, for when there is no network: of the help its one pack. */
const isKept = (name: string): boolean =>
  !LICENCE_TEXT.test(name) && !isLater(name) && (!name.startsWith("help/") || name === HELP_PACK);

const textOf = ([name, bytes]: [string, Uint8Array]): [string, string] => [
  name,
  new TextDecoder().decode(bytes),
];

const MARK = [0xef, 0xbb, 0xbf];
const MOST_ASCII = 127;

/**
 * A text that is read rightly whatever encoding a server names. A page stays within ASCII (with a mark in front it would
 * be no page where the server names no type: MIME Sniffing Standard, 7.1); the mark of UTF-8 in front of anything else
 * counts more than the server's word (Encoding Standard, 6, "decode"). A library
 * gets that mark only, without which a wrong encoding breaks its script; it is otherwise as its makers built it.
 */
function readable(name: string, bytes: Uint8Array): Uint8Array {
  if (bytes.every((byte) => byte <= MOST_ASCII)) return bytes;
  if (name.endsWith(".html"))
    return encode(
      [...new TextDecoder().decode(bytes)]
        .map((one) => (one.codePointAt(0)! > MOST_ASCII ? `&#${one.codePointAt(0)!};` : one))
        .join(""),
    );
  return /\.(?:js|css|txt)$/.test(name) ? Uint8Array.from([...MARK, ...bytes]) : bytes;
}

const hashOf = (files: Files): string =>
  sha256(JSON.stringify([...files].map(([name, bytes]) => [name, sha256(bytes)])));

async function icon(size: number): Promise<Uint8Array> {
  const side = size / RENDERED_SCALE;
  const svg = ICON_SVG.replace("<svg ", `<svg width="${side}" height="${side}" `);
  return renderPng({ svg, width: side, height: side });
}

const WEB_MANIFEST = `${JSON.stringify(
  {
    name: "Rigsheet",
    short_name: "Rigsheet",
    description: "Plans and prices multi-room single-cable satellite reception jobs",
    id: "./",
    start_url: "./",
    scope: "./",
    display: "standalone",
    background_color: "#ffffff",
    theme_color: "#2b3f55",
    icons: [
      ...ICON_SIZES.map((size) => ({ src: `icon-${size}.png`, sizes: `${size}x${size}`, type: "image/png" })),
      { src: "icon.svg", sizes: "any", type: "image/svg+xml" },
    ],
  },
  null,
  2,
)}\n`;

async function filesIn(folder: string, under = ""): Promise<Files> {
  const files: Files = new Map();
  for (const entry of (await readdir(path.join(folder, under), { withFileTypes: true })).sort((a, b) =>
    a.name < b.name ? -1 : 1,
  )) {
    const name = `${under}${entry.name}`;
    if (entry.isDirectory()) for (const one of await filesIn(folder, `${name}/`)) files.set(...one);
    else files.set(name, await readFile(path.join(folder, name)));
  }
  return files;
}
