export const template = {};
