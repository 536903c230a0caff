import { PEN, rectangle } from "../../drawing/pen.js";
import { fitText } from "../../drawing/text.js";
import { type Block, stack, textBlock } from "../../drawing/text-block.js";
import { times } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Opening } from "../../job.js";
import { edgeToward } from "../../listen/edges.js";
import { sightOf } from "../../listen/sight.js";
import type { Tape } from "../../room/room.js";
import { CHECK_TAPE_WITHIN_MM } from "../../standards/cutting-practice.js";
import { fixText } from "../../words/finding-text.js";
import { acrossFigures, halfFigures, toleranceFigures } from "../cut-figures.js";
import { type Figures, figuresOf } from "../figures.js";
import { type Part, whole } from "../flow.js";
import type { Order } from "../sheet.js";
import { type Stage, tapesOf } from "../tapes.js";
import { gapsInWords } from "../template/band.js";
import { type Datum, dataBoxes, type Place } from "../template/data-boxes.js";
import { type Flag, flagRow } from "./flags.js";
import { codesAgainst } from "./reasons.js";
import { slideLines } from "./slide-lines.js";
import { tolerated } from "./steps.js";
import type { SurfaceStage } from "./surface-stage.js";
import { oneLabel, wallFigures } from "./wall-figures.js";

const TICK_MM = 6;
const SMALL_MM = 2.5;
const ID_MM = { least: 3.5, most: 5 };

/** What cuts the hole without the drawing: one ruled entry of figures for each opening. */
export function cardParts(order: Order, at: SurfaceStage, flags: readonly Flag[]): Part[] {
  return at.openings.map((opening) => {
    const own = flags.filter(({ finding }) => finding.speaker === opening.speaker.id);
    return whole((place) => card(order, { opening, stage: at.stage, flags: own }, place));
  });
}

interface Entry {
  readonly opening: Opening;
  readonly stage: Stage;
  readonly flags: readonly Flag[];
}

const PAD_MM = 1.5;

function card(order: Order, entry: Entry, { x, y, widthMm }: Place): Block {
  const inside = { x: x + PAD_MM, widthMm: widthMm - 2 * PAD_MM };
  const body = stack(y + PAD_MM, [
    (at) => heading(order, entry, { ...inside, y: at }),
    (at) => dataBoxes(mainFigures(order, entry), { ...inside, y: at }),
    (at) => ({ items: [], heightMm: at > y ? PAD_MM : 0 }),
    ...linesOf(order, entry).map(
      (words) => (at: number) => textBlock(words, { ...inside, y: at, capMm: SMALL_MM }),
    ),
  ]);
  const heightMm = body.heightMm + PAD_MM;
  return { items: [...body.items, rectangle({ x, y, widthMm, heightMm }, PEN.thin)], heightMm: heightMm + 2 };
}

function heading(order: Order, { opening, flags }: Entry, { x, y, widthMm }: Place): Block {
  const { speaker, mustNotCut } = opening;
  const tickMm = mustNotCut ? 0 : TICK_MM + 2;
  const row = flagRow(flags, SMALL_MM);
  const place = { x: x + tickMm, widthMm: widthMm - tickMm - row.widthMm - 2 };
  const said = [speaker.id, speaker.channel, speaker.model.name].join("  ·  ");
  const capMm = fitText(said, {
    face: "bold",
    widthMm: place.widthMm,
    leastMm: ID_MM.least,
    mostMm: ID_MM.most,
  });
  const words = stack(y, [
    (at) => textBlock(said, { ...place, y: at, capMm, face: "bold" }),
    ...warnings(order, opening).map(
      (warning) => (at: number) => textBlock(warning, { ...place, y: at, capMm: ID_MM.least, face: "bold" }),
    ),
  ]);
  return {
    items: [
      ...(mustNotCut ? [] : [rectangle({ x, y, widthMm: TICK_MM, heightMm: TICK_MM }, PEN.outline)]),
      ...words.items,
      ...row.draw({ x: x + widthMm - row.widthMm, y }),
    ],
    heightMm: Math.max(words.heightMm, TICK_MM + PAD_MM),
  };
}

function warnings(order: Order, opening: Opening): string[] {
  const { words } = order;
  return [
    ...(opening.mustNotCut ? [words.marking.card.doNotCut(codesAgainst(order, opening))] : []),
    ...(opening.placed === "best" ? [words.frame.computedNotFrozen] : []),
  ];
}

/** What to cut and both tapes; an opening that is not to be cut has no size here. */
function mainFigures({ words, job }: Order, { opening, stage }: Entry): Datum[] {
  const { units } = job.room;
  const { size } = words.template;
  const shape = opening.speaker.opening;
  const across = {
    label: shape.kind === "round" ? size.diameter : size.sides,
    ...acrossFigures(shape, units),
  };
  const tape = ({ from, mm }: Tape): Datum => ({
    label: words.marking.card.toCentre(from),
    ...figuresOf(mm, units),
  });
  const tapes = tapesOf(job.room, opening, stage).governing.map(tape);
  return opening.mustNotCut ? tapes : [across, ...tapes];
}

function linesOf(order: Order, entry: Entry): string[] {
  const { opening } = entry;
  const cutting = [sizeLine(order, opening), ...checkLines(order, entry)];
  return [
    ...(opening.mustNotCut ? movesOf(order, entry) : cutting),
    ...bayLines(order, opening),
    ...aimLines(order, entry),
  ];
}

/** Where the nearest clear centre is, for each error of the opening's own. */
const movesOf = ({ words, measure }: Order, { flags }: Entry): string[] =>
  flags.flatMap(({ finding }) => fixText(words, measure, finding) ?? []);

const both = ({ main, others }: Figures): string => `${main} (${others})`;

function sizeLine({ words, job }: Order, opening: Opening): string {
  const { units } = job.room;
  const { card: say } = words.marking;
  const tolerance = both(toleranceFigures(units));
  const shape = opening.speaker.opening;
  if (shape.kind === "round") {
    const radius = `${oneLabel(say.compass)} ${both(halfFigures(shape, units))}`;
    return `${radius}. ${oneLabel(say.diameter)} ${tolerance}.`;
  }
  const [across = "", up = ""] = acrossFigures(shape, units).main.split(" × ");
  const side = (figure: string, to: SurfacePoint) => ({
    figure,
    from: edgeToward(opening, times(to, -1)),
    to: edgeToward(opening, to),
  });
  return say.sides(side(across, { u: 1, v: 0 }), side(up, { u: 0, v: 1 }), tolerance);
}

/** Nothing where no opposite tape can be held. */
function checkLines(order: Order, { opening, stage }: Entry): string[] {
  const { room } = order.job;
  const said = ({ from, mm }: Tape) => ({ wall: from, figure: both(figuresOf(mm, room.units)) });
  const checks = tapesOf(room, opening, stage).checks.flatMap((tape) => (tape === null ? [] : [said(tape)]));
  const label = order.words.marking.card.check(tolerated(CHECK_TAPE_WITHIN_MM, order));
  return checks.length === 0 ? [] : [wallFigures(order, label, checks)];
}

/** The bay as the second proof of the place, and what is left beside the framing. */
function bayLines(order: Order, opening: Opening): string[] {
  const { card: say } = order.words.marking;
  const { bay, gap } = opening;
  const proof = bay === null || gap === null ? say.bayUnknown : say.bay(bay.number, bay.from);
  return gap === null ? [proof] : [proof, gapsInWords(order, opening), ...slideLines(order, opening)];
}

function aimLines({ words, job }: Order, { opening, stage }: Entry): string[] {
  const { card: say } = words.marking;
  const { aim } = opening;
  if (aim === null) return [say.notAsked];
  if (aim.arrowDeg === null) {
    return [opening.speaker.model.baffleTiltDeg === 0 ? say.straight : say.undefined];
  }
  const arrow = aim.fromRun === null ? say.aimOnSheet(`${Math.round(aim.arrowDeg)}°`) : say.aim(aim.fromRun);
  const turn = (aim.arrowDeg * Math.PI) / 180;
  const sight = sightOf(opening, { u: -Math.sin(turn), v: Math.cos(turn) }, stage);
  if (sight === null) return [arrow];
  return [arrow, say.sight(sight.wall, both(figuresOf(sight.mm, job.room.units)), sight.from)];
}
