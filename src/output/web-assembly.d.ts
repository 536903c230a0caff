/** As far as it is called here: the types of Node that we compile against leave it out. */
declare namespace WebAssembly {
  class Module {
    constructor(bytes: Uint8Array);
  }
  class Instance {
    constructor(module: Module, imports: Record<string, never>);
    readonly exports: unknown;
  }
}
