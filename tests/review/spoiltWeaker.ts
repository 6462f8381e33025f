/** What of the spoilt workbooks (tests/fixtures/spoilt) is not named, or named elsewhere, and whose amounts are not known. */

export const NOT_NAMED: Readonly<Record<string, string>> = {};

export const AMOUNTS_NOT_KNOWN: readonly string[] = [];
