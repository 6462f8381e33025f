/**
 * The two parts by which a workbook opens the add-in's pane with it, so that
 * its functions are loaded before anybody looks at the figures. Where the
 * add-in is not installed, Excel passes over them.
 *
 * Standard: [MS-OWEXML] 2.1 and 2.2; Office add-ins documentation,
 * "Automatically open a task pane with a document".
 */
import { ADD_IN_ID, RIGSHEET_VERSION } from "../../version";

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const RELATIONS = "http://schemas.openxmlformats.org/package/2006/relationships";
const REFERENCES = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const OF_OFFICE = "http://schemas.microsoft.com/office/2011/relationships";
/** Of this use of the add-in in a workbook; it need not differ between workbooks. */
const INSTANCE = "{8B5C1E0A-41D7-4E0C-9A63-2F7D90C4B1E5}";
const PANE_WIDTH = 350;

/** Where an add-in can have come from and be known by its own id; of a network share the path would be needed. */
const reference = (store: string, storeType: string): string =>
  `<we:reference id="${ADD_IN_ID}" version="${RIGSHEET_VERSION}.0" store="${store}" storeType="${storeType}"/>`;

const EXTENSION = `${HEAD}<we:webextension xmlns:we="http://schemas.microsoft.com/office/webextensions/webextension/2010/11" id="${INSTANCE}">${reference("EXCatalog", "EXCatalog")}<we:alternateReferences>${reference("developer", "Registry")}</we:alternateReferences><we:properties><we:property name="Office.AutoShowTaskpaneWithDocument" value="true"/></we:properties><we:bindings/><we:snapshot xmlns:r="${REFERENCES}"/></we:webextension>`;

/** Not visible by itself: only whoever has the add-in already sees the pane, and can turn that off. */
const PANES = `${HEAD}<wetp:taskpanes xmlns:wetp="http://schemas.microsoft.com/office/webextensions/taskpanes/2010/11"><wetp:taskpane dockstate="right" visibility="0" width="${PANE_WIDTH}" row="4"><wetp:webextensionref xmlns:r="${REFERENCES}" r:id="rId1"/></wetp:taskpane></wetp:taskpanes>`;

const PANES_PART = "xl/webextensions/taskpanes.xml";
const EXTENSION_PART = "xl/webextensions/webextension1.xml";

export const PANE_PARTS: readonly (readonly [name: string, xml: string])[] = [
  [PANES_PART, PANES],
  [EXTENSION_PART, EXTENSION],
  [
    "xl/webextensions/_rels/taskpanes.xml.rels",
    `${HEAD}<Relationships xmlns="${RELATIONS}"><Relationship Id="rId1" Type="${OF_OFFICE}/webextension" Target="webextension1.xml"/></Relationships>`,
  ],
];

/** For the package's own relationships. */
export const withPaneRelated = (xml: string): string =>
  xml.replace(
    "</Relationships>",
    `<Relationship Id="rIdPane" Type="${OF_OFFICE}/webextensiontaskpanes" Target="${PANES_PART}"/></Relationships>`,
  );

/** For the package's list of types. */
export const withPaneTyped = (xml: string): string =>
  xml.replace(
    "</Types>",
    `<Override PartName="/${PANES_PART}" ContentType="application/vnd.ms-office.webextensiontaskpanes+xml"/><Override PartName="/${EXTENSION_PART}" ContentType="application/vnd.ms-office.webextension+xml"/></Types>`,
  );
