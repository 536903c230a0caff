import type { Face, Item, PagePoint } from "./drawing.js";
import { BASELINE } from "./label.js";
import { circle, line, PEN, point, polyline, rectangle, text } from "./pen.js";
import { spread, spreadFits, type Wish } from "./spread.js";
import { measureText } from "./text.js";
import { LINE_PITCH } from "./text-block.js";

/** The edge of the drawing that a chain stands along, outside of it. */
export type Side = "left" | "right" | "top" | "bottom";

/** A figure of a running dimension: where it belongs along the edge, and what is read there. */
export interface RunningMark {
  readonly atMm: number;
  readonly lines: readonly string[];
  readonly face: Face;
  readonly kind: "zero" | "mark";
}

export interface Running {
  readonly side: Side;
  readonly marks: readonly RunningMark[];
  /** Stretch of the page along the edge that its figures may stand in. */
  readonly fromMm: number;
  readonly lengthMm: number;
  readonly capMm: number;
  /** Length of a box beside every figure but the zero, to write the found one in; 0 for none. */
  readonly writeMm: number;
}

export interface Chain {
  /** Room that it takes outward from its line, in mm. */
  readonly depthMm: number;
  /** Marks that stand without a figure, because not all fit. */
  readonly dropped: number;
  /** The chain with its line at this x (left, right) or y (top, bottom) of the page. */
  readonly draw: (lineMm: number) => Item[];
}

const LEADER_MM = 5;
const PAD_MM = 1;
const BETWEEN_MM = 0.5;
/** Height of a box that a figure is written into by hand, where there is room. */
const WRITE_HEIGHT_MM = 6;

/** Figures beside the chain either stand across the page or are turned to be read from the right (ISO 129-1). */
type Reading = "upright" | "turned";

interface Plan {
  readonly reading: Reading;
  readonly marks: readonly RunningMark[];
  readonly boxMm: number;
  /** Where its figures would stand if each had the room to itself. */
  readonly wishes: readonly Wish[];
}

/**
 * Running dimensions from one zero (ISO 129-1: an origin, and every figure counted from it): ticks where they belong,
 * figures spread so that they never touch, a leader from each to its tick. Where not all fit, every second, third ...
 * keeps its figure and the rest are counted as dropped.
 */
export function runningChain(running: Running): Chain {
  const plan = planOf(running);
  return {
    depthMm: LEADER_MM + PAD_MM + Math.max(0, ...plan.marks.map((mark) => outwardMm(running, plan, mark))),
    dropped: running.marks.length - plan.marks.length,
    // How deep it is, is asked at every scale that is tried; where its figures stand, at the one that is taken.
    draw: (lineMm) =>
      drawChain(running, plan, {
        middles: spread(plan.wishes, rangeOf(running)),
        at: toPage(running.side, lineMm),
      }),
  };
}

function planOf(running: Running): Plan {
  const readings: Reading[] = isUpright(running.side)
    ? ["upright"]
    : running.writeMm > 0
      ? ["turned"]
      : ["upright", "turned"];
  const boxes = running.writeMm > 0 ? [WRITE_HEIGHT_MM, 0] : [0];
  for (let every = 1; every <= running.marks.length; every += 1) {
    const marks = running.marks.filter((mark, index) => mark.kind === "zero" || index % every === 0);
    for (const reading of readings) {
      for (const boxMm of boxes) {
        const wishes = marks.map((mark) => wishOf(running, mark, { reading, boxMm }));
        if (spreadFits(wishes, { lengthMm: running.lengthMm, gapMm: BETWEEN_MM })) {
          return { reading, marks, boxMm, wishes };
        }
      }
    }
  }
  return { reading: "turned", marks: [], boxMm: 0, wishes: [] };
}

const rangeOf = ({ fromMm, lengthMm }: Running) => ({
  from: fromMm,
  to: fromMm + lengthMm,
  gapMm: BETWEEN_MM,
});

const isUpright = (side: Side): boolean => side === "left" || side === "right";

function wishOf(running: Running, mark: RunningMark, plan: { reading: Reading; boxMm: number }): Wish {
  const stacked = mark.lines.length * running.capMm * LINE_PITCH;
  const across = !isUpright(running.side) && plan.reading === "upright";
  const box = mark.kind === "zero" ? 0 : plan.boxMm;
  return { at: mark.atMm, sizeMm: across ? widthMm(running, mark) + 2 : Math.max(stacked, box) };
}

const widthMm = ({ capMm }: Running, { lines, face }: RunningMark): number =>
  Math.max(0, ...lines.map((words) => measureText(words, { capMm, face }).widthMm));

/** What a figure takes outward from the end of its leader, its box included. */
function outwardMm(running: Running, plan: Plan, mark: RunningMark): number {
  if (!isUpright(running.side) && plan.reading === "upright") {
    return mark.lines.length * running.capMm * LINE_PITCH;
  }
  const write = mark.kind === "zero" || running.writeMm === 0 ? 0 : running.writeMm + PAD_MM;
  return widthMm(running, mark) + write;
}

type ToPage = (alongMm: number, outMm: number) => PagePoint;

const toPage =
  (side: Side, lineMm: number): ToPage =>
  (along, out) =>
    ({
      left: point(lineMm - out, along),
      right: point(lineMm + out, along),
      top: point(along, lineMm - out),
      bottom: point(along, lineMm + out),
    })[side];

function drawChain(
  running: Running,
  plan: Plan,
  { middles, at }: { middles: readonly number[]; at: ToPage },
): Item[] {
  const places = running.marks.map(({ atMm }) => atMm);
  if (places.length === 0) return [];
  return [
    line(at(Math.min(...places), 0), at(Math.max(...places), 0), PEN.fine),
    ...running.marks.map((mark) => tick(mark, at)),
    ...plan.marks.flatMap((mark, index) => {
      const middle = middles[index] ?? mark.atMm;
      return [
        polyline(
          [at(mark.atMm, 0), at(mark.atMm, 1.2), at(middle, LEADER_MM - 0.5), at(middle, LEADER_MM)],
          PEN.fine,
        ),
        ...figures(running, plan, mark, middle, at),
        ...writeBox(running, plan, mark, middle, at),
      ];
    }),
  ];
}

/** ISO 129-1 marks the origin of running dimensions with a circle. */
function tick(mark: RunningMark, at: ToPage): Item {
  if (mark.kind === "zero") return circle(at(mark.atMm, 0), 1, PEN.thin);
  return line(at(mark.atMm, -1), at(mark.atMm, 1), PEN.thin);
}

function figures(running: Running, plan: Plan, mark: RunningMark, middle: number, at: ToPage): Item[] {
  const { capMm, side } = running;
  const start = -(mark.lines.length * capMm * LINE_PITCH) / 2;
  const baseline = (index: number): number => start + capMm * (BASELINE + index * LINE_PITCH);
  return mark.lines.map((words, index) => {
    const lettering = { capMm, face: mark.face };
    if (isUpright(side)) {
      const where = at(middle + baseline(index), LEADER_MM + PAD_MM);
      return text(where, words, { ...lettering, anchor: side === "left" ? "end" : "start" });
    }
    if (plan.reading === "upright") return acrossFigure(running, mark, { words, index, middle }, at);
    const where = at(middle + baseline(index), LEADER_MM + PAD_MM);
    return text(where, words, { ...lettering, anchor: side === "bottom" ? "end" : "start", turnDeg: -90 });
  });
}

function acrossFigure(
  { capMm, side }: Running,
  mark: RunningMark,
  { words, index, middle }: { words: string; index: number; middle: number },
  at: ToPage,
): Item {
  const total = mark.lines.length * capMm * LINE_PITCH;
  const down = capMm * (BASELINE + index * LINE_PITCH);
  const out = LEADER_MM + (side === "bottom" ? down : total - down);
  return text(at(middle, out), words, { capMm, face: mark.face, anchor: "middle" });
}

function writeBox(running: Running, plan: Plan, mark: RunningMark, middle: number, at: ToPage): Item[] {
  if (running.writeMm === 0 || mark.kind === "zero") return [];
  const half = Math.max(plan.boxMm, running.capMm * LINE_PITCH * 0.9) / 2 - 0.2;
  const from = LEADER_MM + PAD_MM + widthest(running, plan) + PAD_MM;
  const corners = [at(middle - half, from), at(middle + half, from + running.writeMm)];
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return [rectangle({ x, y, widthMm: Math.max(...xs) - x, heightMm: Math.max(...ys) - y }, PEN.fine)];
}

/** Boxes of one chain stand in line, beyond its longest figure. */
const widthest = (running: Running, plan: Plan): number =>
  Math.max(0, ...plan.marks.filter(({ kind }) => kind === "mark").map((mark) => widthMm(running, mark)));
