export const strips = {};
