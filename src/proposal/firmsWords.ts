/** What a proposal says of the firm: the job's own words where it has any, else those of the firm's standards. */
import type { Named } from "../formula/build";
import type { JobInputs } from "../workbooks/definition";
import { letterheadQuoted } from "../workbooks/multiRoom/names/quote";
import { assumptions, exclusions, letterhead } from "../workbooks/multiRoom/names/terms";
import { payment, proposal, warranty } from "../workbooks/multiRoom/names/proposal";
import { OF, type NamedField } from "../workbooks/names";
import { standards } from "../workbooks/standards/names";
import { tidy, type Shown } from "./shown";

export interface FirmsWords {
  /** The first line of the letterhead; empty where nobody says it. */
  readonly name: string;
  readonly lines: readonly string[];
  readonly assumptions: readonly string[];
  readonly exclusions: readonly string[];
  readonly payment: readonly string[];
  readonly warranty: readonly string[];
  readonly said: (field: NamedField) => string;
}

const filled = (lines: readonly string[]): string[] => lines.filter((line) => line !== "");

/** @param firm what its standards hold, where there are any beside the job */
export function firmsWords(shown: Shown, firm: JobInputs | undefined): FirmsWords {
  const ofFirm = (list: string, column: string): string[] =>
    filled((firm?.blocks?.[list] ?? []).map((row) => tidy(String(row[column] ?? ""))));
  const list = (
    own: Named,
    block: { readonly [OF]: { readonly name: string } },
    column: string,
  ): string[] => {
    const ofJob = filled(shown.down(own));
    return ofJob.length > 0 ? ofJob : ofFirm(block[OF].name, column);
  };
  const fieldOfFirm = ({ name }: Named): string => tidy(String(firm?.fields?.[name] ?? ""));
  const said = (field: NamedField): string => shown.at(field) || fieldOfFirm(field);
  const head = list(letterheadQuoted.line, letterhead, letterhead.line.key);
  const [name = fieldOfFirm(standards.firm), ...lines] = head;
  return {
    name,
    lines: [...lines, ...filled([said(proposal.registration), said(proposal.tax_number)])],
    assumptions: list(assumptions.text, assumptions, assumptions.text.key),
    exclusions: list(exclusions.text, exclusions, exclusions.text.key),
    payment: list(payment.text, payment, payment.text.key),
    warranty: list(warranty.text, warranty, warranty.text.key),
    said,
  };
}
