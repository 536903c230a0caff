import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Item, Window } from "../../src/drawing/drawing.js";
import { placeBlock, seekBlock, spacesFor, type Writing } from "../../src/drawing/free-block.js";
import { type Ground, groundOf, isFree, NEAR_MM } from "../../src/drawing/free-place.js";
import { circle, line, point } from "../../src/drawing/pen.js";

const WITHIN = { x: -90, y: -120, widthMm: 180, heightMm: 240 };
const ABOUT = point(10, -20);
const PARTS = spacesFor([], groundOf([], WITHIN), ABOUT).parts.map(({ box }) => box);

const along = fc.integer({ min: -130, max: 130 });
const long = fc.double({ min: 1, max: 90, noNaN: true });
const spot = fc.record({ x: along, y: along });
const box: fc.Arbitrary<Window> = fc.record({ x: along, y: along, widthMm: long, heightMm: long });
const ink: fc.Arbitrary<Item> = fc.oneof(
  fc.tuple(spot, spot).map(([from, to]) => line(from, to)),
  fc.tuple(spot, long).map(([centre, mm]) => circle(point(centre.x, centre.y), mm / 2)),
);
/** Ink in every corner of the parts, in half of the grounds, so that no block stands in one. */
const CORNERED = PARTS.flatMap(({ x, y, widthMm, heightMm }) =>
  [x, x + widthMm].flatMap((right) => [y, y + heightMm].map((down) => circle(point(right, down), 2))),
);
const grounds = fc
  .tuple(fc.constantFrom([], CORNERED), fc.array(ink, { maxLength: 3 }), fc.array(box, { maxLength: 6 }))
  .map(([corners, items, taken]) => groundOf([...corners, ...items], WITHIN, taken));

/** Words that fill an area: the narrower they are, the higher; a little more than is known beforehand. */
const writings = fc
  .tuple(
    fc.integer({ min: 200, max: 12_000 }),
    fc.uniqueArray(fc.integer({ min: 20, max: 150 }), { minLength: 1 }),
  )
  .map(
    ([areaMm, widthsMm]): Writing => ({
      widthsMm,
      leastHeightMm: (widthMm) => areaMm / widthMm,
      write: (widthMm) => ({ heightMm: (1.2 * areaMm) / widthMm, draw: () => [] }),
    }),
  );

/** Every place of the kind looked at in turn, each by itself. */
function plainly(
  placesIn: (part: Window, widthMm: number, heightMm: number) => readonly { x: number; y: number }[],
  { widthsMm = [], write }: Writing,
  ground: Ground,
): Window | null {
  for (const part of PARTS) {
    for (const widthMm of widthsMm) {
      const { heightMm } = write(widthMm);
      const places = placesIn(part, widthMm, heightMm).map(({ x, y }) => ({ x, y, widthMm, heightMm }));
      const free = places.find((place) => isFree(place, ground));
      if (free !== undefined) return free;
    }
  }
  return null;
}

const cornersAndBeside =
  ({ taken }: Ground) =>
  ({ x, y, ...part }: Window, widthMm: number, heightMm: number) => [
    { x, y },
    { x: x + part.widthMm - widthMm, y },
    { x, y: y + part.heightMm - heightMm },
    { x: x + part.widthMm - widthMm, y: y + part.heightMm - heightMm },
    ...taken.flatMap((by) => [
      { x: by.x, y: by.y + by.heightMm + NEAR_MM },
      { x: by.x + by.widthMm + NEAR_MM, y: by.y },
      { x: by.x, y: by.y - NEAR_MM - heightMm },
      { x: by.x - NEAR_MM - widthMm, y: by.y },
    ]),
  ];

const everyFourMm = ({ x, y, ...part }: Window, widthMm: number, heightMm: number) => {
  const places: { x: number; y: number }[] = [];
  for (let down = 0; down <= part.heightMm - heightMm; down += 4) {
    for (let across = 0; across <= part.widthMm - widthMm; across += 4)
      places.push({ x: x + across, y: y + down });
  }
  return places;
};

describe("room for a block of words", () => {
  it("is found where looking at every place finds it first", () => {
    const found = { corner: 0, anywhere: 0, none: 0 };
    fc.assert(
      fc.property(grounds, writings, (ground, writing) => {
        const spaces = spacesFor([writing], ground, ABOUT);
        const corner = placeBlock(writing, spaces)?.spaces.ground.taken.at(-1) ?? null;
        expect(corner).toEqual(plainly(cornersAndBeside(ground), writing, ground));
        const anywhere = seekBlock(writing, spaces)?.spaces.ground.taken.at(-1) ?? null;
        expect(anywhere).toEqual(plainly(everyFourMm, writing, ground));
        if (corner !== null) found.corner += 1;
        else if (anywhere !== null) found.anywhere += 1;
        else found.none += 1;
      }),
      { numRuns: 300 },
    );
    expect(Math.min(...Object.values(found)), JSON.stringify(found)).toBeGreaterThan(0);
  });
});
