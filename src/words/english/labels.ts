export const labels = {};
