declare module "subset-font" {
  export default function subsetFont(
    font: Buffer,
    characters: string,
    options: {
      readonly targetFormat: "truetype" | "woff2";
      readonly preserveNameIds?: readonly number[];
      /** Of the layout, four characters each; all where absent. */
      readonly keepFeatures?: readonly string[];
    },
  ): Promise<Buffer>;
}
