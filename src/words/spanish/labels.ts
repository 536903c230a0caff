import type { labels as english } from "../english/labels.js";

export const labels: typeof english = {};
