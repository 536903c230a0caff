import type { commands as english } from "../english/commands.js";

export const commands: typeof english = {};
