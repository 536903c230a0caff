import type { strips as english } from "../english/strips.js";

export const strips: typeof english = {};
