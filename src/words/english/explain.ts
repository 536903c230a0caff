export const explain = {};
