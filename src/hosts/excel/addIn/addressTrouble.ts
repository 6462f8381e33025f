import { EXAMPLE_ADDRESS } from "./facts";

/** What web servers, browsers and Excel all write in the same way. */
const PLAIN_PATH = /^(?:\/[\w.~-]+)*$/;

/** @returns the sentence for an address that can't serve an add-in, or nothing */
export function addressTrouble(address: string): string | undefined {
  const refused = (why: string): string =>
    `The address is “${address}”; ${why}. Give the one that the folder is served from, such as ${EXAMPLE_ADDRESS}.`;
  let url: URL;
  try {
    url = new URL(address);
  } catch {
    return refused("that is no address");
  }
  if (url.protocol !== "https:")
    return refused("Excel loads add-ins over https only, from localhost too, with a certificate it trusts");
  if (/[?#@]/.test(address)) return refused("it must hold no question mark, number sign or user's name");
  if (address.endsWith("/")) return refused("it must end without a slash");
  if (/\.html?$/i.test(address)) return refused("that is a page, and the manifests need its folder");
  const path = address.replace(/^https:\/*[^/]*/i, "");
  if (!PLAIN_PATH.test(path)) return refused("its folders may hold letters a to z, digits, and . - _ ~ only");
  if (url.origin + path !== address || url.pathname !== (path || "/"))
    return refused(`browsers write that as “${url.href.replace(/\/$/, "")}”`);
  return undefined;
}
