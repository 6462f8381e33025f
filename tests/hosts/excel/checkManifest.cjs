/**
 * Has office-addin-manifest read a manifest and, where it is JSON, hold it to
 * its schema. The library fetches the schema; here the copy that comes with it
 * stands in for the network. For XML it asks a service, so that is left to
 * xmllint.
 */
const fs = require("fs");
const path = require("path");
const { OfficeAddinManifest, validateManifest } = require("office-addin-manifest");

const schemas = path.join(path.dirname(require.resolve("@microsoft/app-manifest")), "json-schemas", "teams");
globalThis.fetch = async (url) => {
  const found = /\/json-schemas\/teams\/(v[\d.]+)\/(\w+\.schema\.json)$/.exec(String(url));
  if (!found) throw new Error(`not a schema: ${url}`);
  return new globalThis.Response(fs.readFileSync(path.join(schemas, found[1], found[2])));
};

async function main(file) {
  const info = await OfficeAddinManifest.readManifestFile(file);
  const json = file.endsWith(".json") ? await validateManifest(file) : undefined;
  const errors = JSON.stringify(json?.report?.errors ?? []);
  process.stdout.write(JSON.stringify({ valid: json?.isValid, errors, info }));
}

void main(process.argv[2]);
