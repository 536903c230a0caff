import fc from "fast-check";
import { expect, test } from "vitest";
import type { Job, Opening } from "../../src/job.js";
import { howMany } from "../how-many.js";
import { type Parts, room, type Value } from "../rooms/build.js";
import { answer } from "../rooms/job.js";
import { randomRoom } from "../rooms/random.js";

/*
 * A room and its mirror image, left for right, must be answered by mirror images: the same findings with the same
 * figures, walls exchanged; azimuths and arrows turned the other way.
 */

const OTHER: Readonly<Record<string, string>> = { left: "right", right: "left" };
const swapped = (text: string): string => OTHER[text] ?? text;

function mirror(value: Value): Value {
  if (typeof value === "string") return swapped(value);
  if (Array.isArray(value)) return value.map((each: Value) => mirror(each));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [swapped(key), mirror(each)]));
}

const mirrorParts = (parts: Parts): Parts => mirror(parts) as Parts;

/**
 * Numbers to a tenth of a micron; what is left of a nought is a nought. Sixty-fourths of an inch end in a half of that,
 * so where it is cut lies beside them.
 */
function rounded(value: unknown): unknown {
  if (typeof value === "number") return Math.round(value * 1e4 + 0.123) / 1e4 + 0;
  if (Array.isArray(value)) return value.map(rounded);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, rounded(each)]));
}

const swappedDeep = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(rounded(value)).replaceAll(/"(left|right)"/gu, (_, side: string) => `"${swapped(side)}"`),
  );

/** What is compared of a room's findings: all but the fix, of which two may lie equally near. */
const told = (one: Job) =>
  one.findings.map(({ code, level, speaker, surface, path, figures }) => ({
    code,
    level,
    speaker,
    surface,
    path,
    figures,
  }));

function fixDistances(one: Job): (number | null)[] {
  return one.findings.map(({ fix, speaker }) => {
    const centre = one.openings.find((opening) => opening.speaker.id === speaker)?.centre;
    return fix === null || centre === undefined ? null : Math.hypot(fix.u - centre.u, fix.v - centre.v);
  });
}

const stands = ({ gap, sides, bay, aim, mustNotCut, direction }: Opening) => ({
  gap,
  sides,
  bay,
  mustNotCut,
  elevation: direction.elevationDeg,
  distance: direction.distanceMm,
  offAxis: aim?.offAxisDeg,
  sight: aim?.sight,
  fromRun: aim?.fromRun,
});

test("mirrored rooms are answered by mirror images", () => {
  let findings = 0;
  fc.assert(
    fc.property(randomRoom, (parts) => {
      const plain = answer(room(mirrorParts(mirrorParts(parts))));
      const image = answer(room(mirrorParts(parts)));
      findings += plain.findings.length;
      const order = (one: unknown): string => JSON.stringify(one);
      const [ofPlain, ofImage] = [rounded(told(plain)), swappedDeep(told(image))] as unknown[][];
      expect([...(ofImage ?? [])].map(order).sort()).toEqual([...(ofPlain ?? [])].map(order).sort());
      plain.openings.forEach((opening, index) => {
        const other = image.openings[index];
        if (other === undefined) throw new Error("an opening is missing");
        expect(swappedDeep(stands(other))).toEqual(JSON.parse(JSON.stringify(rounded(stands(opening)))));
        const azimuths = opening.direction.azimuthDeg + other.direction.azimuthDeg;
        expect(Math.min(Math.abs(azimuths), Math.abs(azimuths - 360))).toBeLessThan(1e-9);
        const arrows = (opening.aim?.arrowDeg ?? 0) + (other.aim?.arrowDeg ?? 0);
        expect(Math.min(Math.abs(arrows), Math.abs(arrows - 360))).toBeLessThan(1e-9);
      });
      const sorted = (one: Job): number[] =>
        fixDistances(one)
          .map((distance) => distance ?? -1)
          .sort((a, b) => a - b);
      const [a, b] = [sorted(plain), sorted(image)];
      a.forEach((distance, index) => {
        // A mark either way: which of two equally near ones is taken may differ.
        expect(Math.abs(distance - (b[index] ?? Number.NaN))).toBeLessThan(1.5);
      });
    }),
    { numRuns: howMany(25) },
  );
  expect(findings).toBeGreaterThan(50);
});
