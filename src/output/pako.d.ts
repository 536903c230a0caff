/** As far as it is called here. */
declare module "pako" {
  export function deflate(bytes: Uint8Array, options: { level: number }): Uint8Array;
}
