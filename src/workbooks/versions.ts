/**
 * Every version of each template, with what changed: the one place where a
 * version is raised. `templates/versions.json` keeps what each looked like, so a
 * definition that changes after its version was released fails the tests until
 * a new line stands here.
 */
export interface TemplateVersion {
  readonly version: string;
  /** What a person meets in it that the one before had not, in a sentence. */
  readonly changes: string;
}

const FIRST: TemplateVersion = { version: "1", changes: "The first." };

export const VERSIONS = {
  "multi-room": [
    FIRST,
    {
      version: "2",
      changes:
        "Shared supplies, doubt in lengths and minutes, measured volts and a diagnosis; a discount with its reason on Terms; checks for blank, zero and unlikely amounts; a verdict for each outlet's own slope.",
    },
    {
      version: "3",
      changes:
        "The range of the total is taxed as what it comes from; one end of a range of minutes alone is no range; Commands says nothing of an outlet behind a device that Parts does not know.",
    },
    {
      version: "4",
      changes:
        "Plainer labels, hints and checks, one term for one thing on every sheet; the expected total and its uncertainty stand on Price and no longer on the customer's quote.",
    },
    {
      version: "5",
      changes:
        "The job as it is built, from the dish to each receiver: dishes and feeders, a row for each device, outlets that loop through, band plans with their frequencies; volts at each head unit with all receivers off, one on and all on, volts that stand on receivers, commands, carrier to noise and open ports are checked; labour by the route.",
    },
    {
      version: "6",
      changes:
        "Room types: what many outlets have in common stands once, a blank in their rows means it, and what a row has of its own is marked. Parts have an article number; a job can draw on the firm's standards, and tells which edition it took; the quote ends with the firm's letterhead. Classes of tax, options made of parts and hours, alternates with their totals, and currencies with other decimals. A crew with its days on site; travel, access hire, attendance and permits; difficulty of floors and rooms; doubts that all labour has in common. A cutting plan says which run comes off which reel, an order list what to buy from whom; parts may be sold in packs, spares are bought by share, runs are cut at their likely or longest length, and reels in stock are used first. Terms ends with what a proposal says besides: terms of payment, warranty, the firm's numbers, and which parts it has.",
    },
  ],
  "single-drop": [
    FIRST,
    {
      version: "2",
      changes: "Its checks stand on a sheet of their own; About and Checks as in the estimate.",
    },
    { version: "3", changes: "Plainer labels, hints and checks, in the terms of the estimate." },
  ],
  "alignment-card": [
    FIRST,
    { version: "2", changes: "It takes the readings themselves; About and Checks as in the estimate." },
    { version: "3", changes: "Plainer labels, hints and checks, in the terms of the estimate." },
  ],
  "quote-review": [
    FIRST,
    { version: "2", changes: "About and Checks as in the estimate." },
    {
      version: "3",
      changes:
        "Plainer labels, hints and checks, in the terms of the estimate; a question that does not arise is answered with “not applicable”. It is filled from an estimate or a typed list, names lines that stand twice, and says the corrected total with what it is made of; a discount may be greater than the options.",
    },
  ],
  standards: [FIRST],
} as const satisfies Readonly<Record<string, readonly TemplateVersion[]>>;

export type TemplateId = keyof typeof VERSIONS;

/** The version that a template has now. */
export const versionNow = (id: TemplateId): string => VERSIONS[id].at(-1)!.version;

/** @returns what has changed since that version of a template, in sentences; all of it for a version that is not known */
export function changesSince(id: string, version: string): string {
  const all: readonly TemplateVersion[] = Object.entries(VERSIONS).find(([name]) => name === id)?.[1] ?? [];
  return all
    .filter((one) => Number(one.version) > (Number(version) || 0) && one.version !== "1")
    .map(({ changes }) => changes)
    .join(" ");
}
