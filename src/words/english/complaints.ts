export const complaints = {};
