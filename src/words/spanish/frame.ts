import type { frame as english } from "../english/frame.js";

export const frame: typeof english = {};
