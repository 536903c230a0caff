import * as z from "zod";

const BETWEEN_KEYS = "\n";

/**
 * A map with these keys and no others. zod tells which keys are too many but not which there are; its message, which
 * no person reads, carries them to `issues.ts`.
 */
export function block<Shape extends z.core.$ZodLooseShape>(shape: Shape) {
  return z.strictObject(shape, {
    error: ({ code }) => (code === "unrecognized_keys" ? Object.keys(shape).join(BETWEEN_KEYS) : undefined),
  });
}

/** The keys that there are, from the message of an issue about one too many. */
export const knownKeys = (message: string): readonly string[] => message.split(BETWEEN_KEYS);

/**
 * A map by the names of surfaces: those of a box, and any that the room gives itself. Whether there is a surface of
 * that name is checked over the whole file.
 */
export const byName = <Shape extends z.core.$ZodLooseShape, Other extends z.core.SomeType>(
  shape: Shape,
  other: Other,
) => z.object(shape).catchall(other);
