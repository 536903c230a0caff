import type { ruler as english } from "../english/ruler.js";

export const ruler: typeof english = {};
