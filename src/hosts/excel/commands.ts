/** Names of the ribbon's commands, in the manifests and in the code that answers them. */
export const COMMANDS = { addRow: "addRow", enterAgain: "enterAgain", help: "openHelp" } as const;
