/** The release, as in package.json; a test holds the two equal. */
export const RIGSHEET_VERSION = "0.1.0";

/** Excel knows the add-in by it, in its manifest and in a workbook that opens its pane; never changed. */
export const ADD_IN_ID = "3a0d7c52-6f1e-4c8b-9d2a-51b7e0c4f683";
