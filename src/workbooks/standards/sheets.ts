/** The sheets that a firm fills, but for its offers. */
import type { SheetDefinition } from "../definition";
import { commonDoubt, CREW, siteCosts } from "../multiRoom/crewSheet";
import { log } from "../multiRoom/names/log";
import { site } from "../multiRoom/names/site";
import { assumptions, exclusions, letterhead, onpurpose } from "../multiRoom/names/terms";
import { partLists, partWords } from "../multiRoom/parts";
import { PROPOSAL_TERMS } from "../multiRoom/proposalTerms";
import { cablesAndLevels, measuring, MONEY, spares, taxParts, usualParts } from "../multiRoom/site";
import { blockPart, fieldsPart } from "../parts";
import { writingField } from "../typed/writingField";
import { ranges, standards, suppliers } from "./names";

export const standardsSheet: SheetDefinition = {
  name: "Standards",
  kind: "input",
  intro: "The firm, and the figures that all of its jobs begin with.",
  print: { orientation: "landscape" },
  parts: [
    fieldsPart("Firm", [standards.firm, standards.edition, standards.date, standards.days, writingField], {
      valueWidth: 38,
    }),
    blockPart(letterhead, { heading: "Letterhead", prepared: 4, formulas: {} }),
    fieldsPart("Money", MONEY),
    ...taxParts,
    usualParts,
    cablesAndLevels,
    spares,
    fieldsPart("Dishes and carrier to noise", [
      site.clearance,
      site.availability,
      site.dish_loss,
      site.noise_margin,
    ]),
    measuring,
  ],
};

export const crewSheet: SheetDefinition = {
  name: "Crew",
  kind: "input",
  intro: "What the firm's crews cost and how long they work, and what being on site costs in its jobs.",
  print: { orientation: "landscape" },
  parts: [fieldsPart("Crew", CREW), commonDoubt, siteCosts],
};

export const partsSheet: SheetDefinition = {
  name: "Parts",
  kind: "parts",
  intro: "The firm's parts, prices and labour units, by the names that its jobs know them by.",
  print: { orientation: "landscape", through: "each" },
  parts: [...partLists({}), ...partWords],
};

export const termsSheet: SheetDefinition = {
  name: "Terms",
  kind: "input",
  intro: "What the firm's quotes assume and leave out, unless a job says otherwise.",
  print: { orientation: "landscape" },
  parts: [
    blockPart(assumptions, { heading: "Assumptions", prepared: 5, formulas: {} }),
    blockPart(exclusions, { heading: "Exclusions", prepared: 6, formulas: {} }),
    blockPart(onpurpose, { heading: "Free, or 0 on purpose: for the office", prepared: 4, formulas: {} }),
    ...PROPOSAL_TERMS,
  ],
};

export const suppliersSheet: SheetDefinition = {
  name: "Suppliers",
  kind: "input",
  intro: "Who sells to the firm, in which currency, and how its price list is read.",
  print: { orientation: "landscape" },
  parts: [blockPart(suppliers, { heading: "Suppliers", prepared: 6, formulas: {} })],
};

export const rangesSheet: SheetDefinition = {
  name: "Ranges",
  kind: "input",
  intro:
    "What accepted quotes had, learned by: rigsheet standards learn. The review says what is unusual beside it. Change a row, and write yes under Kept.",
  print: { orientation: "landscape", through: "keep" },
  parts: [blockPart(ranges, { heading: "Usual figures", prepared: 12, formulas: {} })],
};

export const logSheet: SheetDefinition = {
  name: "Log",
  kind: "input",
  intro: "What was changed in the standards, by whom and why.",
  print: { orientation: "landscape" },
  parts: [blockPart(log, { heading: "Changes", prepared: 20, formulas: {} })],
};
