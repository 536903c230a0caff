import fc from "fast-check";
import type { Parts } from "./build.js";

/*
 * Rooms for properties: a metric box with random sizes, framing, obstructions and openings, on ceilings and walls,
 * with tapes on either kind of face. Positions are in whole millimetres and may well cut, block or leave the surface.
 */

const mm = (value: number): string => `${value} mm`;
const whole = (least: number, most: number) => fc.integer({ min: least, max: most });

const layout = (extentMm: number): fc.Arbitrary<Parts> =>
  fc.oneof(
    fc
      .record({ first: whole(30, 600), spacing: fc.constantFrom(305, 400, 406, 488, 600, 610) })
      .map(({ first, spacing }): Parts => ({ first: mm(first), spacing: mm(spacing), at: null })),
    // As found: the last member may stand well before the far wall, beyond it nobody knows.
    fc
      .array(whole(320, 640), { minLength: 2, maxLength: 8 })
      .map((steps) => steps.map((_, index) => steps.slice(0, index + 1).reduce((sum, step) => sum + step, 0)))
      .map((places) => ({ at: places.filter((place) => place < extentMm).map(mm) }))
      .filter(({ at }) => at.length > 0),
  );

const member = fc
  .record({ width: fc.constantFrom(38, 45, 89), depth: fc.constantFrom(89, 140, 235) })
  .map(({ width, depth }): Parts => ({ width: mm(width), depth: mm(depth) }));

interface Size {
  readonly width: number;
  readonly length: number;
  readonly height: number;
}

const wallFraming = (from: string, extentMm: number): fc.Arbitrary<Parts> =>
  fc.record({ member, layout: layout(extentMm) }).map((one) => ({ member: one.member, from, ...one.layout }));

const ceilingFraming = ({ width, length }: Size): fc.Arbitrary<Parts> =>
  fc
    .constantFrom(
      { run: "left-right", from: "front", extent: length },
      { run: "left-right", from: "back", extent: length },
      { run: "front-back", from: "left", extent: width },
      { run: "front-back", from: "right", extent: width },
    )
    .chain(({ extent, ...way }) =>
      fc.record({ member, layout: layout(extent) }).map((one) => ({
        ...way,
        member: one.member,
        ...one.layout,
      })),
    );

const onCeiling = ({ width, length }: Size) =>
  fc
    .record({ side: fc.constantFrom("left", "right"), across: whole(0, width), along: whole(0, length) })
    .map(({ side, across, along }): Parts => ({ [side]: mm(across), front: mm(along) }));

const obstruction = (size: Size): fc.Arbitrary<Parts> => {
  const common = fc.record({ keep: whole(0, 80), behind: fc.option(whole(20, 120)) }).map(
    ({ keep, behind }): Parts => ({
      name: "duct",
      on: "ceiling",
      keep: mm(keep),
      ...(behind === null ? {} : { behind: mm(behind) }),
    }),
  );
  const round = fc
    .record({ at: onCeiling(size), round: whole(40, 300) })
    .map((one): Parts => ({ at: one.at, round: mm(one.round) }));
  const rectangle = fc
    .record({ left: whole(0, 2000), front: whole(0, 3000), w: whole(50, 900), l: whole(50, 900) })
    .map(
      ({ left, front, w, l }): Parts => ({
        corner: { left: mm(left), front: mm(front) },
        opposite: { left: mm(left + w), front: mm(front + l) },
      }),
    );
  return fc.tuple(common, fc.oneof(round, rectangle)).map(([one, form]) => ({ ...one, ...form }));
};

const speaker = (size: Size): fc.Arbitrary<Parts> =>
  fc.oneof(
    { weight: 3, arbitrary: onCeiling(size).map((at): Parts => ({ on: "ceiling", at })) },
    fc
      .record({ left: whole(0, size.width), up: whole(0, size.height) })
      .map(({ left, up }): Parts => ({ on: "front", at: { left: mm(left), up: mm(up) } })),
    fc
      .record({ front: whole(0, size.length), down: whole(0, size.height) })
      .map(({ front, down }): Parts => ({ on: "left", at: { front: mm(front), down: mm(down) } })),
  );

const sizes: fc.Arbitrary<Size> = fc.record({
  width: whole(2600, 5000),
  length: whole(3400, 6000),
  height: whole(2200, 3200),
});

/** Parts of a room file with one to four openings. */
export const randomRoom: fc.Arbitrary<Parts> = sizes.chain((size) =>
  fc
    .record({
      measuredTo: fc.constantFrom("framing", "finish"),
      ceiling: ceilingFraming(size),
      front: wallFraming("left", size.width),
      left: wallFraming("front", size.length),
      obstructions: fc.array(obstruction(size), { maxLength: 3 }),
      speakers: fc.array(fc.tuple(speaker(size), fc.constantFrom("round", "tilted", "upright")), {
        minLength: 1,
        maxLength: 4,
      }),
      clear: whole(0, 30).map(mm),
    })
    .map(({ measuredTo, obstructions, speakers, clear, ...framing }) => ({
      room: {
        width: mm(size.width),
        length: mm(size.length),
        height: mm(size.height),
        measured_to: measuredTo,
      },
      framing: { ...framing, right: null, back: null },
      seats: [{ name: "middle", at: { left: "1.3 m", front: "1.7 m" }, ear: "1.2 m", reference: true }],
      obstructions,
      checks: { clear },
      speakers: speakers.map(([one, model], index) => ({ id: `S${index}`, model, ...one })),
    })),
);
