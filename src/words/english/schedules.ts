export const schedules = {};
