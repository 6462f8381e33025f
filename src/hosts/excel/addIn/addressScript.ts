/** Runs on the folder's first page; the manifests are made by the code that the command makes them with. */
import { addressTrouble } from "./addressTrouble";
import { PARTS } from "./addressParts";
import { EXAMPLE_ADDRESS } from "./facts";
import { jsonManifest } from "./jsonManifest";
import { xmlManifest } from "./xmlManifest";

const part = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T;
const address = part<HTMLInputElement>(PARTS.address);

/** Given out so far: a browser keeps what an address of its own names until it is told. */
let given: string[] = [];

function link(name: string, text: string): HTMLLIElement {
  const url = URL.createObjectURL(new Blob([text], { type: "application/octet-stream" }));
  given.push(url);
  const anchor = document.createElement("a");
  anchor.href = url;
  anchor.download = anchor.textContent = name;
  const item = document.createElement("li");
  item.append(anchor);
  return item;
}

function make(): void {
  const wanted = address.value.trim();
  const trouble = addressTrouble(wanted);
  for (const url of given) URL.revokeObjectURL(url);
  given = [];
  part(PARTS.trouble).textContent = trouble ?? "";
  part(PARTS.made).hidden = trouble !== undefined;
  if (trouble !== undefined) return address.focus();
  const functions = JSON.parse(part(PARTS.functions).textContent) as string;
  part(PARTS.files).replaceChildren(
    link("manifest.xml", xmlManifest(wanted)),
    link("manifest.json", jsonManifest(wanted)),
    link("functions.json", functions.replaceAll(EXAMPLE_ADDRESS, wanted)),
  );
}

// Served already, the page knows the address.
if (location.protocol === "https:") address.value = new URL(".", location.href).href.replace(/\/$/, "");
part(PARTS.form).addEventListener("submit", (event) => {
  event.preventDefault();
  make();
});
