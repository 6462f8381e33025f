/** Ids that the folder's first page and its script share. */
export const PARTS = {
  form: "form",
  address: "address",
  trouble: "trouble",
  made: "made",
  files: "files",
  functions: "functions",
} as const;
