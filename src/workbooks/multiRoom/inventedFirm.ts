/** What the invented firm of the demonstrations says on its proposals. Nobody has these terms or these numbers. */
type Row = Readonly<Record<string, number | string>>;

export const inventedNumbers = {
  proposal_registration: "Trade register of Invented Town: none (demonstration)",
  proposal_tax_number: "Tax number: none (demonstration)",
  proposal_diagram: "yes",
  proposal_sky: "yes",
} as const;

export const inventedPayment: readonly Row[] = [
  { text: "A third when the order is placed, a third when the cables are in, the rest after handing over." },
  { text: "Each within 30 days of its invoice, without deduction." },
];

export const inventedWarranty: readonly Row[] = [
  { text: "Workmanship: two years from the day of handing over." },
  { text: "Parts: as their makers warrant them; not receivers, nor what lightning or others have damaged." },
];
