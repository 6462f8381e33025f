/** The parts of a workbook file by name, and where their relationships lead. */
import { unpacked, type ArchiveEntry } from "./archive";
import { MAX_FACT_BYTES, MAX_FACT_TEXT } from "./limits";
import { attribute, elementsOf } from "./markup";
import { utf8Part } from "./utf8Part";

export interface Relationship {
  readonly id: string;
  /** The last word of its type: `worksheet`, `comments`. */
  readonly type: string;
  readonly target: string;
  readonly external: boolean;
}

export class PackageParts {
  private readonly entries: ReadonlyMap<string, ArchiveEntry>;

  /** @param entries as checked by checkedEntries */
  constructor(
    private readonly bytes: Uint8Array,
    entries: readonly ArchiveEntry[],
  ) {
    this.entries = new Map(entries.map((entry) => [entry.name.toLowerCase(), entry]));
  }

  get names(): readonly string[] {
    return [...this.entries.values()].map(({ name }) => name);
  }

  /** @returns empty for a part that is not there, or so large that it is none of ours to look into */
  text(name: string): string {
    const entry = this.entries.get(name.toLowerCase());
    if (!entry || entry.size > MAX_FACT_BYTES) return "";
    return new TextDecoder().decode(utf8Part(entry.name, unpacked(this.bytes, entry)));
  }

  /** Where a part leads; the targets of parts inside the file as their names. */
  relationshipsOf(part: string): Relationship[] {
    const cut = part.lastIndexOf("/") + 1;
    const folder = part.slice(0, cut);
    return elementsOf(this.text(`${folder}_rels/${part.slice(cut)}.rels`), "Relationship").map((element) => {
      const target = attribute(element, "Target") ?? "";
      const external = attribute(element, "TargetMode")?.toLowerCase() === "external";
      return {
        id: attribute(element, "Id") ?? "",
        type: (attribute(element, "Type") ?? "").split("/").at(-1)!,
        target: external ? target.slice(0, MAX_FACT_TEXT) : partName(folder, target),
        external,
      };
    });
  }
}

function partName(folder: string, target: string): string {
  if (target.startsWith("/")) return target.slice(1);
  const steps = folder.split("/").slice(0, -1);
  for (const step of target.split("/")) {
    if (step === "..") steps.pop();
    else if (step !== ".") steps.push(step);
  }
  return steps.join("/");
}
