import type { Item, PagePoint, Text, Window } from "../../drawing/drawing.js";
import { type Ground, type Placed, placeLabel, taking } from "../../drawing/free-place.js";
import { point, text } from "../../drawing/pen.js";
import { measureText } from "../../drawing/text.js";
import { common } from "../../drawing/touches.js";
import type { Shape } from "../../geometry/shape.js";
import type { Opening } from "../../job.js";
import type { Member, Obstruction } from "../../room/room.js";
import { acrossFigures } from "../cut-figures.js";
import type { Order } from "../sheet.js";
import { arrowOnPage, type Band, bandOf, nearMembers, placeAbout, reachTo } from "./template-drawing.js";

const CAP_MM = 3.5;
const SMALL_MM = 2.5;
const AIR_MM = 1;

type Labelling = (ground: Ground) => Placed;

const nothing = (ground: Ground): Placed => ({ items: [], ground });

/**
 * Names of everything that crosses a page, each in the first of its places that is free. The same for every page of an
 * opening, so made once for all of them.
 */
export const labels = (order: Order, opening: Opening): Labelling =>
  inTurn([
    ...nearMembers(opening).map((member) => memberLabel(order, opening, member)),
    ...opening.surface.obstructions.map((obstruction) => obstructionLabel(opening, obstruction)),
    cutLabel(order, opening),
    aimLabel(order, opening),
    flangeLabel(order, opening),
  ]);

const inTurn =
  (steps: readonly Labelling[]): Labelling =>
  (ground) => {
    const items: Item[] = [];
    let free = ground;
    for (const step of steps) {
      const next = step(free);
      items.push(...next.items);
      free = next.ground;
    }
    return { items, ground: free };
  };

interface Side {
  readonly at: PagePoint;
  /** Outward, of length 1. */
  readonly normal: PagePoint;
}

const STEPS = 24;

/** Places all round a shape, the top first. */
function rim(shape: Shape): Side[] {
  if (shape.kind === "round") {
    return Array.from({ length: STEPS }, (_, index) => {
      const turn = (index % 2 === 0 ? 1 : -1) * Math.ceil(index / 2) * ((2 * Math.PI) / STEPS);
      const normal = point(Math.sin(turn), -Math.cos(turn));
      return { at: point((normal.x * shape.diameterMm) / 2, (normal.y * shape.diameterMm) / 2), normal };
    });
  }
  const [x, y] = [shape.widthMm / 2, shape.heightMm / 2];
  return [0.5, -0.5, 0.25, -0.25, 0.75, -0.75].flatMap((share) => [
    { at: point(x * share, -y), normal: point(0, -1) },
    { at: point(x * share, y), normal: point(0, 1) },
    { at: point(x, y * share), normal: point(1, 0) },
    { at: point(-x, y * share), normal: point(-1, 0) },
  ]);
}

/** A text centred on a point, on one line. */
function centred(words: string, at: PagePoint, capMm: number, face: Text["face"] = "regular"): Text {
  return text(point(at.x, at.y + capMm / 2), words, { capMm, face, anchor: "middle" });
}

/** Beside an outline, so far off it in the direction given that the whole text clears it. */
function beside(
  words: string,
  { at, normal }: Side,
  letters: { capMm: number; face?: Text["face"]; offMm: number },
): Text {
  const { widthMm } = measureText(words, { capMm: letters.capMm, face: letters.face ?? "regular" });
  const clear =
    Math.abs(letters.offMm) + (Math.abs(normal.x) * widthMm + Math.abs(normal.y) * letters.capMm * 1.4) / 2;
  const off = Math.sign(letters.offMm) * clear;
  const middle = point(at.x + normal.x * off, at.y + normal.y * off);
  return centred(words, middle, letters.capMm, letters.face);
}

/** Places are made as they are tried: the first few are mostly free. */
const firstOf =
  (choices: () => Iterable<Text>): Labelling =>
  (ground) =>
    placeLabel(choices(), ground) ?? nothing(ground);

/** Inside the line, the long words where they fit, else the short ones. */
function cutLabel({ words }: Order, { speaker, mustNotCut }: Opening): Labelling {
  const short = `${speaker.id} ${mustNotCut ? words.frame.doNotCut : words.frame.cut}`;
  const names = mustNotCut ? [short] : [words.template.label.cut(speaker.id), short];
  const sides = rim(speaker.opening);
  return firstOf(function* () {
    for (const name of names) {
      for (const offMm of [-3, -8, -14, -22]) {
        for (const side of sides) yield beside(name, side, { capMm: CAP_MM, face: "bold", offMm });
      }
    }
  });
}

function flangeLabel({ words, job }: Order, { speaker }: Opening): Labelling {
  const name = words.template.label.flange(acrossFigures(speaker.flange, job.room.units).main);
  const sides = rim(speaker.flange);
  return firstOf(function* () {
    for (const offMm of [1.5, -1.5, 4]) {
      for (const side of sides) yield beside(name, side, { capMm: SMALL_MM, offMm });
    }
  });
}

function aimLabel({ words }: Order, { speaker, aim }: Opening): Labelling {
  if (aim === null || aim.arrowDeg === null) return nothing;
  const to = arrowOnPage(aim.arrowDeg);
  const reach = reachTo(speaker.flange, to);
  const name = words.template.label.aim(aim.target);
  const aside = [point(-to.y, to.x), point(to.y, -to.x)];
  const places: Side[] = [
    { at: point(to.x * reach, to.y * reach), normal: to },
    ...[0.75, 0.6, 0.45, 0.9, 1].flatMap((share) =>
      aside.map((normal) => ({ at: point(to.x * reach * share, to.y * reach * share), normal })),
    ),
  ];
  return firstOf(function* () {
    for (const side of places) {
      for (const offMm of [1.5, 4]) yield beside(name, side, { capMm: CAP_MM, face: "bold", offMm });
    }
  });
}

const SHARES = [0.5, 0.3, 0.7, 0.15, 0.85, 0.05, 0.95];
const ARROWS = { left: "←", right: "→", up: "↑", down: "↓" };

/** Between its edges where the page shows enough of it, else beside the edge with an arrow to it. */
function memberLabel({ words }: Order, { centre, surface }: Opening, member: Member): Labelling {
  const band = bandOf(member, centre);
  const { along, edges } = band;
  const box = boxAround(edges.flat());
  const upright = Math.abs(along.y) > Math.abs(along.x);
  const known = words.findings.member({ ...member, surface: surface.name });
  const basis = member.basis === "assumed" ? words.template.assumed : words.found.word;
  const isAsLaid = member.basis === "measured" && member.found === null;
  const name = isAsLaid ? known : `${known}, ${basis}`;
  if (Math.min(Math.abs(along.x), Math.abs(along.y)) > STRAIGHT) return slantingLabel(name, band);
  return (ground) => {
    const seen = common(box, ground.within);
    if (seen === null) return nothing(ground);
    const placed = placeLabel(alongBand(name, seen, upright), ground);
    // The band itself is no place for other words.
    const blocked = taking(placed?.ground ?? ground, seen);
    return { items: placed?.items ?? [], ground: blocked };
  };
}

/** Sine of an angle under which a band is as good as straight on a page. */
const STRAIGHT = 0.002;
const STEP_MM = 5;

/** The same where the band runs at an angle: no box holds it and nothing else. */
function slantingLabel(name: string, { member, along, edges }: Band): Labelling {
  return ({ within, ...ground }) => {
    const pointsOn = (line: readonly [PagePoint, PagePoint]): PagePoint[] => pointsAlong(line, within);
    const [near, far] = edges;
    const middles = pointsOn([halfway(near[0], far[0]), halfway(near[1], far[1])]);
    const outward = point(-along.y, along.x);
    const letters = { capMm: SMALL_MM, face: "bold" as const, offMm: 1 };
    const besideEdge = (side: PagePoint) => (at: PagePoint) =>
      beside(
        side.x > 0 ? `${ARROWS.left} ${name}` : `${name} ${ARROWS.right}`,
        { at, normal: side },
        letters,
      );
    const choices = [
      ...[CAP_MM, SMALL_MM].flatMap((capMm) => middles.map((at) => centred(name, at, capMm, "bold"))),
      ...pointsOn(near).map(besideEdge(outward)),
      ...pointsOn(far).map(besideEdge(point(-outward.x, -outward.y))),
    ];
    const placed = placeLabel(choices, { within, ...ground });
    const sideMm = member.widthMm * Math.SQRT1_2;
    const blocked = middles.map(({ x, y }) => ({
      x: x - sideMm / 2,
      y: y - sideMm / 2,
      widthMm: sideMm,
      heightMm: sideMm,
    }));
    return {
      items: placed?.items ?? [],
      ground: taking(placed?.ground ?? { within, ...ground }, ...blocked),
    };
  };
}

const halfway = (a: PagePoint, b: PagePoint): PagePoint => point((a.x + b.x) / 2, (a.y + b.y) / 2);

/** Step by step along a line as far as it lies in a window: of a member on a page that is a small part, or none. */
function pointsAlong([from, to]: readonly [PagePoint, PagePoint], within: Window): PagePoint[] {
  const run = point(to.x - from.x, to.y - from.y);
  const steps = Math.max(1, Math.ceil(Math.hypot(run.x, run.y) / STEP_MM));
  const [first, last] = sharesWithin({ from, run }, within);
  const points: PagePoint[] = [];
  for (
    let index = Math.max(0, Math.floor(first * steps));
    index <= Math.min(steps, last * steps + 1);
    index += 1
  ) {
    const at = point(from.x + (run.x * index) / steps, from.y + (run.y * index) / steps);
    if (isWithin(at, within)) points.push(at);
  }
  return points;
}

/** Between which shares of a run it lies in a window; from more to less where it does not. */
function sharesWithin(
  { from, run }: { readonly from: PagePoint; readonly run: PagePoint },
  { x, y, widthMm, heightMm }: Window,
): readonly [number, number] {
  const across = sharesBetween(from.x, run.x, [x, x + widthMm]);
  const down = sharesBetween(from.y, run.y, [y, y + heightMm]);
  return [Math.max(across[0], down[0]), Math.min(across[1], down[1])];
}

function sharesBetween(
  from: number,
  run: number,
  [low, high]: readonly [number, number],
): readonly [number, number] {
  if (run === 0) return from >= low && from <= high ? [0, 1] : [1, 0];
  const [a, b] = [(low - from) / run, (high - from) / run];
  return [Math.min(a, b), Math.max(a, b)];
}

const isWithin = (at: PagePoint, { x, y, widthMm, heightMm }: Window): boolean =>
  at.x >= x && at.x <= x + widthMm && at.y >= y && at.y <= y + heightMm;

function* alongBand(name: string, seen: Window, upright: boolean): Iterable<Text> {
  yield* inBand(name, seen, upright);
  yield* besideBand(name, seen, upright);
}

function* inBand(name: string, seen: Window, upright: boolean): Iterable<Text> {
  const thickness = upright ? seen.widthMm : seen.heightMm;
  for (const capMm of [CAP_MM, SMALL_MM]) {
    if (thickness <= capMm + 2 * AIR_MM) continue;
    const reach = measureText(name, { capMm, face: "bold" }).widthMm + 2 * AIR_MM;
    for (const share of SHARES) {
      if (upright) {
        const y = seen.y + reach / 2 + (seen.heightMm - reach) * share;
        const at = point(seen.x + seen.widthMm / 2 + capMm / 2, y);
        yield text(at, name, { capMm, face: "bold", anchor: "middle", turnDeg: -90 });
      } else {
        const x = seen.x + reach / 2 + (seen.widthMm - reach) * share;
        yield centred(name, point(x, seen.y + seen.heightMm / 2), capMm, "bold");
      }
    }
  }
}

function* besideBand(name: string, seen: Window, upright: boolean): Iterable<Text> {
  const middle = point(seen.x + seen.widthMm / 2, seen.y + seen.heightMm / 2);
  const letters = { capMm: SMALL_MM, face: "bold" as const, offMm: 1 };
  const toward = middle.y > 0 ? ARROWS.down : ARROWS.up;
  for (const share of SHARES) {
    const [x, y] = [seen.x + seen.widthMm * share, seen.y + seen.heightMm * share];
    const sides: readonly (readonly [string, Side])[] = upright
      ? [
          [`${name} ${ARROWS.right}`, { at: point(seen.x, y), normal: point(-1, 0) }],
          [`${ARROWS.left} ${name}`, { at: point(seen.x + seen.widthMm, y), normal: point(1, 0) }],
        ]
      : [
          [`${name} ${toward}`, { at: point(x, seen.y), normal: point(0, -1) }],
          [`${name} ${toward}`, { at: point(x, seen.y + seen.heightMm), normal: point(0, 1) }],
        ];
    for (const [words, side] of sides) yield beside(words, side, letters);
  }
}

function obstructionLabel({ centre }: Opening, { area, name }: Obstruction): Labelling {
  const place = placeAbout(centre);
  const corners =
    area.kind === "rectangle"
      ? [place(area.min), place(area.max)]
      : [-1, 1].map((side) => {
          const at = place(area.centre);
          return point(at.x + (side * area.diameterMm) / 2, at.y + (side * area.diameterMm) / 2);
        });
  const box = boxAround(corners);
  return (ground) => {
    const seen = common(box, ground.within);
    if (seen === null) return nothing(ground);
    const placed = placeLabel(onOrBeside(name, seen), ground);
    return { items: placed?.items ?? [], ground: taking(placed?.ground ?? ground, seen) };
  };
}

function* onOrBeside(name: string, seen: Window): Iterable<Text> {
  for (const down of SHARES) {
    for (const across of SHARES) {
      const at = point(seen.x + seen.widthMm * across, seen.y + seen.heightMm * down);
      yield centred(name, at, CAP_MM, "bold");
    }
  }
  yield* besideBand(name, seen, seen.heightMm > seen.widthMm);
}

function boxAround(points: readonly PagePoint[]): Window {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, widthMm: Math.max(...xs) - x, heightMm: Math.max(...ys) - y };
}
