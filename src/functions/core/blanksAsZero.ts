/** What VERSION says behind its number where the program hands a blank cell over as 0. */
export const BLANKS_AS_ZERO = "blanks read as 0";
