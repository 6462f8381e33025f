/** What tests with pages of their own do with the grid on one. */
import type { Page } from "playwright-core";

/** Chooses a cell by the box that names the selection, as a person may. */
export async function chooseCell(page: Page, sheet: string, cell: string): Promise<void> {
  await page.locator(".o-sheet", { hasText: sheet }).first().click();
  const box = page.locator(".o-named-range-selector input");
  await box.click();
  await box.fill(cell);
  await box.press("Enter");
  // The grid takes the keys again once it has drawn the selection.
  await page.waitForFunction(() => document.activeElement?.closest(".o-grid") !== null);
}
