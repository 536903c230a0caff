import { readFileSync } from "node:fs";
import { startFile } from "../../../src/room/start.js";
import { FULL_ROOM } from "../../room/full-room.js";
import { exampleRooms } from "../command.js";

/** Room files that can be used, from which the others are made. */
export const GOOD: readonly string[] = [
  ...exampleRooms().map((path) => readFileSync(path, "utf8")),
  FULL_ROOM,
  startFile({ language: "en", units: "imperial" }),
  startFile({ language: "es", units: "metric" }),
];
