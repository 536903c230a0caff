import type { cover as english } from "../english/cover.js";

export const cover: typeof english = {};
