/** The lines of the quote: five sections of cost, then what is entered at its selling price. */
export const LINES = {
  reception: "Head units and power supplies",
  cable: "Cable and distribution",
  fittings: "Outlets, fittings and sundries",
  labour: "Labour",
  sites: "Travel, access and permits",
  provisional: "Provisional sums",
  options: "Options and alternates chosen",
} as const;
