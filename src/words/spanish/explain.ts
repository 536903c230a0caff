import type { explain as english } from "../english/explain.js";

export const explain: typeof english = {};
