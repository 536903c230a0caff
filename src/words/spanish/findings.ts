import type { findings as english } from "../english/findings.js";

export const findings: typeof english = {};
