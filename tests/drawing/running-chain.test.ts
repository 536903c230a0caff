import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Item, Text } from "../../src/drawing/drawing.js";
import { type RunningMark, runningChain, type Side } from "../../src/drawing/running-chain.js";
import { textBox } from "../../src/drawing/text.js";

const SIDES: readonly Side[] = ["left", "right", "top", "bottom"];

const mark = (atMm: number, words = `${Math.round(atMm * 48)} mm`): RunningMark => ({
  atMm,
  lines: [words],
  face: "regular",
  kind: "mark",
});

const zero: RunningMark = { atMm: 0, lines: ["0 FRONT"], face: "bold", kind: "zero" };

const textsIn = (items: readonly Item[]): Text[] =>
  items.filter((item): item is Text => item.kind === "text");

function overlaps(texts: readonly Text[]): number {
  const boxes = texts.map(textBox);
  const meet = (a: (typeof boxes)[number], b: (typeof boxes)[number]): boolean =>
    a.x < b.x + b.widthMm && b.x < a.x + a.widthMm && a.y < b.y + b.heightMm && b.y < a.y + a.heightMm;
  return boxes.flatMap((box, index) => boxes.slice(index + 1).filter((other) => meet(box, other))).length;
}

const running = (side: Side, marks: readonly RunningMark[], writeMm = 0) =>
  runningChain({ side, marks, fromMm: -5, lengthMm: 110, capMm: 2.5, writeMm });

describe("a running chain", () => {
  it("never lets two figures touch, leaves its range or loses the zero, wherever its marks are", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SIDES),
        fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { maxLength: 40 }),
        fc.constantFrom(0, 15),
        (side, places, writeMm) => {
          const chain = running(side, [zero, ...places.map((at) => mark(at))], writeMm);
          const texts = textsIn(chain.draw(200));
          expect(overlaps(texts)).toBe(0);
          expect(texts.length + chain.dropped).toBe(places.length + 1);
          expect(texts.map(({ text }) => text)).toContain("0 FRONT");
          for (const box of texts.map(textBox)) {
            const [low, high] =
              side === "left" || side === "right"
                ? [box.y, box.y + box.heightMm]
                : [box.x, box.x + box.widthMm];
            expect(low).toBeGreaterThanOrEqual(-5);
            expect(high).toBeLessThanOrEqual(105);
          }
        },
      ),
      { numRuns: 200 },
    );
  });

  it.each(SIDES)("stays in the depth that it says, outward on the %s", (side) => {
    const chain = running(side, [zero, mark(20), mark(21), mark(90)], 15);
    const out = {
      left: (x: number) => 200 - x,
      right: (x: number) => x - 200,
      top: (_: number, y: number) => 200 - y,
      bottom: (_: number, y: number) => y - 200,
    }[side];
    const furthest = chain.draw(200).flatMap((item) => {
      if (item.kind === "text") {
        const { x, y, widthMm, heightMm } = textBox(item);
        return [out(x, y), out(x + widthMm, y + heightMm)];
      }
      if (item.kind === "rectangle") {
        const { corner, widthMm, heightMm } = item;
        return [out(corner.x, corner.y), out(corner.x + widthMm, corner.y + heightMm)];
      }
      return [];
    });
    expect(Math.max(...furthest)).toBeLessThanOrEqual(chain.depthMm + 1e-9);
    expect(Math.max(...furthest)).toBeGreaterThan(chain.depthMm - 1);
  });

  it("has a tick at every mark, exactly, whether its figure had room or not", () => {
    const places = Array.from({ length: 60 }, (_, index) => index * 1.7);
    const chain = running("left", [zero, ...places.slice(1).map((at) => mark(at))]);
    expect(chain.dropped).toBeGreaterThan(0);
    const ticks = chain
      .draw(50)
      .flatMap((item) =>
        item.kind === "line" && item.from.x === 51 && item.to.x === 49 ? [item.from.y] : [],
      );
    expect(ticks).toEqual(places.slice(1));
  });

  it("turns its figures where they do not fit side by side", () => {
    const turned = (count: number): boolean[] =>
      textsIn(
        running("bottom", [zero, ...Array.from({ length: count }, (_, index) => mark(20 + index * 8))]).draw(
          10,
        ),
      ).map(({ turnDeg }) => turnDeg === -90);
    expect(new Set(turned(2))).toEqual(new Set([false]));
    expect(new Set(turned(9))).toEqual(new Set([true]));
  });

  it("draws nothing for no marks", () => {
    expect(running("left", []).draw(10)).toEqual([]);
  });
});
