/** What sets one Excel apart from another, as documents and issue threads tell it: none of it was seen in an Excel. */

/** How a blank cell reaches a function of an add-in. */
export type ArrivingBlank = null | "" | 0;

export interface Oddities {
  readonly platform?: string;
  readonly version?: string;
  readonly displayLanguage?: string;
  readonly decimalSeparator?: string;
  /** Error values as this language shows them, in `text`, and in `values` where `inValues` says so. */
  readonly errorTexts?: Readonly<Record<string, string>>;
  readonly errorTextsInValues?: boolean;
  readonly calculation?: "Automatic" | "Manual";
  readonly date1904?: boolean;
  readonly structureProtected?: boolean;
  /** The code with which a sheet can't be deleted. */
  readonly deletingThrows?: string;
  readonly milliseconds?: number;
  /** There are no functions of add-ins at all, as on an iPad. */
  readonly noFunctions?: boolean;
  /** What a function answers instead of its result, for ever or for so long. */
  readonly answering?: { readonly code: "#NAME?" | "#BUSY!"; readonly milliseconds?: number };
  /** What was shown once stays, whatever changes. */
  readonly oldValues?: boolean;
  /** The version of the functions that answer, where it is another one than the pane's. */
  readonly functionsVersion?: string;
  /** The functions run elsewhere than the pane: in a runtime, or an add-in, of their own. */
  readonly elsewhere?: boolean;
  readonly blankInRange?: ArrivingBlank;
  readonly blankAlone?: ArrivingBlank;
  readonly blankKinds?: Readonly<Partial<Record<BlankKind, ArrivingBlank>>>;
  readonly errorInRange?: "text" | "blank" | "refused";
  /** Only the first value of an array arrives in the sheet. */
  readonly spillsNot?: boolean;
  /** Before formulas of ours that are entered an @ is put. */
  readonly addsAt?: boolean;
  /** Of a named cell the shown number is off by so much. */
  readonly wrongBy?: { readonly name: string; readonly by: number };
  readonly grouping?: "unsupported" | { readonly throws: string };
  readonly protection?: "denied" | "lost" | "ignored";
}

export type BlankKind = "untouched" | "cleared" | "formattedNumber" | "formattedText";
