import { type Block, stack, textBlock } from "../drawing/text-block.js";
import type { Surface } from "../room/room.js";
import { type Aimed, isAimed } from "./aim/aimed.js";
import { stripBlock } from "./aim/strip.js";
import { facingFacts } from "./facing.js";
import { flow, whole } from "./flow.js";
import { frameArea } from "./frame.js";
import type { Body, FrameFacts, Order, Sheet } from "./sheet.js";

/**
 * Strips to tape to the brackets: one sheet whose pages hold as many as fit, those of one surface together, and each
 * strip with an arrow on a page of its own for the SVG folder. Straight loudspeakers have none.
 */
export function aimStrips(order: Order): Sheet[] {
  const aimed = order.job.openings.filter(isAimed);
  if (aimed.length === 0) return [];
  const surfaces = [...new Set(aimed.map(({ surface }) => surface))];
  const pages = surfaces.flatMap((surface) =>
    pagesOf(
      order,
      surface,
      aimed.filter((opening) => opening.surface === surface),
    ),
  );
  const { titles } = order.words.strips.aim;
  return [
    { name: "aim-strips", trades: ["installer"], title: titles, pages, whole: null },
    ...aimed.filter(({ aim }) => aim.arrowDeg !== null).map((opening) => singleStrip(order, opening)),
  ];
}

const GAP_MM = 5;

function pagesOf(order: Order, surface: Surface, aimed: readonly Aimed[]): Body[] {
  const title = order.words.strips.aim.titles;
  const facts = factsOf(order, surface, title);
  const area = frameArea(order, facts, order.reading);
  const strips = aimed.map((opening) => whole((place) => stripBlock(order, opening, place)));
  return flow([whole((place) => useBlock(order, place)), ...strips], area, GAP_MM).map((items) => ({
    ...order.reading,
    title,
    frame: facts,
    items,
  }));
}

const useBlock = (order: Order, place: { x: number; y: number; widthMm: number }): Block =>
  // Small letters reach above the capitals.
  stack(place.y + 1, [(y) => textBlock(order.words.strips.aim.cutOut, { ...place, y, capMm: 3.5 })]);

/** Long enough for its words on one or two lines each. */
const STRIP_MM = 180;

function singleStrip(order: Order, opening: Aimed): Sheet {
  const title = order.words.strips.aim.title(opening.speaker.id);
  return {
    name: `aim-${opening.speaker.id}`,
    trades: ["installer"],
    title,
    pages: [],
    whole: () => singleBody(order, opening, title),
  };
}

function singleBody(order: Order, opening: Aimed, title: string): Body {
  const facts = factsOf(order, opening.surface, title);
  const trial = { widthMm: 1000, heightMm: 1000 };
  const widthMm = trial.widthMm - frameArea(order, facts, trial).widthMm + STRIP_MM;
  const area = frameArea(order, facts, { widthMm, heightMm: trial.heightMm });
  const { items, heightMm } = stack(area.y, [
    (y) => useBlock(order, { ...area, y }),
    (y) => stripBlock(order, opening, { ...area, y }),
  ]);
  const size = { widthMm, heightMm: trial.heightMm - area.heightMm + Math.max(heightMm, LEAST_HEIGHT_MM) };
  return { ...size, title, frame: facts, items };
}

/** The ruler down the page needs as much. */
const LEAST_HEIGHT_MM = 110;

const factsOf = (order: Order, surface: Surface, title: string): FrameFacts => ({
  title,
  ...facingFacts(order, surface),
  hold: null,
  scale: order.words.frame.trueScale,
  faces: null,
});
