import { BLACK, type Item, type PagePoint } from "../drawing/drawing.js";
import { dashed, filled, line, outline, PEN, point, rectangle, shifted, text } from "../drawing/pen.js";
import { fitText, measureText } from "../drawing/text.js";
import { type Block, stack, textBlock } from "../drawing/text-block.js";
import type { Speaker } from "../room/room.js";
import {
  type Across,
  blank,
  centred,
  field,
  ROW_MM,
  rule,
  type Spot,
  signMark,
  title,
} from "./card-parts.js";
import { type ShownColour, shownColour } from "./conductor-colour.js";
import type { Order } from "./sheet.js";

/** A conductor at a terminal; what is not given is a line to write on. */
interface Connection {
  readonly sign: "+" | "-";
  readonly colour: ShownColour | null;
  readonly terminal: string | null;
}

const SIGN_MM = 8;
/** Between the half of the card about the loudspeaker and the half about both ends. */
const HALVES_GAP_MM = 8;

/**
 * One loudspeaker's two cards side by side, in their own coordinates from (0, 0), as wide as asked and as high as they
 * take: what goes where at the loudspeaker, and at the amplifier. Cut apart each is whole.
 */
export function terminalCard(order: Order, speaker: Speaker, widthMm: number): Block {
  const halfMm = (widthMm - HALVES_GAP_MM) / 2;
  const sides = [speakerSide(order, speaker), amplifierSide(order, speaker)];
  const [left, right] = sides.map((side) => half(order, speaker, side, halfMm));
  if (left === undefined || right === undefined) return { items: [], heightMm: 0 };
  const heightMm = Math.max(left.heightMm, right.heightMm);
  const cut = widthMm / 2;
  return {
    items: [
      ...left.items,
      shifted(right.items, point(halfMm + HALVES_GAP_MM, 0)),
      line(point(cut, 0), point(cut, heightMm), dashed(PEN.fine, 2, 1.2)),
    ],
    heightMm,
  };
}

/** What one end's card says beside whose it is. */
interface Side {
  readonly title: string;
  readonly below: (across: Across) => Block;
  readonly connections: readonly Connection[];
  readonly kind: string | null;
  readonly stripMm: number | null;
}

function speakerSide(order: Order, speaker: Speaker): Side {
  const { model } = speaker;
  const where = `${order.words.frame.surface(speaker.surface)}  ·  ${model.name}`;
  return {
    title: order.words.labels.card.atSpeaker,
    below: ({ y, widthMm }) => textBlock(where, { x: 0, y, widthMm, capMm: 2.5 }),
    connections: connectionsOf(order, speaker),
    kind: model.terminal,
    stripMm: model.stripMm,
  };
}

/** The same conductors on the same signs of the amplifier's channel; its terminals are nowhere given. */
function amplifierSide(order: Order, speaker: Speaker): Side {
  const { card } = order.words.labels;
  const channel = speaker.amplifierChannel;
  return {
    title: card.atAmplifier,
    below: ({ y, widthMm }) => raised(field(card.channel, channel, { y: y - RAISED_MM, widthMm })),
    connections: connectionsOf(order, speaker).map((connection) => ({
      ...connection,
      terminal: channel === null ? null : `${channel} ${connection.sign}`,
    })),
    kind: null,
    stripMm: null,
  };
}

/** A field stands under the id as close as words do. */
const RAISED_MM = 1.5;
const raised = ({ items, heightMm }: Block): Block => ({ items, heightMm: heightMm - RAISED_MM });

function half(order: Order, speaker: Speaker, side: Side, widthMm: number): Block {
  const { card } = order.words.labels;
  return stack(0, [
    (y) => head(speaker, side, { y, widthMm }),
    rule(widthMm),
    title(side.title, widthMm),
    ...side.connections.map((connection) => (y: number) => connectionRow(order, connection, { y, widthMm })),
    (y) => field(card.kind, side.kind, { y, widthMm }),
    (y) => stripRow(order, side.stripMm, { y, widthMm }),
    (y) => polarityRow(order, { y, widthMm }),
  ]);
}

/** The conductors that were given, and a row to write on for a sign that was not. */
function connectionsOf(order: Order, { model }: Speaker): Connection[] {
  const given = model.conductors.map(
    ({ sign, colour, terminal }): Connection => ({ sign, colour: shownColour(order, colour), terminal }),
  );
  const blank = (sign: "+" | "-"): Connection[] =>
    given.some((each) => each.sign === sign) ? [] : [{ sign, colour: null, terminal: null }];
  return [...given, ...blank("+"), ...blank("-")];
}

/** Share of the width that a channel, or an area's name in its place, may take beside the id. */
const CHANNEL_SHARE = 0.3;

function head(speaker: Speaker, { below }: Side, { y, widthMm }: Across): Block {
  const widest = { widthMm: widthMm * CHANNEL_SHARE, leastMm: 2.5, mostMm: 5 };
  const channelCapMm = fitText(speaker.channel, { face: "bold", ...widest });
  const channelMm = measureText(speaker.channel, { capMm: channelCapMm, face: "bold" }).widthMm;
  const free = widthMm - channelMm - 4;
  const capMm = fitText(speaker.id, { face: "bold", widthMm: free, leastMm: 5, mostMm: 7 });
  const under = below({ y: y + capMm + 3, widthMm });
  return {
    items: [
      text(point(0, y + capMm), speaker.id, { capMm, face: "bold" }),
      text(point(widthMm, y + capMm), speaker.channel, { capMm: channelCapMm, face: "bold", anchor: "end" }),
      ...under.items,
    ],
    heightMm: capMm + 3 + under.heightMm,
  };
}

function connectionRow(order: Order, connection: Connection, { y, widthMm }: Across): Block {
  const { card } = order.words.labels;
  const { sign, colour, terminal } = connection;
  const columns = { word: 10, swatch: 27.5, terminal: Math.max(62, widthMm * 0.74) };
  const conductorSpot = { x: columns.swatch, y, widthMm: columns.terminal - columns.swatch - 2 };
  const terminalSpot = { x: columns.terminal, y, widthMm: widthMm - columns.terminal };
  const conductor =
    colour === null ? blank(card.conductor, conductorSpot) : colourBlock(colour, conductorSpot);
  const named =
    terminal === null
      ? blank(card.terminal, terminalSpot)
      : terminalBlock(card.terminal, terminal, terminalSpot);
  const heightMm = Math.max(ROW_MM, conductor.heightMm, named.heightMm);
  const middle = y + heightMm / 2;
  const word = { x: columns.word, y: middle, widthMm: columns.swatch - columns.word - 1.5, capMm: 3 };
  return {
    items: [
      ...signMark(sign, point(SIGN_MM / 2, middle), SIGN_MM),
      ...centred(sign === "+" ? card.plus : card.minus, word).items,
      ...conductor.items,
      ...named.items,
    ],
    heightMm,
  };
}

/** The colour itself, which only repeats what stands beside it: its letters over its word. */
function colourBlock(colour: ShownColour, { x, y, widthMm }: Spot): Block {
  const wordsX = x + SWATCH_MM + 2;
  const place = { x: wordsX, widthMm: widthMm - SWATCH_MM - 2, capMm: 2.5 };
  const { letters } = colour;
  const words = textBlock(colour.words, { ...place, y: y + (letters === null ? 2 : 6.8) });
  const over = letters === null ? [] : [text(point(wordsX, y + 5.5), letters, { capMm: 4.5, face: "bold" })];
  return {
    items: [...swatch(colour, point(x, y + (ROW_MM - SWATCH_MM) / 2)), ...over, ...words.items],
    heightMm: words.heightMm + (letters === null ? 2 : 6.8),
  };
}

const SWATCH_MM = 6.5;

function swatch({ inks }: ShownColour, { x, y }: PagePoint): Item[] {
  const box = { x, y, widthMm: SWATCH_MM, heightMm: SWATCH_MM };
  const [first, second] = inks;
  if (first === undefined) return [];
  const corners = [point(x + SWATCH_MM, y), point(x + SWATCH_MM, y + SWATCH_MM), point(x, y + SWATCH_MM)];
  const half = second === undefined ? [] : [outline(corners, { fill: second })];
  return [filled(box, first), ...half, rectangle(box, PEN.thin)];
}

function terminalBlock(name: string, terminal: string, { x, y, widthMm }: Spot): Block {
  const capMm = fitText(terminal, { face: "bold", widthMm, leastMm: 2.5, mostMm: 4 });
  return stack(y + 0.5, [
    (at) => textBlock(name, { x, y: at, widthMm, capMm: 2.5 }),
    (at) => textBlock(terminal, { x, y: at, widthMm, capMm, face: "bold" }),
    () => ({ items: [], heightMm: 0.5 }),
  ]);
}

/** How much insulation comes off, in words and as a bar of that very length to lay the conductor on. */
function stripRow(order: Order, stripMm: number | null, { y, widthMm }: Across): Block {
  const { card } = order.words.labels;
  if (stripMm === null) return field(card.stripNotGiven, null, { y, widthMm });
  const words = card.strip(order.measure.length(stripMm));
  const block = textBlock(words, { x: 0, y: y + 1.5, widthMm: widthMm - stripMm - 3, capMm: 2.5 });
  const bar = { x: widthMm - stripMm, y: y + 1.2, widthMm: stripMm, heightMm: 3 };
  return { items: [...block.items, filled(bar, BLACK)], heightMm: Math.max(7, block.heightMm + 1.5) };
}

function polarityRow(order: Order, { y, widthMm }: Across): Block {
  const { card } = order.words.labels;
  const checkedMm = widthMm * 0.54;
  const initialsMm = widthMm * 0.19;
  const place = { y: y + 1.5, capMm: 2.5 };
  const words = textBlock(card.polarity, { ...place, x: 7, widthMm: checkedMm - 7, face: "bold" });
  const initials = textBlock(card.initials, { ...place, x: checkedMm + 2, widthMm: initialsMm });
  const lineX = checkedMm + initialsMm + 3;
  return {
    items: [
      rectangle({ x: 0, y, widthMm: 5, heightMm: 5 }, PEN.thin),
      ...words.items,
      ...initials.items,
      line(point(lineX, y + 5), point(widthMm, y + 5), PEN.fine),
    ],
    heightMm: Math.max(6, words.heightMm + 1.5, initials.heightMm + 1.5),
  };
}
