/** What each worker thread runs. */
export { default } from "./reviewFile";
