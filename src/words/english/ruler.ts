export const ruler = {};
