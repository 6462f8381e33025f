/**
 * `npm run serve:addin`: serves dist/addin over https on this computer, with
 * the development certificate that `npm run sideload -- --certificate` makes.
 */
import { existsSync, readFileSync, statSync } from "node:fs";
import { createServer } from "node:https";
import { createRequire } from "node:module";
import path from "node:path";
import { build } from "./build.mjs";
import { project, stop } from "./install.mjs";

const HOST = "localhost";
const PORT = 3000;
const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".xml": "text/xml; charset=utf-8",
  ".txt": "text/plain; charset=utf-8",
  ".png": "image/png",
  ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};

await build();
const folder = path.join(project, "dist", "addin");
const server = createServer(certificate(), answer);
server.on("error", (error) =>
  stop(
    error.code === "EADDRINUSE"
      ? `Port ${PORT} is in use, and the manifest names it. End the other program that serves there, then run this again.`
      : `The add-in can't be served (${error.message}).`,
  ),
);
server.listen(PORT, HOST, () => {
  console.log(`The add-in is at https://${HOST}:${PORT}/taskpane.html. Ctrl+C ends it.`);
});

function certificate() {
  const { localhostCertificatePath, localhostKeyPath } = createRequire(import.meta.url)(
    "office-addin-dev-certs/lib/defaults",
  );
  if (!existsSync(localhostCertificatePath) || !existsSync(localhostKeyPath)) {
    stop(
      "There is no development certificate, and Excel loads nothing without one. Run npm run sideload -- --certificate, then this again.",
    );
  }
  return { cert: readFileSync(localhostCertificatePath), key: readFileSync(localhostKeyPath) };
}

/** Only files of the folder, and only to look at. */
function answer(request, response) {
  const file = fileOf(request.url);
  const type = file && TYPES[path.extname(file)];
  if ((request.method !== "GET" && request.method !== "HEAD") || !type) {
    response.writeHead(404, { "content-type": TYPES[".txt"] });
    response.end("There is no such file in the add-in.\n");
    return;
  }
  response.writeHead(200, {
    "content-type": type,
    "cache-control": "no-cache",
    "x-content-type-options": "nosniff",
    // Excel on the web reads the functions' metadata from its own page.
    "access-control-allow-origin": "*",
  });
  response.end(request.method === "HEAD" ? undefined : readFileSync(file));
}

function fileOf(url) {
  try {
    const { pathname } = new URL(url, "https://localhost");
    const file = path.join(folder, decodeURIComponent(pathname));
    const inside = file.startsWith(folder + path.sep);
    return inside && statSync(file, { throwIfNoEntry: false })?.isFile() ? file : undefined;
  } catch {
    return undefined;
  }
}
