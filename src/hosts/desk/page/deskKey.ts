/** The key that the page brings with all that it asks: from the address at first, then from the browser's store for this address. */
import { ALIVE, DESK_HEADER, KEY, ONCE, PAGE_NAME } from "../protocol";

const STORED = "rigsheet.key";
let key = "";

export const deskKey = (): string => key;

/** Takes the key in, and out of the address: it would stand in the browser's history, and on a shared screen. */
export async function takeKey(): Promise<void> {
  const words = new URLSearchParams(location.search);
  const once = words.get(ONCE);
  const given = once === null ? words.get(KEY) : await exchanged(once);
  if (words.has(ONCE) || words.has(KEY)) history.replaceState(null, "", location.pathname + location.hash);
  key = given ?? stored();
  if (given) keep(given);
}

/** @returns null where the word was used before */
async function exchanged(once: string): Promise<string | null> {
  const answer = await fetch(`/${ONCE}`, {
    method: "POST",
    body: JSON.stringify(once),
    headers: { [DESK_HEADER]: "1" },
  });
  return answer.ok ? ((await answer.json()) as string) : null;
}

function stored(): string {
  try {
    return localStorage.getItem(STORED) ?? "";
  } catch {
    return "";
  }
}

/** Without a store the address is needed again after a reload. */
function keep(given: string): void {
  try {
    localStorage.setItem(STORED, given);
  } catch {
    // The desk says so when the page is loaded again.
  }
}

/** Whether it is the desk with this page's key that answers: it proves it without either saying the key. */
export async function isOurs(): Promise<boolean> {
  const asked = crypto.randomUUID();
  const answer = await fetch(`/${ALIVE}?${PAGE_NAME}&ask=${asked}`);
  const bytes = new TextEncoder();
  const hmac = await crypto.subtle.importKey(
    "raw",
    bytes.encode(key),
    { name: "HMAC", hash: "SHA-256" },
    false,
    ["sign"],
  );
  const proof = new Uint8Array(await crypto.subtle.sign("HMAC", hmac, bytes.encode(`${PAGE_NAME} ${asked}`)));
  const expected = [...proof].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return answer.ok && (await answer.text()) === expected;
}
