/** `rigsheet proposal`: the document that goes to the customer. */
import path from "node:path";
import { readXlsx } from "../hosts/file/readXlsx";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { readLogo } from "../hosts/file/readLogo";
import { FileTrouble } from "../hosts/file/fileTrouble";
import { formattedIn } from "../hosts/headless/formattedIn";
import { recalculate } from "../hosts/headless/recalculate";
import { PROPOSAL_PARTS, type ProposalPart } from "../proposal/chosenParts";
import type { PaperDocument } from "../proposal/document";
import { logoTooLarge, MOST_LOGO_BYTES, type LogoFile } from "../proposal/logo";
import type { ProposalWanted } from "../proposal/proposalOf";
import { proposalPictures } from "../proposal/proposalPictures";
import { sameRevision } from "../proposal/sameRevision";
import { writtenProposal, type WrittenDocument } from "../proposal/writtenProposal";
import { sheetDateOf } from "../workbooks/sheetDate";
import { shelfLineOf } from "../workbooks/shelfLine";
import { EXIT, UsageTrouble, type Console } from "./console";
import { outFile } from "./copyJob";
import { fileBytes, standardsIn } from "./newJob";
import { readOptions } from "./options";
import { plain } from "./plain";
import { linesOnShelf } from "./shelf";

const PROPOSAL_HELP = `rigsheet proposal JOB.xlsx --out FILE.pdf [--standards FIRM.xlsx] [--logo FILE]

Recalculates a multi-room estimate and writes the proposal for the customer:
letterhead, what is offered, the rooms, the price with its taxes, options to
tick, what is assumed and left out, terms of payment, warranty, cautions, and a
place to sign. Every figure is a cell's of the job, as the quote shows it; no
cost, margin, supplier or hour is in it. JOB.xlsx is left as it is.

  --out FILE.pdf         where to write
  --standards FIRM.xlsx  the firm's standards: what the job's own Terms does not
                         say of letterhead, payment, warranty and parts is theirs
  --logo FILE            a PNG or JPEG, of 2 MB and 4000 pixels a side at most
  --with PART            a part that Terms leaves out; may be repeated
  --without PART         leave a part out; may be repeated. Parts:
                         ${PROPOSAL_PARTS.slice(0, 5).join(", ")},
                         ${PROPOSAL_PARTS.slice(5).join(", ")}
  --paper a4             or letter; without it as Terms says, else a4
  --shelf FOLDER         look whether another workbook there has the same number
                         and revision
  --anyway               to be signed although checks fail; without it a proposal
                         of such a job is a draft, with no place to sign
  --force                replace FILE.pdf if it exists

  rigsheet proposal job.xlsx --out proposal.pdf
  rigsheet proposal job.xlsx --logo logo.png --without diagram --out proposal.pdf

Exit: 0 written; 1 written, but something is missing or needs a look, or the
price can't be relied on and nothing was written; 2 a file could not be used.`;

const PAPERS = ["a4", "letter"] as const;

/** Lays a document out on pages; `at`: when it is made. */
export type WriteDocument = (
  document: PaperDocument,
  paper: (typeof PAPERS)[number],
  at: Date,
) => Promise<WrittenDocument>;

/** @param now says whether a quote is over */
export async function proposalJob(
  words: readonly string[],
  console: Console,
  write: WriteDocument,
  now: () => Date = () => new Date(),
): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      out: { type: "string" },
      standards: { type: "string" },
      logo: { type: "string" },
      with: { type: "string", multiple: true },
      without: { type: "string", multiple: true },
      paper: { type: "string" },
      shelf: { type: "string" },
      anyway: { type: "boolean", default: false },
      force: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
    "proposal",
  );
  if (values.help) {
    console.out(PROPOSAL_HELP);
    return EXIT.ok;
  }
  const [job, more] = positionals;
  if (job === undefined || more !== undefined)
    throw new UsageTrouble("Name one workbook: rigsheet proposal job.xlsx --out proposal.pdf");
  const parts = {
    with: partsIn("--with", values.with),
    without: partsIn("--without", values.without),
  };
  const twice = parts.with.find((part) => parts.without.includes(part));
  if (twice !== undefined)
    throw new UsageTrouble(`"${twice}" is wanted with and without. Take one of the two away.`);
  const asked = paperIn(values.paper);
  const out = outFile(values.out, job, "pdf", values.force);
  const logo = values.logo === undefined ? undefined : await logoIn(values.logo);
  const firm = values.standards === undefined ? undefined : (await standardsIn(values.standards)).inputs;
  const stored = await readXlsx(await fileBytes(job));
  const book = recalculate(stored);
  const wanted: ProposalWanted = {
    formatted: formattedIn(book),
    ...(firm && { firm }),
    ...(logo && { logo }),
    parts,
    today: sheetDateOf(now()),
    pictures: proposalPictures,
    anyway: values.anyway,
  };
  const found = await writtenProposal(book, wanted, asked, (document, paper) =>
    write(document, paper, now()),
  );
  if (found.refused) {
    for (const line of found.refused) console.err(plain(line));
    return EXIT.look;
  }
  const elsewhere =
    values.shelf === undefined
      ? []
      : sameRevision(shelfLineOf(book), await linesOnShelf(values.shelf, console, path.resolve(job)));
  const { bytes, unset } = found.written;
  await saveAtomically(out, bytes);
  console.out(plain(`${out}: ${found.title}`));
  const look = [...found.look, ...elsewhere, ...(unset === "" ? [] : [unset])];
  for (const line of look) console.err(plain(line));
  return look.length > 0 ? EXIT.look : EXIT.ok;
}

function partsIn(option: string, words: readonly string[] = []): readonly ProposalPart[] {
  return words.map((word) => {
    const part = PROPOSAL_PARTS.find((one) => one === word.trim().toLowerCase());
    if (part) return part;
    throw new UsageTrouble(`${option} is "${word}"; the parts are: ${PROPOSAL_PARTS.join(", ")}.`);
  });
}

function paperIn(word: string | undefined): (typeof PAPERS)[number] | undefined {
  if (word === undefined) return undefined;
  const paper = PAPERS.find((one) => one === word.toLowerCase());
  if (!paper) throw new UsageTrouble(`--paper is "${word}"; it can be ${PAPERS.join(" or ")}.`);
  return paper;
}

/** @throws FileTrouble where it is no logo; a file that is too large is not read */
async function logoIn(file: string): Promise<LogoFile> {
  const logo = readLogo(await fileBytes(file, MOST_LOGO_BYTES, logoTooLarge));
  if (typeof logo === "string") throw new FileTrouble(`${file}: ${logo}`);
  return logo;
}
