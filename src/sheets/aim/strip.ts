import { dashed, layer, PEN, rectangle } from "../../drawing/pen.js";
import { fitText, measureText } from "../../drawing/text.js";
import { type Block, stack, textBlock } from "../../drawing/text-block.js";
import { facesWhenCutting } from "../../listen/sight.js";
import { findingText } from "../../words/finding-text.js";
import { figuresOf } from "../figures.js";
import { findingsAbout } from "../finding-lines.js";
import type { Order } from "../sheet.js";
import type { Aimed } from "./aimed.js";
import { DIAL_MM, dial } from "./dial.js";

const PAD_MM = 2;
/** Cap heights in mm. */
const CAP = { id: 8, large: 5, middle: 3.5, words: 3, small: 2.5 } as const;

interface Place {
  readonly x: number;
  readonly y: number;
  readonly widthMm: number;
}

type Line = (place: Place) => Block;

/** One strip to be cut out: how it is held, the arrow as it lies on the surface, and the same in words and as a tape. */
export function stripBlock(order: Order, opening: Aimed, place: Place): Block {
  const inner = { x: place.x + PAD_MM, y: place.y + PAD_MM, widthMm: place.widthMm - 2 * PAD_MM };
  const head = holdLine(order, opening, inner);
  const y = inner.y + head.heightMm;
  const x = inner.x + DIAL_MM + 2 * PAD_MM;
  const said = stacked(stripLines(order, opening), { x, y, widthMm: inner.x + inner.widthMm - x });
  const turned = dial(order, opening, { x: inner.x, y });
  const heightMm = head.heightMm + Math.max(turned.heightMm, said.heightMm) + 2 * PAD_MM;
  const border = rectangle({ ...place, heightMm }, dashed(PEN.thin, 5, 2));
  return {
    items: [layer("notes", [border, ...head.items, ...said.items]), ...turned.items],
    heightMm,
  };
}

function holdLine({ words }: Order, { surface }: Aimed, place: Place): Block {
  const { aim } = words.strips;
  const hold = surface.kind === "ceiling" ? aim.hold : aim.holdWall;
  const capMm = fitText(hold, {
    face: "bold",
    widthMm: place.widthMm,
    leastMm: CAP.small,
    mostMm: CAP.large,
  });
  return textBlock(hold, { ...place, capMm, face: "bold", anchor: "middle" });
}

const stacked = (lines: readonly Line[], place: Place): Block =>
  stack(
    place.y,
    lines.map((line) => (y: number) => line({ ...place, y })),
  );

const said =
  (words: string, capMm: number, face: "regular" | "bold" = "regular"): Line =>
  (place) =>
    textBlock(words, { ...place, capMm, face });

function stripLines(order: Order, opening: Aimed): Line[] {
  const { aim: words } = order.words.strips;
  const { aim, speaker } = opening;
  return [
    beside({ main: speaker.id, capMm: CAP.id }, words.target(aim.target), CAP.middle),
    ...stopLines(order, opening),
    ...(aim.arrowDeg === null ? [said(words.noArrow, CAP.middle)] : turnLines(order, opening)),
    said(words.offAxis(whole(aim.offAxisDeg)), CAP.small),
  ];
}

/** What stands against cutting there stands against aiming there. */
function stopLines(order: Order, { mustNotCut, speaker }: Aimed): Line[] {
  if (!mustNotCut) return [];
  const reasons = findingsAbout(order, speaker)
    .filter(({ level }) => level === "error")
    .map((finding) => findingText(order.words, order.measure, finding));
  return [
    said(order.words.frame.doNotCut, CAP.large, "bold"),
    ...reasons.map((reason) => said(reason, CAP.small)),
  ];
}

/** Whole degrees: nobody turns a baffle finer. */
const whole = (degrees: number): string => `${Math.round(degrees)}°`;

function turnLines(order: Order, { aim, surface }: Aimed): Line[] {
  const words = order.words.strips.aim;
  const { fromRun } = aim;
  const kind = surface.kind === "ceiling" ? "joist" : "stud";
  const run =
    fromRun === null
      ? said(words.noRun, CAP.middle)
      : beside(
          { main: whole(fromRun.degrees), capMm: CAP.large },
          words.fromRun(kind, fromRun.end, fromRun.toward),
          CAP.words,
        );
  return [run, sightLine(order, { aim, surface })];
}

function sightLine({ words, job }: Order, { aim, surface }: Pick<Aimed, "aim" | "surface">): Line {
  const { sight } = aim;
  const strip = words.strips.aim;
  if (sight === null) return said(strip.noSight, CAP.small);
  const onWall = surface.kind === "ceiling" && job.room.walls.includes(sight.wall);
  const where = onWall ? strip.sightAt : strip.sightOn;
  const { main, others } = figuresOf(sight.mm, job.room.units);
  const faces = facesWhenCutting(surface, job.room.stage);
  return beside({ main, others, capMm: CAP.large }, where(sight.wall, sight.from, faces), CAP.words);
}

interface Figure {
  readonly main: string;
  readonly others?: string;
  readonly capMm: number;
}

const FIGURE_MM = 36;
const SMALL = { capMm: CAP.small, face: "regular" } as const;

/** A figure, with what it is beside it; under it where the column is too narrow. */
function beside({ main, others, capMm }: Figure, words: string, wordsMm: number): Line {
  return (place) => {
    const bold = { capMm, face: "bold" } as const;
    const othersMm = others === undefined ? 0 : measureText(others, SMALL).widthMm;
    const widthMm = Math.max(FIGURE_MM, measureText(main, bold).widthMm, othersMm) + PAD_MM;
    const figure = stack(place.y, [
      (y) => textBlock(main, { ...place, y, widthMm, ...bold }),
      ...(others === undefined ? [] : [(y: number) => textBlock(others, { ...place, y, widthMm, ...SMALL })]),
    ]);
    const isBeside = place.widthMm - widthMm > LEAST_WORDS_MM;
    const at = isBeside
      ? { x: place.x + widthMm, y: place.y, widthMm: place.widthMm - widthMm }
      : { ...place, y: place.y + figure.heightMm };
    const said = textBlock(words, { ...at, capMm: wordsMm });
    const heightMm = isBeside ? Math.max(figure.heightMm, said.heightMm) : figure.heightMm + said.heightMm;
    return { items: [...figure.items, ...said.items], heightMm };
  };
}

const LEAST_WORDS_MM = 50;
