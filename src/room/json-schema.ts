import * as z from "zod";
import { roomFileSchema } from "./schema.js";

/** The JSON Schema of the room file as a person types it, for editors; made from the schema that reads it. */
export function roomJsonSchema(): z.core.JSONSchema.BaseSchema {
  return z.toJSONSchema(
    roomFileSchema(() => true),
    { io: "input" },
  );
}
