import { afterAll, describe, expect, test } from "vitest";
import { type Parts, roomText } from "../rooms/build.js";
import { ownFolder } from "./command.js";
import { asked, inTime, noMoreQuestions, roomIn } from "./fuzz/asked.js";

/* Two seconds also where hundreds want one place, or where next to nothing is clear; see `inTime` for best places. */

afterAll(noMoreQuestions);

const MOST = 500;

/** A hall of 60 x 60 m under a hundred joists. */
const hall = (said: Parts): Parts => ({
  room: { width: "60 m", length: "60 m", height: "4 m" },
  framing: {
    ceiling: { at: null, first: "600 mm", spacing: "600 mm" },
    ...{ left: null, right: null, front: null, back: null },
  },
  seats: [{ name: "middle", at: { left: "20 m", front: "30 m" }, ear: "1.2 m", reference: true }],
  ...said,
});

const speakers = (each: (index: number) => Parts): readonly Parts[] =>
  Array.from({ length: MOST }, (_, index) => ({ id: `S${index}`, ...each(index) }));

const inRows = (index: number): Parts => ({
  at: {
    left: `${1000 + 2400 * (index % 24)} mm`,
    front: `${900 + 2400 * Math.floor(index / 24)} mm`,
  },
});

/** So many side by side over the whole ceiling, with less between them than an opening takes. */
const tiles = (sideMm: number): readonly Parts[] =>
  Array.from({ length: 250 }, (_, index) => {
    const [left, front] = [3800 * (index % 16), 3800 * Math.floor(index / 16)];
    const to = (mm: number): string => `${Math.min(60_000, mm + sideMm)} mm`;
    return {
      ...{ name: `tile ${index}`, on: "ceiling", corner: { left: `${left} mm`, front: `${front} mm` } },
      opposite: { left: to(left), front: to(front) },
    };
  });

async function checked(said: Parts) {
  const folder = ownFolder();
  roomIn(folder, "baymark: 1\n");
  // The program's first answer also waits for the program.
  await asked(folder, "check", "room.yaml");
  roomIn(folder, roomText(said));
  const { code, out } = await inTime(folder, "check", "room.yaml", "--json");
  const findings: readonly { code: string; speaker: string; others?: object }[] = JSON.parse(out).findings;
  return { code, findings };
}

describe("500 loudspeakers", () => {
  test("all in one spot: of each eight others are told, and that there are 491 more", async () => {
    const at = { left: "30 m", front: "30.3 m" };
    const { code, findings } = await checked(hall({ speakers: speakers(() => ({ at })) }));
    expect(code).toBe(1);
    const ofLast = findings.filter((one) => one.code === "openings-too-close" && one.speaker === "S499");
    expect(ofLast).toHaveLength(9);
    expect(ofLast.at(-1)?.others).toEqual({ count: 491, errors: 491 });
  });

  test("at their best places, two and two matched", async () => {
    const pair = (index: number): Parts => ({
      ...{
        at: "best",
        channel: index % 2 === 0 ? "U+045" : "U-045",
        mirror: `S${index % 2 === 0 ? index + 1 : index - 1}`,
      },
    });
    const { code, findings } = await checked(hall({ speakers: speakers(pair) }));
    expect(code).toBe(0);
    expect(findings.filter((one) => one.code === "computed-not-frozen")).toHaveLength(MOST);
  });

  test("at their best places under joists that leave room for none", async () => {
    const framing = {
      ceiling: { at: null, first: "60 mm", spacing: "60 mm", member: { width: "20 mm", depth: "200 mm" } },
    };
    const said = hall({
      speakers: speakers((index) => ({ at: "best", channel: index % 2 === 0 ? "U+045" : "M+030" })),
    });
    const { findings } = await checked({ ...said, framing: { ...(said.framing as Parts), ...framing } });
    expect(findings.filter((one) => one.code === "not-placed-yet")).toHaveLength(MOST);
  });

  test("among as many obstructions as may be, that leave room for none", async () => {
    const { code, findings } = await checked(hall({ obstructions: tiles(3750), speakers: speakers(inRows) }));
    expect(code).toBe(1);
    expect(findings.some((one) => one.code === "opening-meets-obstruction")).toBe(true);
  });

  test("under as many round obstructions, each over all of them", async () => {
    const obstructions = Array.from({ length: 250 }, (_, index) => ({
      ...{ name: `round ${index}`, on: "ceiling", at: { left: "30 m", front: "30 m" }, round: "59 m" },
    }));
    const { code, findings } = await checked(hall({ obstructions, speakers: speakers(inRows) }));
    expect(code).toBe(1);
    expect(new Set(findings.map((one) => one.speaker)).size).toBeGreaterThan(300);
  });
});

test("four areas lie over each other, a fifth is refused with its line", async () => {
  const areas = (count: number): Parts =>
    hall({
      models: { round: { coverage: "90 deg" } },
      areas: Array.from({ length: count }, (_, index) => ({
        ...{
          name: `A${index}`,
          on: "ceiling",
          model: "round",
          ear: "1.2 m",
          spacing: "6.2 m",
          prefix: `P${index}-`,
        },
      })),
    });
  expect((await checked(areas(4))).code).toBe(0);
  const { code, findings } = await checked(areas(5));
  expect(code).toBe(2);
  expect(findings.map((one) => one.code)).toEqual(["area-not-fillable"]);
});
