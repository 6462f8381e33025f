/** Stories of reviews (tests/fixtures/stories) that go otherwise than they were told, with the reason. */
export const TOLD_OTHERWISE: Readonly<Record<string, string>> = {};
