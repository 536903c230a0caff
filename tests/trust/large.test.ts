import { afterAll, describe, expect, test } from "vitest";
import { type Parts, roomText } from "../rooms/build.js";
import { ownFolder } from "./command.js";
import { asked, inTime, noMoreQuestions, roomIn } from "./fuzz/asked.js";

/* Two seconds also for as many loudspeakers as a room file may list, with the cables of all of them. */

afterAll(noMoreQuestions);

const WIDTH_MM = 40_000;
const LENGTH_MM = 60_000;
const EVERY_600 = {
  member: { width: "45 mm", depth: "120 mm" },
  first: "600 mm",
  spacing: "600 mm",
  at: null,
};
const ON_CEILING = 400;
const ON_EACH_WALL = 25;

/** In twenty to a row, in the middle of a bay; every so many of them `offMm` from there, on a joist. */
const overhead = (offMm: number, everyNth: number): readonly Parts[] =>
  Array.from({ length: ON_CEILING }, (_, index) => ({
    id: `S${index}`,
    at: {
      left: `${1000 + 2000 * (index % 20)} mm`,
      front: `${2700 + 2400 * Math.floor(index / 20) + (index % everyNth === 0 ? offMm : 0)} mm`,
    },
  }));

const onWalls: readonly Parts[] = ["front", "back", "left", "right"].flatMap((wall) => {
  const from = wall === "front" || wall === "back" ? "left" : "front";
  return Array.from({ length: ON_EACH_WALL }, (_, index) => ({
    ...{ id: `${wall}-${index}`, on: wall, model: "upright" },
    at: { [from]: `${900 + 1200 * index} mm`, up: "1200 mm" },
  }));
});

const hall = (speakers: readonly Parts[]): string =>
  roomText({
    room: { width: `${WIDTH_MM} mm`, length: `${LENGTH_MM} mm`, height: "4 m" },
    framing: {
      ceiling: EVERY_600,
      ...{ left: EVERY_600, right: EVERY_600, front: EVERY_600, back: EVERY_600 },
    },
    seats: [{ name: "middle", at: { left: "20 m", front: "30 m" }, ear: "1.2 m", reference: true }],
    equipment: { at: { left: "300 mm", front: "300 mm" }, up: "1 m" },
    speakers,
  });

describe("500 loudspeakers with their cables", () => {
  test.each([
    { what: "all of them clear", text: hall([...overhead(0, 1), ...onWalls]), code: 0 },
    { what: "every other one over a joist", text: hall([...overhead(300, 2), ...onWalls]), code: 1 },
    { what: "every one over a joist", text: hall([...overhead(300, 1), ...onWalls]), code: 1 },
  ])("$what", async ({ text, code }) => {
    const folder = ownFolder();
    roomIn(folder, "baymark: 1\n");
    // The program's first answer also waits for the program.
    await asked(folder, "check", "room.yaml");
    roomIn(folder, text);
    const answer = await inTime(folder, "check", "room.yaml", "--json");
    expect(answer.code).toBe(code);
    expect(JSON.parse(answer.out).speakers).toHaveLength(ON_CEILING + 4 * ON_EACH_WALL);
  });
});
