/** What can be chosen of a proposal: whose standards stand behind it, its logo, its parts, and that it is signed anyway. */
import type { ProposalChoice } from "../../../pane/pdfFiles";
import type { StandardsHere } from "../../../pane/host";
import { LogoChoice } from "../../../pane/logoChoice";
import { PROPOSAL_PARTS, type ProposalPart } from "../../../proposal/chosenParts";
import type { JobInputs } from "../../../workbooks/definition";
import { make } from "./dom";
import { inputsOfFirm } from "./standardsHere";

const WORDS: Readonly<Record<ProposalPart, string>> = {
  offer: "What is offered",
  schedule: "Room schedule",
  diagram: "Diagram",
  sky: "Sky at the dishes",
  lines: "Lines of the price",
  options: "Options",
  payment: "Terms of payment",
  warranty: "Warranty",
  acceptance: "A place to sign",
};

export class ProposalChoices {
  readonly root: HTMLElement;
  private readonly logo: LogoChoice;
  private readonly firm: HTMLSelectElement;
  private readonly anyway = make("input", { type: "checkbox", id: "print-anyway" });
  private readonly boxes: ReadonlyMap<ProposalPart, HTMLInputElement>;
  private readonly look = make("ul", { className: "print-look", ariaLabel: "What needs a look" });
  /** What somebody said of a part; the others are as the job, the firm and the usual have them. */
  private readonly said = new Map<ProposalPart, boolean>();
  private read: { readonly from: StandardsHere; readonly inputs: JobInputs } | undefined;

  /** @param firms the firm's standards among the jobs, the one that is meant first */
  constructor(
    private readonly firms: readonly StandardsHere[],
    changed: () => void,
  ) {
    this.logo = new LogoChoice(changed, { id: "print-logo", input: "desk-input", button: "desk-button" });
    this.firm = make(
      "select",
      { id: "print-firm", className: "desk-input" },
      ...firms.map(({ label }) => make("option", {}, label)),
      make("option", {}, "None"),
    );
    this.boxes = new Map(
      PROPOSAL_PARTS.map((part) => [part, make("input", { type: "checkbox", id: `print-part-${part}` })]),
    );
    for (const [part, box] of this.boxes)
      box.addEventListener("change", () => {
        this.said.set(part, box.checked);
        changed();
      });
    this.firm.addEventListener("change", changed);
    this.anyway.addEventListener("change", changed);
    this.root = make(
      "div",
      { className: "print-proposal" },
      ...(firms.length > 0
        ? [
            make("label", { htmlFor: this.firm.id }, "What the job does not say is of these standards"),
            this.firm,
          ]
        : []),
      this.logo.root,
      make(
        "fieldset",
        { className: "print-choices" },
        make("legend", {}, "Parts"),
        ...[...this.boxes].map(([part, box]) => make("label", { htmlFor: box.id }, box, WORDS[part])),
      ),
      make(
        "label",
        { htmlFor: this.anyway.id, className: "print-anyway" },
        this.anyway,
        " To be signed although checks fail",
      ),
      this.look,
    );
  }

  /** @throws HostTrouble with a sentence where the chosen standards can't be used */
  async chosen(): Promise<ProposalChoice> {
    await this.logo.ready;
    const { logo } = this.logo;
    const firm = await this.firmsInputs();
    const parts = (wanted: boolean): ProposalPart[] =>
      [...this.said].filter(([, is]) => is === wanted).map(([part]) => part);
    return {
      ...(firm && { firm }),
      ...(logo && { logo }),
      with: parts(true),
      without: parts(false),
      anyway: this.anyway.checked,
    };
  }

  private async firmsInputs(): Promise<JobInputs | undefined> {
    const from = this.firms[this.firm.selectedIndex];
    if (!from) return undefined;
    if (this.read?.from !== from) {
      this.read = { from, inputs: await inputsOfFirm(from) };
    }
    return this.read.inputs;
  }

  /** @param look what is missing, and what the office should know before it goes out */
  show(parts: ReadonlySet<ProposalPart>, look: readonly string[]): void {
    for (const [part, box] of this.boxes) box.checked = parts.has(part);
    this.look.replaceChildren(...look.map((line) => make("li", {}, line)));
  }

  /** Nothing of it is known while pages are being made anew. */
  forget(): void {
    this.look.replaceChildren();
  }
}
