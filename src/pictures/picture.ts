/** A picture made from a computed workbook: SVG text that needs nothing else, and the same in words. */
export interface Picture {
  readonly svg: string;
  readonly title: string;
  /** What the picture shows, for those who do not see it: stands in the picture and beside it. */
  readonly description: string;
  /** In pixels at 96 to the inch, as drawn. */
  readonly width: number;
  readonly height: number;
  /** There was nothing to draw yet: only a sentence that says what is missing. */
  readonly empty?: boolean;
}
