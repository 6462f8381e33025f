/** The firm's logo on a proposal: chosen from the disk, checked, shown, kept in this browser, taken away again. */
import { readLogo } from "../hosts/file/readLogo";
import { keepLogo, keptLogo } from "../hosts/storage/keptLogo";
import { logoTooLarge, MOST_LOGO_BYTES, type LogoFile } from "../proposal/logo";
import { base64 } from "../workbooks/base64";
import { button, make } from "./dom";

const NOT_KEPT = "This browser keeps no files, so the logo holds until this page is closed.";

export class LogoChoice {
  readonly root: HTMLElement;
  /** What is kept is known. */
  readonly ready: Promise<void>;
  private chosen: LogoFile | undefined;
  private readonly said = make("p", { className: "logo-said", role: "status" });
  private readonly shown = make("span", { className: "logo-shown" });
  private readonly file: HTMLInputElement;

  /**
   * @param changed another logo counts, or none
   * @param looks the id, and class names, of what is filled in and of buttons
   */
  constructor(
    private readonly changed: () => void,
    private readonly looks: { readonly id: string; readonly input: string; readonly button: string },
  ) {
    this.file = make("input", { type: "file", id: looks.id, className: looks.input });
    this.file.accept = ".png,.jpg,.jpeg,image/png,image/jpeg";
    this.file.addEventListener("change", () => void this.take());
    this.root = make(
      "div",
      { className: "logo-choice" },
      make("label", { htmlFor: this.file.id }, "Logo: PNG or JPEG, of 2 MB and 4000 pixels a side at most"),
      this.file,
      this.shown,
      this.said,
    );
    this.ready = this.readKept();
  }

  get logo(): LogoFile | undefined {
    return this.chosen;
  }

  private async readKept(): Promise<void> {
    const kept = await keptLogo();
    const logo = kept && readLogo(kept.bytes);
    // Who has chosen meanwhile has said the last word.
    if (kept && typeof logo === "object" && !this.chosen) this.show(kept.name, logo);
  }

  private async take(): Promise<void> {
    const file = this.file.files?.[0];
    // The same file may be chosen again, put right.
    const name = file?.name ?? "";
    if (!file) return;
    const logo =
      file.size > MOST_LOGO_BYTES
        ? logoTooLarge(file.size)
        : await file.arrayBuffer().then(
            (bytes) => readLogo(new Uint8Array(bytes)),
            () => "the file can't be read. Is it still there? Choose it again.",
          );
    this.file.value = "";
    if (typeof logo === "string") {
      this.said.textContent = `${name}: ${logo}${this.chosen ? " The logo is as it was." : ""}`;
      return;
    }
    this.show(name, logo);
    this.said.textContent = (await keepLogo({ name, bytes: Uint8Array.from(logo.bytes) })) ? "" : NOT_KEPT;
    this.changed();
  }

  private show(name: string, logo: LogoFile): void {
    this.chosen = logo;
    this.shown.replaceChildren(
      make("img", {
        src: `data:image/${logo.format};base64,${base64(logo.bytes)}`,
        alt: `The logo: ${name}`,
      }),
      make("bdi", {}, name),
      button("Remove the logo", () => void this.remove(), this.looks.button),
    );
  }

  private async remove(): Promise<void> {
    this.chosen = undefined;
    this.shown.replaceChildren();
    this.said.textContent = "";
    this.file.focus();
    await keepLogo(undefined);
    this.changed();
  }
}
