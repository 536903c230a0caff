import { BLACK, type Item, type PagePoint } from "../drawing/drawing.js";
import { filled, line, outline, PEN, point, rectangle, shifted, text } from "../drawing/pen.js";
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

/** One loudspeaker's card in its own coordinates from (0, 0), as wide as asked and as high as it takes. */
export function terminalCard(order: Order, speaker: Speaker, widthMm: number): Block {
  const halfMm = (widthMm - HALVES_GAP_MM) / 2;
  const connections = connectionsOf(order, speaker);
  const left = terminalsHalf(order, speaker, connections, halfMm);
  const right = endsHalf(order, speaker, connections, halfMm);
  const heightMm = Math.max(left.heightMm, right.heightMm);
  const fold = widthMm / 2;
  return {
    items: [
      ...left.items,
      shifted(right.items, point(halfMm + HALVES_GAP_MM, 0)),
      line(point(fold, 0), point(fold, heightMm), PEN.fine),
    ],
    heightMm,
  };
}

function terminalsHalf(
  order: Order,
  speaker: Speaker,
  connections: readonly Connection[],
  widthMm: number,
): Block {
  return stack(0, [
    (y) => head(order, speaker, { y, widthMm }),
    rule(widthMm),
    title(order.words.labels.card.atSpeaker, widthMm),
    ...connections.map((connection) => (y: number) => connectionRow(order, connection, { y, widthMm })),
    (y) => stripRow(order, speaker.model.stripMm, { y, widthMm }),
  ]);
}

function endsHalf(
  order: Order,
  speaker: Speaker,
  connections: readonly Connection[],
  widthMm: number,
): Block {
  const { card } = order.words.labels;
  return stack(0, [
    (y) => field(card.kind, speaker.model.terminal, { y, widthMm }),
    rule(widthMm),
    title(card.atAmplifier, widthMm),
    (y) => field(card.channel, speaker.amplifierChannel, { y, widthMm }),
    (y) => amplifierRows(connections, { y, widthMm }),
    rule(widthMm),
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

function head(order: Order, speaker: Speaker, { y, widthMm }: Across): Block {
  const channelMm = measureText(speaker.channel, { capMm: 5, face: "bold" }).widthMm;
  const free = widthMm - channelMm - 4;
  const capMm = fitText(speaker.id, { face: "bold", widthMm: free, leastMm: 5, mostMm: 8 });
  const where = `${order.words.frame.surface(speaker.surface)}  ·  ${speaker.model.name}`;
  const below = textBlock(where, { x: 0, y: y + capMm + 3, widthMm, capMm: 2.5 });
  return {
    items: [
      text(point(0, y + capMm), speaker.id, { capMm, face: "bold" }),
      text(point(widthMm, y + capMm), speaker.channel, { capMm: 5, face: "bold", anchor: "end" }),
      ...below.items,
    ],
    heightMm: capMm + 3 + below.heightMm,
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

/** Each conductor again at the amplifier's end, two beside each other, with a box to tick. */
function amplifierRows(connections: readonly Connection[], { y, widthMm }: Across): Block {
  const pairs = Array.from({ length: Math.ceil(connections.length / 2) }, (_, index) =>
    connections.slice(index * 2, index * 2 + 2),
  );
  return stack(
    y,
    pairs.map((pair) => (at: number) => {
      const cells = pair.map((connection, index) =>
        amplifierCell(connection, { x: (index * widthMm) / 2, y: at, widthMm: widthMm / 2 }),
      );
      return {
        items: cells.flatMap(({ items }) => items),
        heightMm: Math.max(...cells.map(({ heightMm }) => heightMm)),
      };
    }),
  );
}

function amplifierCell({ sign, colour }: Connection, { x, y, widthMm }: Spot): Block {
  const place = { x: x + 8, widthMm: widthMm - 20 };
  const letters = colour?.letters ?? null;
  const size = letters === null ? 2.5 : 3.5;
  const words = colour === null ? null : centred(letters ?? colour.words, { ...place, y: 0, capMm: size });
  const heightMm = Math.max(8.5, (words?.heightMm ?? 0) + 1);
  const middle = y + heightMm / 2;
  const toWrite = line(point(place.x, middle + 2.5), point(place.x + place.widthMm, middle + 2.5), PEN.fine);
  return {
    items: [
      ...signMark(sign, point(x + 3, middle), 6),
      ...(words === null ? [toWrite] : [shifted(words.items, point(0, middle))]),
      rectangle({ x: x + widthMm - 11, y: middle - 2.5, widthMm: 5, heightMm: 5 }, PEN.thin),
    ],
    heightMm,
  };
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
