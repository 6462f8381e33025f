/** What of the spoilt workbooks (tests/fixtures/spoilt) is not named, or named elsewhere, and whose amounts are not known. */

/** With the reason. */
export const NOT_NAMED: Readonly<Record<string, string>> = {
  MG49: "a feeder that is missing looks the same: named at the feeders",
  MH16: "a class of tax that exists is right for somebody",
  MH60: "a line that is gone has no cell: named at the head of the list",
  MB32: "what a floor is high stands nowhere",
  MB37: "a second supply does no harm; it only costs",
  MB60: "the price of a route says nothing of the place",
  MB81: "a choice of the firm, and its standards leave it open",
  MB88: "the price of an option is what it is sold at",
  MB89: "which assumption a job needs is not known",
  MC16: "one of the three stands elsewhere",
};

/** Nobody knows yet what was meant, or not within a hundredth: rows that are missing, names, texts, choices. */
export const AMOUNTS_NOT_KNOWN: readonly string[] = [
  "MG05",
  "MG27",
  "MG48",
  "MG49",
  "MG50",
  "MH06",
  "MH15",
  "MH16",
  "MB05",
  "MB32",
  "MB34",
  "MB35",
  "MB36",
  "MB37",
  "MB60",
  "MB81",
  "MC14",
  "MC15",
  "MC16",
];

/** Of closing.json, with the reason. */
export const CLOSING_NOT_NAMED: Readonly<Record<string, string>> = {
  "N1-014": "a route of its own may be meant in any row",
  "N1-025": "at its end a floor may have a room less",
  "N1-062": "a slot that is gone leaves nothing that asks for it",
  "N1-126": "no cable says where it may lie",
  "N1-130": "told at the feeders that come to it",
  "N1-135": "a blank port is the port of a tap",
  "N1-141": "told at the size, which is too small for the kind that was chosen",
  "N1-166": "a quote may go out on the firm's own paper",
  "N2-049": "nothing says that an open port must be closed there",
  "N2-071": "a price group moves nothing that is held to anything",
  "N2-072": "two outlets of one flat may be in one room",
  "N2-075": "a device that is missing is told where it is named",
  "N2-080": "told at another device of the switch that feeds too many",
  "N2-085": "a supply too many does no harm; it only costs",
  "N2-091": "a blank is the usual cable",
  "N2-117": "what a provisional work costs is known nowhere",
  "N2-120": "the price of an option is what it is sold at",
  "N1-012": "a better cable at one outlet may be meant",
  "N1-016": "a price group moves nothing that is held to anything",
  "N1-028": "told at the plate of the outlet that has no way through",
  "N1-128": "told at the head unit that it leaves without what commands it",
  "N2-082": "told at what hangs on the head unit",
  "N2-094": "which dish was to receive the slot is not known",
  "N2-122": "what an assumption speaks of is read by people",
  "N2-147": "a line that is gone has no cell: told at the rooms that name it",
  "N2-159": "a job may have no travel",
  "N2-190": "told at the size, which is too small for the kind that was chosen",
  "N2-X4": "one of the three stands elsewhere",
};

/** Nobody knows what was meant, or not within a hundredth; and those above that move the price. */
export const CLOSING_NOT_KNOWN: readonly string[] = [
  ...["N1-002", "N1-005", "N1-014", "N1-025", "N1-062", "N1-070", "N1-126", "N1-129", "N1-130", "N1-146"],
  ...["N1-150", "N1-162", "X1-002", "X1-005", "N2-007", "N2-049", "N2-056", "N2-059", "N2-060", "N2-075"],
  ...["N2-079", "N2-080", "N2-084", "N2-085", "N2-088", "N2-091", "N2-117", "N2-120", "N1-004", "N1-012"],
  ...["N1-028", "N1-064", "N1-128", "N1-132", "N2-010", "N2-054", "N2-082", "N2-086", "N2-094", "N2-114"],
  ...["N2-118", "N2-147", "N2-155", "N2-159", "N2-169", "N2-185", "N2-X4"],
];

/** Jobs that only look unusual and are said to be doubtful all the same, with the reason. */
export const ACCUSED: Readonly<Record<string, string>> = {
  "C2-001": "the firm's standards have another crew rate",
  "C2-015": "the firm's standards have another contingency",
  "C2-026": "the firm's standards have another crew rate and crew",
  "C2-003": "a wing whose runs are 2.6 times as long as the others'",
};
