/** The release, as in package.json; a test holds the two equal. */
export const RIGSHEET_VERSION = "0.1.0";
