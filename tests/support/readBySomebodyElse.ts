/** An .xlsx as @cj-tech-master/excelts reads it, a library that shares no code with the one we write with. */
export interface ReadSheet {
  readonly name: string;
  /** By A1 address. */
  readonly cells: ReadonlyMap<string, { readonly value: unknown; readonly formula?: string }>;
}

/** @returns its sheets in their order; what is no sound workbook rejects */
export async function readBySomebodyElse(bytes: Uint8Array): Promise<ReadSheet[]> {
  const { Workbook } = await import("@cj-tech-master/excelts");
  const workbook = new Workbook();
  await workbook.xlsx.load(Buffer.from(bytes));
  return workbook.worksheets.map((sheet) => {
    const cells = new Map<string, { value: unknown; formula?: string }>();
    sheet.eachRow((row) =>
      row.eachCell((cell) => {
        const { formula, value } = cell;
        const rich = typeof value === "object" && value !== null && "richText" in value ? cell.text : value;
        cells.set(cell.address, {
          value: formula === undefined ? rich : cell.result,
          ...(formula !== undefined && { formula }),
        });
      }),
    );
    return { name: sheet.name, cells };
  });
}
