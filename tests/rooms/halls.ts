import fc from "fast-check";
import type { Parts } from "./build.js";

/*
 * Halls that are filled evenly: metric boxes with joists, a straight model, and things in the way.
 */

const mm = (value: number): string => `${value} mm`;
const whole = (least: number, most: number) => fc.integer({ min: least, max: most });

export interface HallSize {
  readonly width: number;
  readonly length: number;
}

export const STRAIGHT: Parts = {
  opening: { round: "160 mm" },
  flange: { round: "190 mm" },
  depth: "90 mm",
  clamp_reach: "12 mm",
  coverage: "90 deg",
  sensitivity: "87 dB",
};

/** A hall with its one joist at the far wall, out of everybody's way; ears 1787.5 mm under the board. */
export const bareHall = ({ width, length }: HallSize, area: Parts = {}, rest: Parts = {}): Parts => ({
  room: { width: mm(width), length: mm(length), height: "3 m" },
  framing: { ceiling: { at: [mm(length)] }, left: null, right: null, front: null, back: null },
  models: { straight: STRAIGHT },
  seats: [
    { name: "middle", at: { left: mm(width / 2), front: mm(length / 2) }, ear: "1.2 m", reference: true },
  ],
  areas: [{ name: "hall", on: "ceiling", model: "straight", ear: "1.2 m", ...area }],
  ...rest,
});

const every = (spacing: number, endMm: number, first: number): readonly string[] => [
  ...Array.from({ length: Math.ceil((endMm - first) / spacing) }, (_, index) => first + index * spacing)
    .filter((at) => at < endMm - 40)
    .map(mm),
  mm(endMm),
];

const obstruction = ({ width, length }: HallSize): fc.Arbitrary<Parts> =>
  fc
    .record({
      left: whole(0, width),
      front: whole(0, length),
      across: whole(60, 900),
      along: whole(60, 1800),
    })
    .map(({ left, front, across, along }) => ({
      name: "duct",
      on: "ceiling",
      keep: "30 mm",
      corner: { left: mm(left), front: mm(front) },
      opposite: { left: mm(left + across), front: mm(front + along) },
    }));

/** A hall of some 10 to 60 loudspeakers under joists at random, with ducts and one loudspeaker of another kind. */
export const randomHall: fc.Arbitrary<Parts> = fc
  .record({ width: whole(4000, 9000), length: whole(5000, 14_000) })
  .chain((size) =>
    fc
      .record({
        run: fc.constantFrom("left-right", "front-back"),
        spacing: fc.constantFrom(400, 488, 600, 610),
        first: whole(100, 590),
        pattern: fc.constantFrom("square", "hexagon"),
        stated: fc.option(whole(1100, 2600)),
        ducts: fc.array(obstruction(size), { maxLength: 3 }),
        other: fc.record({ left: whole(300, size.width - 300), front: whole(300, size.length - 300) }),
      })
      .map(({ run, spacing, first, pattern, stated, ducts, other }) => {
        const [from, end] = run === "left-right" ? ["front", size.length] : ["left", size.width];
        return {
          ...bareHall(size, {
            pattern,
            ...(stated === null ? {} : { spacing: mm(stated) }),
          }),
          framing: {
            ceiling: {
              run,
              from,
              member: { width: "45 mm", depth: "220 mm" },
              at: every(spacing, Number(end), first),
            },
            left: null,
            right: null,
            front: null,
            back: null,
          },
          obstructions: ducts,
          speakers: [{ id: "X", model: "round", at: { left: mm(other.left), front: mm(other.front) } }],
        };
      }),
  );
