import type { complaints as english } from "../english/complaints.js";

export const complaints: typeof english = {};
