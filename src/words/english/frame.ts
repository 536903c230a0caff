export const frame = {};
