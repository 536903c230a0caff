/** The room file's own keys for tapes that hook on no wall. */
const KEYS: Readonly<Record<string, string>> = { floor: "up", ceiling: "down" };

/** The key that a tape from a wall, the floor or the ceiling is typed under. */
export const keyOfTape = (from: string): string => KEYS[from] ?? from;
