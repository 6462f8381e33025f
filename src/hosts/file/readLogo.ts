/** A firm's logo out of a file that somebody chose. */
import { logoOf, type LogoFile } from "../../proposal/logo";
import { isWholePng } from "./wholePng";

/**
 * @param bytes of the file
 * @returns the logo; or a sentence, to go on after the file's name, that says why it is none
 */
export function readLogo(bytes: Uint8Array): LogoFile | string {
  const logo = logoOf(bytes);
  return typeof logo === "object" && logo.format === "png" && !isWholePng(logo.bytes)
    ? "the PNG file is damaged. Save the picture anew."
    : logo;
}
