export const cover = {};
