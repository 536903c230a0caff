/** As far as it is called here. */
declare module "pako" {
  const pako: { deflate(bytes: Uint8Array, options: { level: number }): Uint8Array };
  export default pako;
}
