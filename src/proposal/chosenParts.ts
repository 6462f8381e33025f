/** Which parts a proposal has: as the job says, else the firm, else as usual. */
import { proposal } from "../workbooks/multiRoom/names/proposal";
import type { NamedField } from "../workbooks/names";

interface Part {
  readonly usual: boolean;
  /** Where Terms says whether it stands on the proposal; without it, it stands where there is something in it. */
  readonly field?: NamedField;
}

/** What may be left out. What the price is, what it assumes and leaves out, and the cautions always stand. */
const PARTS = {
  offer: { usual: true, field: proposal.offer },
  schedule: { usual: true, field: proposal.schedule },
  diagram: { usual: false, field: proposal.diagram },
  sky: { usual: false, field: proposal.sky },
  lines: { usual: true, field: proposal.lines },
  options: { usual: true },
  payment: { usual: true },
  warranty: { usual: true },
  acceptance: { usual: true, field: proposal.acceptance },
} as const satisfies Readonly<Record<string, Part>>;

export type ProposalPart = keyof typeof PARTS;

export const PROPOSAL_PARTS = Object.keys(PARTS) as readonly ProposalPart[];

/** What somebody says for this one proposal; it counts before what the job and the firm say. */
export interface ChosenParts {
  readonly with?: readonly ProposalPart[];
  readonly without?: readonly ProposalPart[];
}

/**
 * @param said what Terms has in a field: of the job, else of the firm
 * @returns the parts that the proposal is to have
 */
export function chosenParts(
  chosen: ChosenParts,
  said: (field: NamedField) => string,
): ReadonlySet<ProposalPart> {
  return new Set(
    PROPOSAL_PARTS.filter((part) => {
      if (chosen.without?.includes(part)) return false;
      if (chosen.with?.includes(part)) return true;
      const { usual, field }: Part = PARTS[part];
      const word = field ? said(field).toLowerCase() : "";
      return word === "yes" || (usual && word !== "no");
    }),
  );
}
