import type { Item } from "../drawing/drawing.js";
import { type Box, PEN, point, rectangle, shifted } from "../drawing/pen.js";
import { type Block, textBlock } from "../drawing/text-block.js";
import type { Speaker } from "../room/room.js";
import { cautionLines } from "./cautions.js";
import { frameArea } from "./frame.js";
import { drawnWhenAsked } from "./page-count.js";
import type { Body, FrameFacts, Order, Sheet } from "./sheet.js";
import { terminalCard } from "./terminal-card.js";

const GAP_MM = 3;
const PAD_MM = 2;

/** One card for each loudspeaker, several on a page, to be cut out and left with it: what goes on which terminal. */
export function terminalCards(order: Order): Sheet[] {
  const { speakers } = order.job.room;
  if (speakers.length === 0) return [];
  const facts = factsOf(order);
  const area = frameArea(order, facts, order.reading);
  const head = heading(order, area);
  const below = { ...area, y: area.y + head.heightMm, heightMm: area.heightMm - head.heightMm };
  const column = columnOf(order, below);
  const { title } = facts;
  const pageCount = Math.ceil(column.cards.length / column.rows);
  return [
    drawnWhenAsked({ name: "terminal-cards", trades: ["installer"], title, pageCount, whole: null }, () =>
      pagesOf(column).map(
        (items): Body => ({
          widthMm: order.reading.widthMm,
          heightMm: order.reading.heightMm,
          title,
          frame: facts,
          items: [...head.items, ...items],
        }),
      ),
    ),
  ];
}

const factsOf = ({ words }: Order): FrameFacts => ({
  title: words.labels.card.title,
  view: null,
  hold: null,
  front: null,
  scale: words.frame.trueScale,
  faces: null,
});

/** What to do with the cards, and the caution that belongs to connecting. */
function heading(order: Order, area: Box): Block {
  // Tall letters rise over capitals.
  const words = textBlock(order.words.labels.card.cut, { ...area, y: area.y + 1, capMm: 3 });
  const y = area.y + words.heightMm + 2;
  const caution = cautionLines(order, ["amplifier"], { ...area, y });
  return {
    items: [...words.items, ...caution.items],
    heightMm: words.heightMm + 2 + caution.heightMm + 2,
  };
}

interface Column {
  readonly area: Box;
  readonly cards: readonly Block[];
  readonly rows: number;
  readonly cardHeightMm: number;
}

/** As many cards under each other as fit; all as high as the highest. */
function columnOf(order: Order, area: Box): Column {
  const cards = order.job.room.speakers.map((speaker) => cardOf(order, speaker, area));
  const cardHeightMm = Math.max(...cards.map(({ heightMm }) => heightMm)) + 2 * PAD_MM;
  const rows = Math.max(1, Math.floor((area.heightMm + GAP_MM) / (cardHeightMm + GAP_MM)));
  return { area, cards, rows, cardHeightMm };
}

const cardOf = (order: Order, speaker: Speaker, area: Box): Block =>
  terminalCard(order, speaker, area.widthMm - 2 * PAD_MM);

function pagesOf({ area, cards, rows, cardHeightMm }: Column): Item[][] {
  const pages: Item[][] = [];
  for (const [index, { items }] of cards.entries()) {
    const y = area.y + (index % rows) * (cardHeightMm + GAP_MM);
    const edge = rectangle({ x: area.x, y, widthMm: area.widthMm, heightMm: cardHeightMm }, PEN.fine);
    const card = shifted(items, point(area.x + PAD_MM, y + PAD_MM));
    const page = Math.floor(index / rows);
    pages[page] = [...(pages[page] ?? []), edge, card];
  }
  return pages;
}
