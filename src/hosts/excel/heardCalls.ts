/**
 * Calls of our functions, told to the pane as they arrive. Functions and pane
 * share one memory where this Excel has a shared runtime; what is heard there
 * is what Excel handed over, and it is this add-in that was called.
 */
const KEY = "rigsheetHeardCalls";

export interface HeardCall {
  readonly name: string;
  /** As Excel handed them over. */
  readonly args: readonly unknown[];
}

type Listener = (call: HeardCall) => void;
const shared = globalThis as unknown as Record<string, Listener | undefined>;

export const tellOfCall = (name: string, args: readonly unknown[]): void => shared[KEY]?.({ name, args });

/** While the work runs, every call is noted. */
export async function hearing<T>(work: (heard: readonly HeardCall[]) => Promise<T>): Promise<T> {
  const heard: HeardCall[] = [];
  shared[KEY] = (call) => void heard.push(call);
  try {
    return await work(heard);
  } finally {
    delete shared[KEY];
  }
}
