/** Beside the static folder's files, for whoever puts it on a server. */
import { RIGSHEET_VERSION } from "../../version";

export const FOLDER_README = `Rigsheet ${RIGSHEET_VERSION}: the workbook page as a folder

Put this folder, as it is, under any address of any web server that sends files;
nothing runs there. Open that address. With https a browser keeps the page and it
works without a network from then on; with http it works as long as the network
does. Jobs stay in each person's browser, at that address: they never go to the
server.

A server should send .html, .js, .css, .svg and .png as what they are, and
everything else in any way. Where it can, let it add the header
"Content-Security-Policy: frame-ancestors 'none'", and compress .js and .css.

Another release: put its folder in the place of this one. Nobody's page changes
until its user says so.

Another version of a library that stays separate (LGPL: o_spreadsheet.js, .xml and
.css, owl.js, in desk-…/library): put it in the place of the file, under the same
name, and change a letter of "edition" at the head of sw.js, which tells browsers
that there is something new; they ask their user before they change to it. The
files are the libraries' own; scripts and styles that hold more than ASCII begin
with the three bytes that say "UTF-8", since some servers say otherwise.

addin/ holds the add-in's files for the address that manifest.xml in it names.
LICENSE.txt is Rigsheet's licence; help/notices.txt has those of all that is inside.
`;
