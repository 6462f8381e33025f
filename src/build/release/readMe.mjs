/** What lies beside the files of a release for whoever gets them. */

const kindsOf = (version, executables) => [
  ["rigsheet.html", "everything in one file: open it in a browser, from a stick or a mail"],
  [`rigsheet-${version}-static.zip`, "the same as a folder, for a web server or an intranet"],
  ...(executables
    ? [
        [`rigsheet-${version}-win-x64.zip`, "the command and the desk for Windows 10 and newer, 64 bits"],
        [`rigsheet-${version}-linux-x64.tar.gz`, "the same for Linux on x64 with glibc 2.28 or newer"],
      ]
    : []),
  [`rigsheet-${version}-addin.zip`, "the add-in for Excel, to be served by your office"],
  [`rigsheet-${version}.tgz`, `the package for people with Node: npm install ./rigsheet-${version}.tgz`],
  ["CHANGES.txt", "what changed in functions and templates"],
  ["LICENCES.txt", "the licences of all that is inside"],
  ["SHA256SUMS", "checksums: sha256sum -c SHA256SUMS"],
  ["", "(Windows: certutil -hashfile FILE SHA256, and compare)"],
];
const WIDTH = 36;

/** @param executables whether they are part of it */
export function readMe(version, executables) {
  const kinds = kindsOf(version, executables);
  return `Rigsheet ${version}

What is here
${kinds.map(([name, what]) => `  ${name.padEnd(WIDTH)} ${what}`).join("\n")}

Rigsheet predicts and flags; it certifies nothing. Roofs, ladders, overhead lines, lightning, mains and
bonding: local rules and licensed practice decide.
${executables ? EXECUTABLES(version) : ""}
The add-in
  Its manifests name https://localhost:3000, where it can be tried on one's own computer. An office that
  serves it to others opens index.html in its folder, enters its own address and saves its manifests;
  deploy.html has the steps. With the command: rigsheet addin --address https://… --out FOLDER.
`;
}

const EXECUTABLES = (version) => `
The executables
  Unpack the archive and start the program: without a word, as by a double click, it opens the desk in the
  browser; a workbook dropped on it opens there. In a terminal: rigsheet-${version}-… --help.
  Nothing is installed. At its first start it unpacks its files (some 25 MB) for you alone into
    Windows  %LOCALAPPDATA%\\Rigsheet program
    Linux    ~/.cache/rigsheet, or below $XDG_CACHE_HOME
  and looks at each start whether they are still what they were. To take it away: delete the program and
  that folder. Your jobs lie elsewhere (rigsheet desk --help).

They are not signed
  Nobody vouches for them but these checksums, so compare them first.
  Windows: a program from the network is stopped once by SmartScreen ("Windows protected your PC"); More
  info, Run anyway starts it. Where an office allows signed programs only, it does not start before it is
  signed. Its properties name Node.js, of which it is made; Node's own signature was taken off, because
  the files put in afterwards made it invalid.
  Linux: nothing asks. The archive keeps the right to run; a browser or a mail program may take it away
  (chmod +x).
  macOS: there is none; use rigsheet.html, or the package with Node.

To sign them, in your office, as the last step, then make the checksums anew
  Windows, with signtool:
    signtool sign /fd SHA256 /tr TIMESTAMP-ADDRESS /td SHA256 /f OFFICE.pfx rigsheet-${version}-win-x64.exe
  Windows program, on Linux, with osslsigncode:
    osslsigncode sign -pkcs12 OFFICE.pfx -h sha256 -ts TIMESTAMP-ADDRESS -in rigsheet-${version}-win-x64.exe -out signed.exe
  Linux, beside the files:
    gpg --armor --detach-sign SHA256SUMS
`;
