/** A trainee's sheet of each set, for an invented name, and a page that lists them. */
import { writeJob } from "../../hosts/file/writeJob";
import { html } from "../../help/html";
import { trainingSets } from "../../training/sets/all";
import { traineeSheet } from "../../training/traineeSheet";
import type { Files } from "./deskFiles";

const TRAINEE = { name: "Dana Demonstration", occurrence: 1 };
const SEED = 2026;

export const TRAINING_LIST = "index.html";

/** No keys: whoever finds the folder finds them too. A trainer makes them, with numbers of their own, by the command. */
export async function trainingFiles(helpStyle: string): Promise<Files> {
  const files: Files = new Map();
  for (const set of trainingSets)
    files.set(`${set.id}.xlsx`, await writeJob(traineeSheet(set, SEED, TRAINEE)));
  const list = html`<!doctype html>
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>Rigsheet training sets</title>
        <link rel="stylesheet" href="${helpStyle}" />
      </head>
      <body>
        <main>
          <h1>Training sets</h1>
          <p>
            Demonstration sheets for an invented trainee: questions with worked examples beside them. Save
            one, open it on the desk, type the answers. Sheets with other numbers for each trainee, the key
            and the marks come from the command: rigsheet exercises, rigsheet mark.
          </p>
          <ul>
            ${trainingSets.map(({ id, title }) => html`<li><a href="${id}.xlsx" download>${title}</a></li> `)}
          </ul>
        </main>
      </body>
    </html> `.markup;
  files.set(TRAINING_LIST, new TextEncoder().encode(list));
  return files;
}
