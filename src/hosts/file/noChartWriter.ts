/**
 * Stands in a page's bundle for the file library's writer of charts, which is as large as all of
 * its other writing: no workbook that Rigsheet writes has a chart.
 *
 * @throws always
 */
export function writeChart(): never {
  throw new Error("Rigsheet writes no charts.");
}
