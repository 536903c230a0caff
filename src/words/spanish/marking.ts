import type { marking as english } from "../english/marking.js";

export const marking: typeof english = {};
