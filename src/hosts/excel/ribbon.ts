/**
 * The ribbon's commands that act without the pane. What was done is said in
 * the page's notice; what is in the way opens the pane, so that it is seen.
 */
import { HostTrouble, type PaneHost } from "../../pane/host";
import { COMMANDS } from "./commands";
import { openHelp } from "./openHelp";

/** @returns what the notice says */
type Command = () => Promise<string | HTMLElement>;

export function registerCommands(host: PaneHost, notice: HTMLElement): void {
  const again = async (): Promise<string> => {
    const count = await host.enterOursAgain();
    return count === 0 ? "No Rigsheet formula shows #NAME?." : `Entered again: ${count}.`;
  };
  const commands: Readonly<Record<string, Command>> = {
    [COMMANDS.addRow]: () => host.addRows(1),
    [COMMANDS.enterAgain]: again,
    [COMMANDS.help]: openHelp,
  };
  for (const [name, command] of Object.entries(commands)) {
    Office.actions.associate(name, (event: Office.AddinCommands.Event) => void run(command, notice, event));
  }
}

/** Excel waits until the event is completed, whatever happened. */
async function run(command: Command, notice: HTMLElement, event: Office.AddinCommands.Event): Promise<void> {
  try {
    notice.replaceChildren(await command());
  } catch (error) {
    notice.textContent = error instanceof Error ? error.message : String(error);
    await Office.addin.showAsTaskpane();
    if (!(error instanceof HostTrouble)) throw error;
  } finally {
    event.completed();
  }
}
