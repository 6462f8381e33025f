/** What the pane's views and the frame around them know of each other. */
import type { PaneHost, Preferences, Selection } from "./host";

export interface PaneContext {
  readonly host: PaneHost;
  /**
   * Runs one step of the person's: says what is going on, then the sentence
   * that the work gives, or what is in the way.
   * @returns whether it was done
   */
  run(what: string, work: () => Promise<string>): Promise<boolean>;
  say(sentence: string): void;
  onSelection(changed: (selection: Selection) => void): void;
  /** As kept by the host, or the usual ones. */
  preferences(): Promise<Preferences>;
}

export interface BuiltView {
  readonly body: readonly (Node | string)[];
  /** Called each time that the view comes up. */
  shown?(): void;
  /** What takes the focus then, instead of the heading. */
  readonly focus?: HTMLElement;
}

export interface View {
  readonly id: string;
  /** On its button. */
  readonly label: string;
  readonly title: string;
  /** Absent for a view that every host has. */
  readonly isFor?: (host: PaneHost) => boolean;
  /** @param context undefined where the pane is open outside any host */
  readonly build: (context: PaneContext) => BuiltView;
}

/** A view that is of use without a workbook, too. */
export interface LooseView extends Omit<View, "build"> {
  readonly build: (context: PaneContext | undefined) => BuiltView;
}

/** `Rooms N7`. */
export const placeInWords = ({ sheet, at }: Pick<Selection, "sheet" | "at">): string => `${sheet} ${at}`;
