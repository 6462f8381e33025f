/** The unified manifest for Microsoft 365, schema 1.29: the same add-in as the XML manifest's. */
import {
  ADD_IN_ID,
  addresses,
  BUTTONS,
  ICON_SIZES,
  NAMESPACE,
  PANE_ID,
  RIGSHEET_VERSION,
  TEXTS,
} from "./facts";

const SCHEMA_VERSION = "1.29";
const RUNTIME_ID = "SharedRuntime";
const ACCENT = "#2B3F55";

/** @param address where the add-in is served, without a slash at its end */
export function jsonManifest(address: string): string {
  const at = addresses(address);
  const icons = ICON_SIZES.map((size) => ({ size, url: at.icon(size) }));
  const manifest = {
    $schema: `https://developer.microsoft.com/json-schemas/teams/v${SCHEMA_VERSION}/MicrosoftTeams.schema.json`,
    manifestVersion: SCHEMA_VERSION,
    version: RIGSHEET_VERSION,
    id: ADD_IN_ID,
    developer: {
      name: TEXTS.provider,
      websiteUrl: at.help,
      privacyUrl: at.support,
      termsOfUseUrl: at.support,
    },
    name: { short: TEXTS.name, full: TEXTS.name },
    description: { short: TEXTS.short, full: TEXTS.long },
    icons: { color: "icons/color.png", outline: "icons/outline.png" },
    accentColor: ACCENT,
    validDomains: [new URL(address).host],
    authorization: {
      permissions: { resourceSpecific: [{ name: "Document.ReadWrite.User", type: "Delegated" }] },
    },
    extensions: [
      {
        requirements: {
          scopes: ["workbook"],
          capabilities: [{ name: "SharedRuntime", minVersion: "1.1" }],
        },
        runtimes: [
          {
            id: RUNTIME_ID,
            type: "general",
            code: { page: at.page, script: at.script },
            lifetime: "long",
            actions: BUTTONS.map(({ id, command }) =>
              command === undefined
                ? { id, type: "openPage", view: PANE_ID }
                : { id: command, type: "executeFunction" },
            ),
            // Only this file can say that our functions take error cells.
            customFunctions: { namespace: { id: NAMESPACE, name: NAMESPACE }, metadataUrl: at.metadata },
          },
        ],
        ribbons: [
          {
            contexts: ["default"],
            tabs: [
              {
                builtInTabId: "TabHome",
                groups: [
                  {
                    id: "RigsheetGroup",
                    label: TEXTS.group,
                    icons,
                    controls: BUTTONS.map(({ id, label, tip, command }) => ({
                      id,
                      type: "button",
                      label,
                      icons,
                      supertip: { title: label, description: tip },
                      actionId: command ?? id,
                    })),
                  },
                ],
              },
            ],
          },
        ],
        getStartedMessages: [
          { title: TEXTS.startedTitle, description: TEXTS.started, learnMoreUrl: at.help },
        ],
      },
    ],
  };
  return `${JSON.stringify(manifest, null, 2)}\n`;
}
