import type { template as english } from "../english/template.js";

export const template: typeof english = {};
