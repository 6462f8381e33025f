/** What a page says that a customer must not sign. */
export const DRAFT_WORDS = "Draft: not to be sent";
