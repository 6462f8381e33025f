/** The one style sheet of the help: light and dark, narrow and wide, screen and paper. */
export const STYLE_SHEET = `/* Text holds 7:1 and links 4.5:1 against their grounds, in light and in dark. */
:root {
  color-scheme: light dark;
  --ink: #1f2933;
  --ground: #ffffff;
  --band: #eef1f4;
  --edge: #8a95a1;
  --link: #0b4f9e;
  --caution: #7a3e00;
}

@media (prefers-color-scheme: dark) {
  :root {
    --ink: #e6e9ec;
    --ground: #14191e;
    --band: #212931;
    --edge: #75818d;
    --link: #9cc8ff;
    --caution: #ffc98a;
  }
}

body {
  margin: 0 auto;
  max-width: 60rem;
  padding: 0 1rem 2rem;
  color: var(--ink);
  background: var(--ground);
  font: 1rem/1.6 system-ui, "Segoe UI", "Liberation Sans", Arial, sans-serif;
  overflow-wrap: break-word;
}

a {
  color: var(--link);
}

a:focus-visible,
input:focus-visible,
[tabindex]:focus-visible {
  outline: 3px solid var(--link);
  outline-offset: 2px;
}

main:focus {
  outline: none;
}

.skip {
  position: absolute;
  left: -100rem;
}

.skip:focus {
  position: static;
}

.menu,
.links {
  display: flex;
  flex-wrap: wrap;
  gap: 0.25rem 1.25rem;
  padding: 0;
  list-style: none;
}

.menu a,
.links a {
  display: inline-block;
  min-height: 1.75rem;
}

header {
  border-bottom: 1px solid var(--edge);
}

footer {
  margin-top: 3rem;
  border-top: 1px solid var(--edge);
}

h1,
h2,
h3 {
  line-height: 1.25;
}

h2 {
  margin-top: 2.25rem;
}

.lead {
  font-size: 1.125rem;
}

.caution {
  padding: 0.5rem 0.75rem;
  border-left: 4px solid var(--caution);
  background: var(--band);
}

code,
pre,
.equation,
.row {
  font-family: ui-monospace, "Liberation Mono", Consolas, monospace;
  font-size: 0.9375rem;
  overflow-wrap: anywhere;
}

pre {
  padding: 0.5rem 0.75rem;
  background: var(--band);
  overflow-x: auto;
}

.row {
  display: block;
}

.wide {
  overflow-x: auto;
}

figure {
  margin: 1rem 0;
}

figure svg {
  display: block;
  border: 1px solid var(--edge);
  color: #1f2933;
}

table {
  border-collapse: collapse;
}

th,
td {
  padding: 0.375rem 0.625rem;
  border: 1px solid var(--edge);
  text-align: left;
  vertical-align: top;
}

th {
  font-weight: 600;
}

thead th {
  background: var(--band);
}

tbody th {
  font-weight: 400;
}

td:has(code),
th:has(code) {
  min-width: 9rem;
}

dt {
  margin-top: 0.75rem;
}

dd {
  margin-left: 1.5rem;
}

label {
  display: block;
  font-weight: 600;
}

input {
  width: 100%;
  max-width: 30rem;
  min-height: 2.25rem;
  padding: 0.25rem 0.5rem;
  color: inherit;
  background: var(--ground);
  border: 1px solid var(--edge);
  border-radius: 3px;
  font: inherit;
  box-sizing: border-box;
}

[hidden] {
  display: none;
}

@media print {
  :root {
    --ink: #000000;
    --ground: #ffffff;
    --band: #f2f2f2;
    --edge: #666666;
    --link: #000000;
    --caution: #000000;
  }

  .menu,
  .skip,
  form {
    display: none;
  }

  body {
    max-width: none;
    font-size: 10pt;
  }

  h1,
  h2,
  h3 {
    break-after: avoid;
  }

  tr,
  .caution {
    break-inside: avoid;
  }

  .wide {
    overflow: visible;
  }
}
`;
