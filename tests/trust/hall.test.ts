import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { roomText } from "../rooms/build.js";
import { STRAIGHT } from "../rooms/halls.js";
import { ownFolder, typed } from "./command.js";

/* A hall of 40 by 60 m under a hundred joists, filled with 384 loudspeakers, all the way to paper. */

const HALL = roomText({
  room: { width: "40 m", length: "60 m", height: "4 m" },
  framing: {
    ceiling: { at: Array.from({ length: 100 }, (_, index) => `${600 * (index + 1)} mm`) },
    left: null,
    right: null,
    front: null,
    back: null,
  },
  models: { straight: { ...STRAIGHT, coverage: "110 deg" } },
  seats: [{ name: "middle", at: { left: "20 m", front: "30 m" }, ear: "1.2 m", reference: true }],
  areas: [{ name: "hall", on: "ceiling", model: "straight", ear: "1.2 m", spacing: "2.6 m" }],
  print: { paper: "A4" },
});

/** Sixteen of 39.975 m at 2.5 m, 24 of 59.975 m at 2.5 m: the fewest that 2.6 m allow. */
const COUNT = 16 * 24;

test("placed, written, found clear, printed, the same the second time", async () => {
  const folder = ownFolder();
  const file = join(folder, "hall.yaml");
  writeFileSync(file, HALL);
  expect((await typed(["place", "hall.yaml", "--write"], { folder })).code).toBe(0);
  const filled = readFileSync(file, "utf8");
  expect(filled.match(/area: hall/gu)).toHaveLength(COUNT);
  expect((await typed(["place", "hall.yaml", "--write"], { folder })).code).toBe(0);
  expect(readFileSync(file, "utf8")).toBe(filled);

  const { areas, findings } = JSON.parse((await typed(["report", "hall.yaml", "--json"], { folder })).out);
  expect(findings).toEqual([]);
  expect(areas[0].speakers).toHaveLength(COUNT);
  expect(areas[0].level.deviation).toBeLessThan(1);

  const { code } = await typed(["print", "hall.yaml", "-o", "packet"], { folder });
  expect(code).toBe(0);
  const drawn = readdirSync(join(folder, "packet", "svg"));
  expect(drawn.filter((name) => name.startsWith("opening-S"))).toHaveLength(COUNT);
  const { pages } = JSON.parse(readFileSync(join(folder, "packet", "packet.json"), "utf8"));
  const templates = pages.filter(({ sheet }: { sheet: string }) => /^(?:template|opening-S\d)/u.test(sheet));
  // One template for all, and at most a page for the boxes to tick.
  expect(templates.length).toBeLessThanOrEqual(2);
}, 300_000);
