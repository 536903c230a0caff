import { afterAll, describe, expect, test } from "vitest";
import { type Parts, roomText } from "../rooms/build.js";
import { ownFolder } from "./command.js";
import { asked, inTime, noMoreQuestions, roomIn } from "./fuzz/asked.js";

/* Two seconds also for the cables of as many loudspeakers as a room file may list, among as many things in their way. */

afterAll(noMoreQuestions);

const WIDTH_MM = 40_000;
const LENGTH_MM = 60_000;
const MOST_OBSTRUCTIONS = 250;
const MOST_LOUDSPEAKERS = 500;
const EVERY_600 = {
  member: { width: "45 mm", depth: "120 mm" },
  first: "600 mm",
  spacing: "600 mm",
  at: null,
};

/** In the middle of a bay, 20 to a row; no two of them stand in one place. */
const speakers: readonly Parts[] = Array.from({ length: MOST_LOUDSPEAKERS }, (_, index) => ({
  id: `S${index}`,
  at: { left: `${1000 + 2000 * (index % 20)} mm`, front: `${2700 + 1800 * Math.floor(index / 20)} mm` },
}));

interface Size {
  readonly left: number;
  readonly front: number;
  readonly width: number;
  readonly length: number;
}

const boxes = (size: (index: number) => Size): readonly Parts[] =>
  Array.from({ length: MOST_OBSTRUCTIONS }, (_, index) => {
    const { left, front, width, length } = size(index);
    return {
      ...{ name: `box ${index}`, on: "ceiling" },
      corner: { left: `${left} mm`, front: `${front} mm` },
      opposite: { left: `${left + width} mm`, front: `${front + length} mm` },
    };
  });

const hall = (obstructions: readonly Parts[], more: Parts = {}): string =>
  roomText({
    room: { width: `${WIDTH_MM} mm`, length: `${LENGTH_MM} mm`, height: "4 m" },
    framing: {
      ceiling: EVERY_600,
      ...{ left: EVERY_600, right: EVERY_600, front: EVERY_600, back: EVERY_600 },
    },
    seats: [{ name: "middle", at: { left: "20 m", front: "30 m" }, ear: "1.2 m", reference: true }],
    equipment: { at: { left: "300 mm", front: "300 mm" }, up: "1 m" },
    obstructions,
    speakers,
    ...more,
  });

/** Places that follow no grid: no two lie on one line. */
const scattered = (index: number, most: number, by: number): number => (index * by) % most;

describe("the cables of 500 loudspeakers among 250 obstructions", () => {
  test.each([
    {
      what: "small ones all over the ceiling, no two of them in one line",
      text: hall(
        boxes((index) => ({
          left: scattered(index, 39_000, 7919),
          front: scattered(index, 59_000, 27_457),
          width: 150 + (index % 97),
          length: 150 + (index % 89),
        })),
      ),
    },
    {
      what: "in a line from wall to wall that overlap each other, but for one gap",
      text: hall(
        boxes((index) => ({
          left: 500 + Math.round(157 * index),
          front: 31_000 + (index % 50),
          width: 200,
          length: 300,
        })),
      ),
    },
    {
      what: "all of them beside one loudspeaker",
      text: hall(
        boxes((index) => ({
          left: 21_200 + scattered(index, 1500, 719),
          front: 30_000 + scattered(index, 1300, 877),
          width: 20,
          length: 20,
        })),
      ),
    },
    {
      what: "under framing that nobody measured",
      text: hall(
        boxes((index) => ({
          left: scattered(index, 39_000, 7919),
          front: scattered(index, 59_000, 27_457),
          width: 200,
          length: 150,
        })),
        { framing: { ceiling: null } },
      ),
    },
  ])("$what", async ({ text }) => {
    const folder = ownFolder();
    roomIn(folder, "baymark: 1\n");
    // The program's first answer also waits for the program.
    await asked(folder, "check", "room.yaml");
    roomIn(folder, text);
    const answer = await inTime(folder, "report", "room.yaml", "--json");
    const { cabling, speakers: told } = JSON.parse(answer.out);
    expect(told).toHaveLength(MOST_LOUDSPEAKERS);
    expect(cabling.unreached).toEqual([]);
    expect(told.every(({ cable }: { cable: unknown }) => cable !== null)).toBe(true);
  });
});
