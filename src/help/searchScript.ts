/**
 * The index page's script. A string, because it is served as a file beside the
 * pages: without it the page is whole, only the search box stays hidden.
 */
export const SEARCH_SCRIPT = `"use strict";
const form = document.getElementById("search");
const words = document.getElementById("words");
const found = document.getElementById("found");
const entries = [...document.querySelectorAll(".tasks li, .entry")];
const heads = [...document.querySelectorAll("h3")];

function show() {
  const wanted = words.value.toLowerCase().split(/\\s+/).filter(Boolean);
  let count = 0;
  for (const entry of entries) {
    const text = entry.textContent.toLowerCase();
    entry.hidden = !wanted.every((word) => text.includes(word));
    if (!entry.hidden) count += 1;
  }
  for (const head of heads) {
    const list = head.nextElementSibling;
    head.hidden = list.matches(".tasks") && [...list.children].every((entry) => entry.hidden);
  }
  found.textContent = wanted.length > 0 ? count + " of " + entries.length + " tasks and functions" : "";
}

form.hidden = false;
form.addEventListener("submit", (event) => event.preventDefault());
words.addEventListener("input", show);
show();
`;
