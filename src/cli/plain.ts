/** Text of a file must not steer the terminal that shows it. */
// eslint-disable-next-line no-control-regex -- control characters are what is looked for
export const plain = (line: string): string => line.replace(/[\x00-\x1f\x7f-\x9f]+/g, " ");
