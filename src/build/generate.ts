/**
 * Writes what is generated from the declarations and the definitions and kept
 * in the repository: Excel's function metadata, the demonstration's survey and
 * the template workbooks. A test fails when one of them is out of date.
 */
import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { generatedFiles } from "./generatedFiles";

async function main(folder: string): Promise<void> {
  for (const [name, content] of await generatedFiles()) {
    const file = path.join(folder, name);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, content);
    process.stdout.write(`${name}\n`);
  }
}

void main(process.argv[2] ?? ".");
