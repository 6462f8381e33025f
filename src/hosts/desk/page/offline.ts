/** That this page works without a network, and that another release of it is taken only when its user says so. */
import type { Asked, NotKept, Which } from "../worker/release";
import { RIGSHEET_VERSION } from "../../../version";
import { pause } from "./dom";
import type { StripAction } from "./strip";

/** A sentence that stands with the jobs, and what can be done about it. */
export interface Remark {
  readonly text: string;
  readonly actions: readonly StripAction[];
}

interface Around {
  /** What is said here is another than before. */
  readonly changed: () => void;
  /** Runs a user's action, and shows the sentence when it fails. */
  readonly run: (what: string, work: () => Promise<void>) => void;
  /** @throws Error with a sentence where something that was typed is not safe yet */
  readonly mustBeSafe: () => Promise<void>;
}

const WORKER = "sw.js";
const ANSWER_MS = 5000;
/** It may have to fetch what the browser has thrown away. */
const USE_MS = 60_000;
const AGAIN_MS = 6 * 60 * 60 * 1000;
/** Several folders like this one may lie at an address. */
const TURNED_DOWN = `rigsheet.turned-down ${new URL(".", location.href).pathname}`;
const READY = "Kept in this browser: works without a network from now on.";
const SCRIPT_FAILED =
  "Not all of this release could be kept for use without a network: the server's sw.js does not do what it should. Tell whoever keeps the server; it is tried again at the next visit.";
/** The release that this page is of. */
const EDITION = document.documentElement.dataset.edition;

export class Offline {
  private said = "";
  /** Handed out by the worker, as every visit but the first. */
  private wasKept = false;
  /** Kept since this visit. */
  private isReady = false;
  private offered: { readonly worker: ServiceWorker; readonly which: Which } | undefined;

  constructor(private readonly around: Around) {}

  /** Does not hold up the start: the page works meanwhile. */
  begin(): void {
    void this.keep().catch((error: unknown) =>
      this.say(
        `This address can't keep Rigsheet for use without a network: ${reasonOf(error)} All else works as long as the network does; rigsheet.html, the one file, needs none.`,
      ),
    );
  }

  get remarks(): Remark[] {
    const { said, offered } = this;
    const remarks: Remark[] = [this.isReady ? READY : "", said]
      .filter((text) => text !== "")
      .map((text) => ({ text, actions: [] }));
    if (!offered) return remarks;
    const { version, edition } = offered.which;
    const another = isOlder(version, RIGSHEET_VERSION) ? "An older" : "Another";
    const take = { label: "Change to it", act: () => this.around.run("Changing…", () => this.take()) };
    if (turnedDown() === edition) remarks.push({ text: `Rigsheet ${version} is here too.`, actions: [take] });
    else
      remarks.push({
        text: `${another} release, Rigsheet ${version}, is ready here. Nothing changes until you say so; jobs stay as they are.`,
        actions: [
          take,
          {
            label: "Not now",
            act: () => {
              turnDown(edition);
              this.around.changed();
            },
          },
        ],
      });
    return remarks;
  }

  private say(sentence: string): void {
    this.said = sentence;
    this.around.changed();
  }

  private async keep(): Promise<void> {
    if (!isSecureContext) throw new Error(PLAIN);
    if (!("serviceWorker" in navigator))
      throw new Error("this browser has no means for it, or has it switched off.");
    const { serviceWorker } = navigator;
    serviceWorker.addEventListener("message", ({ data }: MessageEvent<Partial<NotKept> | null>) => {
      if (data?.notKept !== undefined)
        this.say(
          data.isFirst
            ? `Not all of this release could be kept for use without a network: ${data.notKept} It is tried again at the next visit.`
            : `Another release on the server could not be kept whole: ${data.notKept} This one goes on working; the other is tried again at the next visit.`,
        );
    });
    this.wasKept = serviceWorker.controller !== null;
    serviceWorker.startMessages();
    // Its list of files must not come out of some cache on the way.
    const registration = await serviceWorker.register(WORKER, { updateViaCache: "none" });
    const look = (): void => void this.look(registration);
    const follow = (): void => {
      const { installing } = registration;
      installing?.addEventListener("statechange", () => {
        const isNothing = installing.state === "redundant" && !registration.active;
        if (isNothing && this.said === "") this.say(SCRIPT_FAILED);
        look();
      });
    };
    follow();
    registration.addEventListener("updatefound", follow);
    serviceWorker.addEventListener("controllerchange", look);
    // Some look only once a day on their own.
    const update = (): void => void registration.update().catch(() => undefined);
    setInterval(update, AGAIN_MS);
    await serviceWorker.ready;
    if (this.wasKept) update();
    await this.look(registration);
    // In the order in which they help: what is fetched may lie in what is thrown away.
    await asked(registration.active!, "later", USE_MS);
    await asked(registration.active!, "tidy");
  }

  /** Whether another release than this page's is ready: one that waits, or one that the browser has woken unasked. */
  private async look({ waiting, active }: ServiceWorkerRegistration): Promise<void> {
    const worker = waiting ?? active;
    const which = worker ? await asked(worker, "which") : undefined;
    // A page may be of one edition, and kept under another: where an office has put in a library of its own.
    const isOther = which !== undefined && which.edition !== (which.current ?? EDITION);
    this.offered = worker && which && isOther ? { worker, which } : undefined;
    // A worker that is none of ours, of last year perhaps, still stands before the one of this very release.
    if (waiting && active && which && which.current === undefined && !isOther) await asked(waiting, "use");
    this.isReady ||=
      !this.wasKept && which?.current !== undefined && navigator.serviceWorker.controller !== null;
    this.around.changed();
  }

  private async take(): Promise<void> {
    const { offered } = this;
    if (!offered) return;
    await this.around.mustBeSafe();
    const { worker, which } = offered;
    const answer = await asked(worker, "use", USE_MS);
    if (!answer) throw new Error("The other release does not answer. Reload this page, then try again.");
    if (answer.windows <= 1 && answer.current !== which.edition)
      throw new Error(
        "The other release could not be kept whole. This one goes on working; try again later.",
      );
    if (answer.current !== which.edition)
      throw new Error(
        `Rigsheet is open in ${answer.windows - 1 === 1 ? "another window" : `${answer.windows - 1} other windows`} too, whose work is not interrupted. Close ${answer.windows - 1 === 1 ? "it" : "them"}, then change here.`,
      );
    location.reload();
  }
}

const PLAIN =
  "its address begins with http, and browsers allow that to addresses with https only. Ask whoever keeps the server for https.";

async function asked(worker: ServiceWorker, what: Asked, ms = ANSWER_MS): Promise<Which | undefined> {
  const { port1, port2 } = new MessageChannel();
  const answer = new Promise<Which>((resolve) => {
    port1.onmessage = ({ data }: MessageEvent<Which>) => resolve(data);
  });
  worker.postMessage({ rigsheet: what }, [port2]);
  return Promise.race([answer, pause(ms).then(() => undefined)]);
}

/** Browsers name the worker's file in many words. */
function reasonOf(error: unknown): string {
  if (!(error instanceof DOMException) && !(error instanceof TypeError)) return (error as Error).message;
  return error.name === "SecurityError"
    ? "the server sends sw.js as something else than a script, or the browser keeps nothing for this page."
    : `the browser could not take sw.js (${error.message}).`;
}

/** In a store that may be refused; it is then asked again at the next visit. */
function turnedDown(): string | null {
  try {
    return localStorage.getItem(TURNED_DOWN);
  } catch {
    return null;
  }
}

function turnDown(edition: string): void {
  try {
    localStorage.setItem(TURNED_DOWN, edition);
  } catch {
    // Asked again at the next visit.
  }
}

/** Both as in package.json: numbers with points between them. */
function isOlder(version: string, than: string): boolean {
  const [ours, theirs] = [version, than].map((one) => one.split(".").map(Number));
  const at = ours!.findIndex((part, place) => part !== theirs![place]);
  return at !== -1 && ours![at]! < (theirs![at] ?? 0);
}
