declare module "subset-font" {
  export default function subsetFont(
    font: Buffer,
    characters: string,
    options: {
      readonly targetFormat: "truetype" | "woff2";
      readonly preserveNameIds?: readonly number[];
    },
  ): Promise<Buffer>;
}
