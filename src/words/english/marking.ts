export const marking = {};
