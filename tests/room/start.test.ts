import { describe, expect, test } from "vitest";
import { parse, stringify } from "yaml";
import { hasGlyph } from "../../src/drawing/coverage.js";
import { answerRoom } from "../../src/job.js";
import { readRoom } from "../../src/room/read.js";
import { resolveRoom } from "../../src/room/resolve.js";
import { startFile } from "../../src/room/start.js";

const KINDS = (["en", "es"] as const).flatMap((language) =>
  (["imperial", "metric"] as const).map((units) => ({ language, units })),
);

describe("the room file to begin from", () => {
  for (const { language, units } of KINDS) {
    const text = startFile({ language, units });

    test(`${language}, ${units}: is read, resolved and checked without an error or a warning`, () => {
      const read = readRoom(text, "start.yaml", { hasGlyph });
      if (!read.ok) throw new Error(JSON.stringify(read.complaints));
      const resolved = resolveRoom(read.file);
      if (!resolved.ok) throw new Error(JSON.stringify(resolved.problems));
      expect(resolved.room).toMatchObject({ units, print: { languages: [language] } });
      expect(resolved.room.speakers).toHaveLength(7);
      const job = answerRoom({
        file: "start.yaml",
        fingerprint: read.fingerprint,
        room: resolved.room,
        locate: read.locate,
      });
      expect(job.openings).toHaveLength(7);
      expect(job.findings.filter(({ level }) => level !== "note")).toEqual([]);
    });

    test(`${language}, ${units}: explains what is not obvious beside it`, () => {
      for (const key of ["measured_to", "width", "height", "clamp_reach", "baffle_tilt"]) {
        const line = text.split("\n").find((each) => each.trimStart().startsWith(`${key}:`));
        expect(line, key).toMatch(/\S +# \S/u);
      }
    });
  }

  for (const { language, units } of KINDS) {
    test(`${language}, ${units}: what is left out in notes can be put in`, () => {
      const text = startFile({ language, units });
      const besides = parse(
        text
          .split("\n")
          .filter((line) => line.startsWith("#   "))
          .map((line) => line.slice(4))
          .join("\n"),
      );
      const { outline, walls, ceilings, run, from, member, strapping, openings } = besides;
      const said = parse(text);
      const { width: _width, length: _length, ...size } = said.room;
      const { ceiling, right, ...framing } = said.framing;
      const { first, spacing } = ceiling;
      const put = (room: object, joists: object, studs: object) => ({
        ...said,
        room: { ...size, ...room },
        framing: { ...framing, ceiling: { ...ceiling, ...joists }, right: { ...right, ...studs } },
        speakers: [],
      });
      const box = { width: said.room.width, length: said.room.length };
      for (const one of [
        put({ outline, walls }, {}, {}),
        put({ ...box, ceilings }, {}, {}),
        put(box, { run, from, first, spacing }, {}),
        put(box, { member }, {}),
        put(box, { strapping }, {}),
        put(box, {}, { openings }),
        put({ outline, walls }, { run, from, member }, { openings }),
      ]) {
        const read = readRoom(stringify(one), "start.yaml", { hasGlyph });
        if (!read.ok) throw new Error(JSON.stringify(read.complaints));
        const resolved = resolveRoom(read.file);
        if (!resolved.ok) throw new Error(JSON.stringify(resolved.problems));
      }
      expect(Object.values(besides)).toHaveLength(8);
    });
  }

  test("says the same in both languages, but for its notes and its own names", () => {
    const bare = (language: "en" | "es"): string =>
      startFile({ language, units: "metric" })
        .replace(/(?<=^| )# .*$/gmu, "")
        .replace(/name: [^,\n]+/gu, "name:")
        .replace(/languages: \[..\]/u, "");
    const squeezed = (text: string): string => text.replace(/\s+/gu, " ");
    expect(squeezed(bare("es"))).toBe(squeezed(bare("en")));
  });
});
