/**
 * The add-in only manifest ([MS-OWEMXML]; VersionOverrides 1.0 of task panes):
 * one page in a shared runtime for the functions, the ribbon and the pane.
 */
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

/** Resource texts (basic types of the schema). */
const SHORT_MOST = 125;
const LONG_MOST = 250;

const escaped = (text: string): string =>
  text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;");

function resource(kind: string, id: string, value: string): string {
  const most = kind === "String" && !id.endsWith(".Tip") ? SHORT_MOST : LONG_MOST;
  if (kind === "String" && value.length > most) throw new Error(`${id} is longer than ${most}: ${value}`);
  return `        <bt:${kind} id="${id}" DefaultValue="${escaped(value)}"/>`;
}

const iconList = (indent: string): string =>
  [
    `${indent}<Icon>`,
    ...ICON_SIZES.map((size) => `${indent}  <bt:Image size="${size}" resid="Icon.${size}"/>`),
    `${indent}</Icon>`,
  ].join("\n");

const control = ({
  id,
  command,
}: (typeof BUTTONS)[number]): string => `                <Control xsi:type="Button" id="${id}">
                  <Label resid="${id}.Label"/>
                  <Supertip>
                    <Title resid="${id}.Label"/>
                    <Description resid="${id}.Tip"/>
                  </Supertip>
${iconList("                  ")}
${
  command === undefined
    ? `                  <Action xsi:type="ShowTaskpane">
                    <TaskpaneId>${PANE_ID}</TaskpaneId>
                    <SourceLocation resid="Page.Url"/>
                  </Action>`
    : `                  <Action xsi:type="ExecuteFunction">
                    <FunctionName>${command}</FunctionName>
                  </Action>`
}
                </Control>`;

/** @param address where the add-in is served, without a slash at its end */
export function xmlManifest(address: string): string {
  const at = addresses(address);
  return `<?xml version="1.0" encoding="UTF-8"?>
<!-- Generated; do not edit. -->
<OfficeApp xmlns="http://schemas.microsoft.com/office/appforoffice/1.1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xmlns:bt="http://schemas.microsoft.com/office/officeappbasictypes/1.0" xsi:type="TaskPaneApp">
  <Id>${ADD_IN_ID}</Id>
  <Version>${RIGSHEET_VERSION}.0</Version>
  <ProviderName>${escaped(TEXTS.provider)}</ProviderName>
  <DefaultLocale>en-US</DefaultLocale>
  <DisplayName DefaultValue="${escaped(TEXTS.name)}"/>
  <Description DefaultValue="${escaped(TEXTS.long)}"/>
  <IconUrl DefaultValue="${at.icon(32)}"/>
  <HighResolutionIconUrl DefaultValue="${at.icon(64)}"/>
  <SupportUrl DefaultValue="${at.support}"/>
  <AppDomains>
    <AppDomain>${new URL(address).origin}</AppDomain>
  </AppDomains>
  <Hosts>
    <Host Name="Workbook"/>
  </Hosts>
  <Requirements>
    <Sets DefaultMinVersion="1.1">
      <Set Name="SharedRuntime" MinVersion="1.1"/>
    </Sets>
  </Requirements>
  <DefaultSettings>
    <SourceLocation DefaultValue="${at.page}"/>
  </DefaultSettings>
  <Permissions>ReadWriteDocument</Permissions>
  <VersionOverrides xmlns="http://schemas.microsoft.com/office/taskpaneappversionoverrides" xsi:type="VersionOverridesV1_0">
    <Hosts>
      <Host xsi:type="Workbook">
        <Runtimes>
          <Runtime resid="Page.Url" lifetime="long"/>
        </Runtimes>
        <AllFormFactors>
          <ExtensionPoint xsi:type="CustomFunctions">
            <Script>
              <SourceLocation resid="Functions.Script.Url"/>
            </Script>
            <Page>
              <SourceLocation resid="Page.Url"/>
            </Page>
            <Metadata>
              <SourceLocation resid="Functions.Metadata.Url"/>
            </Metadata>
            <Namespace resid="Functions.Namespace"/>
          </ExtensionPoint>
        </AllFormFactors>
        <DesktopFormFactor>
          <GetStarted>
            <Title resid="Started.Title"/>
            <Description resid="Started.Tip"/>
            <LearnMoreUrl resid="Help.Url"/>
          </GetStarted>
          <FunctionFile resid="Page.Url"/>
          <ExtensionPoint xsi:type="PrimaryCommandSurface">
            <OfficeTab id="TabHome">
              <Group id="RigsheetGroup">
                <Label resid="Group.Label"/>
${iconList("                ")}
${BUTTONS.map(control).join("\n")}
              </Group>
            </OfficeTab>
          </ExtensionPoint>
        </DesktopFormFactor>
      </Host>
    </Hosts>
    <Resources>
      <bt:Images>
${ICON_SIZES.map((size) => resource("Image", `Icon.${size}`, at.icon(size))).join("\n")}
      </bt:Images>
      <bt:Urls>
${resource("Url", "Page.Url", at.page)}
${resource("Url", "Functions.Script.Url", at.script)}
${resource("Url", "Functions.Metadata.Url", at.metadata)}
${resource("Url", "Help.Url", at.help)}
      </bt:Urls>
      <bt:ShortStrings>
${resource("String", "Functions.Namespace", NAMESPACE)}
${resource("String", "Started.Title", TEXTS.startedTitle)}
${resource("String", "Group.Label", TEXTS.group)}
${BUTTONS.map(({ id, label }) => resource("String", `${id}.Label`, label)).join("\n")}
      </bt:ShortStrings>
      <bt:LongStrings>
${resource("String", "Started.Tip", TEXTS.started)}
${BUTTONS.map(({ id, tip }) => resource("String", `${id}.Tip`, tip)).join("\n")}
      </bt:LongStrings>
    </Resources>
  </VersionOverrides>
</OfficeApp>
`;
}
