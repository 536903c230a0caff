export const commands = {};
