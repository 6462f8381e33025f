/** What a proposal says besides the quote: at the end of Terms, in a job as in the firm's standards. */
import { blockPart, fieldsPart } from "../parts";
import { payment, proposal, warranty } from "./names/proposal";

export const PROPOSAL_TERMS = [
  blockPart(payment, {
    heading: "Terms of payment, as they stand on the proposal",
    prepared: 4,
    formulas: {},
  }),
  blockPart(warranty, { heading: "Warranty, as it stands on the proposal", prepared: 4, formulas: {} }),
  fieldsPart("Proposal: the firm, and what stands on it", [
    proposal.registration,
    proposal.tax_number,
    proposal.offer,
    proposal.schedule,
    proposal.diagram,
    proposal.sky,
    proposal.lines,
    proposal.acceptance,
    proposal.paper,
  ]),
];
