import { describe, expect, test } from "vitest";
import { mountedIn } from "../../../src/listen/mounted.js";
import { type Placing, placeAll } from "../../../src/place/place.js";
import { type Parts, room } from "../../rooms/build.js";
import { findingsOf } from "../../rooms/job.js";
import { TOO_MANY_PLACES } from "../../rooms/too-much.js";

/*
 * More best places than one run looks for: those that are found stand, the others say that they were not looked for, and
 * once those found are written into the file the next run finds more.
 */

/** The file with the places written into it, as `place --write` does. */
const written = (said: Parts, { placed }: Placing): Parts => {
  const at = new Map(placed.map(({ mounted, tapes }) => [mounted.speaker.id, tapes]));
  return {
    ...said,
    speakers: (said.speakers as readonly Parts[]).map((speaker) => {
      const tapes = at.get(String(speaker.id));
      if (tapes === undefined) return speaker;
      return {
        ...speaker,
        at: Object.fromEntries(tapes.map(({ from, mm }) => [from, `${mm.toFixed(3)} mm`])),
      };
    }),
  };
};

const ids = ({ unplaced }: Placing): readonly string[] => unplaced.map(({ speaker }) => speaker.id);

describe("more best places than one run looks for", () => {
  const first = placeAll(room(TOO_MANY_PLACES));

  test("the first ones of the file are found, the others say that nobody looked", () => {
    expect(first.placed.length).toBeGreaterThan(20);
    expect(new Set(first.unplaced.map(({ because }) => because))).toEqual(new Set(["not-looked-for"]));
    expect(first.placed.length + first.unplaced.length).toBe(200);
  });

  test("the same file has the same answer", () => {
    expect(ids(placeAll(room(TOO_MANY_PLACES)))).toEqual(ids(first));
  });

  test("with those that were found in the file, the next runs find more", () => {
    let said = TOO_MANY_PLACES;
    let placing = first;
    for (const run of ["second", "third"]) {
      said = written(said, placing);
      const next = placeAll(room(said));
      expect(next.placed.length, `the ${run} run`).toBeGreaterThan(0);
      expect(next.placed.length + next.unplaced.length).toBe(placing.unplaced.length);
      placing = next;
    }
    const all = room(written(said, placing));
    expect(mountedIn(all)).toHaveLength(200 - placing.unplaced.length);
    expect(findingsOf(written(said, placing)).filter(({ code }) => code === "openings-too-close")).toEqual(
      [],
    );
  });
});

/** A hall of 40 by 60 m with a hundred joists: as much as anybody builds. */
const largeHall = (hold: (index: number) => Parts): Parts => ({
  room: { width: "40 m", length: "60 m", height: "9 m" },
  framing: {
    ceiling: { at: null, first: "600 mm", spacing: "600 mm" },
    ...{ left: null, right: null, front: null, back: null },
  },
  seats: [{ name: "middle", at: { left: "20 m", front: "30 m" }, ear: "1.2 m", reference: true }],
  speakers: Array.from({ length: 400 }, (_, index) => ({
    ...{ id: `S${index}`, model: "tilted", at: "best" },
    channel: ["U+045", "U-045", "U+135", "U-135"][index % 4] ?? "",
    ...hold(index),
  })),
});

test.each([
  {
    what: "in rows",
    hold: (index: number) => ({ hold: { front: `${300 + 600 * Math.floor(index / 4)} mm` } }),
  },
  { what: "as they like", hold: () => ({}) },
])("400 in a large hall, $what, are all looked for", ({ hold }) => {
  expect(placeAll(room(largeHall(hold))).placed).toHaveLength(400);
});
