import type { schedules as english } from "../english/schedules.js";

export const schedules: typeof english = {};
