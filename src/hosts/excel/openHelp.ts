/**
 * The help in a window of its own. `openBrowserWindow` is for Excel's own
 * programs; Excel on the web has none, and runs in a browser that can open the
 * page (Office add-ins documentation, "OpenBrowserWindowApi"). Office's dialogs
 * are not used: functions of the sheet have been seen to hang behind one.
 */
const HELP_PAGE = "help/index.html";

/** @returns what is left for the person to do: a link, where no window opens without a click */
export async function openHelp(): Promise<string | HTMLElement> {
  const url = new URL(HELP_PAGE, location.href).href;
  if (askedExcel(url)) return "";
  const opened = window.open(url, "_blank");
  if (opened) {
    opened.opener = null;
    return "";
  }
  const link = Object.assign(document.createElement("a"), { href: url, target: "_blank", rel: "noopener" });
  link.textContent = "Open the help";
  const line = document.createElement("span");
  line.append("The browser did not let the help open by itself. ", link);
  await Office.addin.showAsTaskpane();
  return line;
}

function askedExcel(url: string): boolean {
  if (!Office.context.requirements.isSetSupported("OpenBrowserWindowApi", "1.1")) return false;
  try {
    Office.context.ui.openBrowserWindow(url);
    return true;
  } catch {
    // It may be named among the sets and not be there; the browser is asked then.
    return false;
  }
}
