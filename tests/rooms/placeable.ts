import fc from "fast-check";
import type { Parts } from "./build.js";

/*
 * Random rooms whose loudspeakers ask for the best place: boxes of whole millimetres with joists and studs at random,
 * obstructions overhead and on the left wall, any of four systems, the seat anywhere in the middle part of the room.
 */

const mm = (value: number): string => `${value} mm`;
const whole = (least: number, most: number) => fc.integer({ min: least, max: most });

export interface RoomSize {
  readonly width: number;
  readonly length: number;
  readonly height: number;
}

const sizes: fc.Arbitrary<RoomSize> = fc.record({
  width: whole(2400, 5600),
  length: whole(2800, 6800),
  height: whole(2200, 3400),
});

/** Members from a first one on at a spacing, moved a little each, to the far wall. */
const members = (extentMm: number): fc.Arbitrary<readonly string[]> =>
  fc
    .record({
      first: whole(40, 600),
      spacing: fc.constantFrom(305, 400, 406, 488, 600, 610, 800),
      astray: fc.array(whole(-25, 25), { minLength: 24, maxLength: 24 }),
    })
    .map(({ first, spacing, astray }) => {
      const count = Math.floor((extentMm - 30 - first) / spacing);
      const places = Array.from(
        { length: count },
        (_, index) => first + index * spacing + (astray[index] ?? 0),
      );
      return [...places.filter((place) => place < extentMm - 25), extentMm].map(mm);
    });

const member = fc.constantFrom<Parts>(
  { width: "38 mm", depth: "235 mm" },
  { width: "45 mm", depth: "220 mm" },
  { width: "89 mm", depth: "302 mm" },
);

const wallFraming = (from: string, extentMm: number): fc.Arbitrary<Parts> =>
  members(extentMm).map((at) => ({ member: { width: "45 mm", depth: "120 mm" }, from, at }));

/** Across the joists, under all of the ceiling. */
const strapping = (run: string): fc.Arbitrary<Parts> =>
  fc
    .record({
      kind: fc.constantFrom("strap", "channel"),
      width: fc.constantFrom(38, 63),
      first: whole(30, 400),
      spacing: fc.constantFrom(406, 488, 610),
    })
    .map(({ kind, width, first, spacing }) => ({
      kind,
      depth: "19 mm",
      width: mm(width),
      from: run === "left-right" ? "left" : "front",
      first: mm(first),
      spacing: mm(spacing),
    }));

const ceilingFraming = ({ width, length }: RoomSize): fc.Arbitrary<Parts> =>
  fc
    .constantFrom(
      { run: "left-right", from: "front", extent: length },
      { run: "left-right", from: "back", extent: length },
      { run: "front-back", from: "left", extent: width },
    )
    .chain(({ extent, run, from }) =>
      fc
        .record({ member, at: members(extent), strapping: fc.option(strapping(run), { freq: 2 }) })
        .map(({ strapping: straps, ...one }): Parts => ({ run, from, ...one, strapping: straps })),
    );

const duct = ({ width, length }: RoomSize): fc.Arbitrary<Parts> =>
  fc
    .record({
      left: whole(0, width),
      front: whole(0, length),
      across: whole(60, 1200),
      along: whole(60, 2500),
    })
    .map(({ left, front, across, along }) => ({
      name: "duct",
      on: "ceiling",
      keep: "30 mm",
      corner: { left: mm(left), front: mm(front) },
      opposite: { left: mm(left + across), front: mm(front + along) },
    }));

const light = ({ width, length }: RoomSize): fc.Arbitrary<Parts> =>
  fc
    .record({ left: whole(0, width), front: whole(0, length), round: whole(60, 500), keep: whole(0, 150) })
    .map(({ left, front, round, keep }) => ({
      name: "light",
      on: "ceiling",
      keep: mm(keep),
      at: { left: mm(left), front: mm(front) },
      round: mm(round),
    }));

const box = ({ length, height }: RoomSize): fc.Arbitrary<Parts> =>
  fc
    .record({ front: whole(0, length), up: whole(0, height), round: whole(60, 300) })
    .map(({ front, up, round }) => ({
      name: "box",
      on: "left",
      at: { front: mm(front), up: mm(up) },
      round: mm(round),
    }));

/** Loudspeakers of a system, each on a surface of its own kind: upper ones overhead, the others on walls. */
const CHANNELS: Readonly<Record<string, readonly string[]>> = {
  "4+7+0": ["U+045", "U-045", "U+135", "U-135", "M+090", "M-090", "M+135", "M+000", "M+030"],
  "4+5+0": ["U+030", "U-030", "U+110", "U-110", "M+110", "M-110", "M-030"],
  "9+10+3": ["U+045", "U+090", "U+000", "T+000", "U-135", "U+180", "M+090", "M+180", "M-135", "B+000"],
  "3+7+0": ["U+045", "U-045", "UH+180", "M+135", "M-090"],
};

function surfaceFor(channel: string): string {
  if (/^[UT]/u.test(channel)) return "ceiling";
  const deg = Number(channel.slice(1));
  if (Math.abs(deg) < 45) return "front";
  if (Math.abs(deg) > 150) return "back";
  return deg > 0 ? "left" : "right";
}

const loudspeakers = fc.constantFrom(...Object.keys(CHANNELS)).chain((layout) =>
  fc
    .record({
      channels: fc.subarray([...(CHANNELS[layout] ?? [])], { minLength: 1, maxLength: 5 }),
      overhead: fc.constantFrom("round", "tilted", "upright"),
    })
    .map(
      ({ channels, overhead }): Parts => ({
        layout,
        speakers: channels.map((channel, index) => {
          const on = surfaceFor(channel);
          return { id: `S${index}`, channel, on, model: on === "ceiling" ? overhead : "upright", at: "best" };
        }),
      }),
    ),
);

/** Sheets of board overhead, with joints at random. */
const sheets: fc.Arbitrary<Parts> = fc
  .record({
    from: fc.constantFrom("front", "left"),
    first: whole(100, 1200),
    ends: whole(100, 2400),
    stagger: whole(0, 1200),
  })
  .map(({ from, first, ends, stagger }) => ({
    from,
    first: mm(first),
    width: "1200 mm",
    length: "2400 mm",
    ends: { from: from === "front" ? "left" : "front", first: mm(ends), stagger: mm(stagger) },
  }));

/** Parts of a room file whose loudspeakers are each decided by itself. */
export const placeableRoom: fc.Arbitrary<Parts> = sizes.chain((size) =>
  fc
    .record({
      ceiling: ceilingFraming(size),
      front: wallFraming("left", size.width),
      back: wallFraming("left", size.width),
      left: wallFraming("front", size.length),
      right: wallFraming("front", size.length),
      obstructions: fc.array(fc.oneof(duct(size), light(size), box(size)), { maxLength: 5 }),
      seat: fc.record({
        across: fc.double({ min: 0.25, max: 0.75, noNaN: true }),
        along: fc.double({ min: 0.25, max: 0.75, noNaN: true }),
        ear: whole(900, 1300),
      }),
      loudspeakers,
      clear: whole(0, 20),
      sheets: fc.option(sheets, { freq: 1 }),
    })
    .map(({ obstructions, seat, loudspeakers: asked, clear, sheets: joints, ...framing }) => ({
      board: { sheets: joints === null ? null : { ceiling: joints } },
      room: { width: mm(size.width), length: mm(size.length), height: mm(size.height) },
      framing,
      obstructions,
      seats: [
        {
          name: "middle",
          at: {
            left: mm(Math.round(size.width * seat.across)),
            front: mm(Math.round(size.length * seat.along)),
          },
          ear: mm(seat.ear),
          reference: true,
        },
      ],
      checks: { clear: mm(clear), line: 0 },
      ...asked,
    })),
);
