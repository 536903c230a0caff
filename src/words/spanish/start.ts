import type { start as english } from "../english/start.js";

export const start: typeof english = {};
