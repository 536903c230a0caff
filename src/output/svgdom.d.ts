declare module "svgdom" {
  import type { Element } from "@svgdotjs/svg.js";
  /** A window for svg.js to work in. The package carries no types; this is what we use of it. */
  export function createSVGWindow(): {
    readonly document: { readonly documentElement: Element["node"] };
  };
}
