declare module "subset-font" {
  /** The font with only the glyphs that `text` needs, as bytes. The package carries no types; these are what we use. */
  export default function subsetFont(
    font: Buffer,
    text: string,
    options: {
      targetFormat: "truetype";
      keepFeatures: readonly string[];
      noLayoutClosure: boolean;
      noHinting: boolean;
      dropTables: readonly string[];
    },
  ): Promise<Buffer>;
}
