import { BLACK, type Item, type PagePoint } from "../drawing/drawing.js";
import { circle, filled, line, outline, PEN, point, rectangle, shifted, text } from "../drawing/pen.js";
import { fitText, measureText } from "../drawing/text.js";
import { type Block, stack, textBlock } from "../drawing/text-block.js";
import type { Speaker } from "../room/room.js";
import { type ShownColour, shownColour } from "./conductor-colour.js";
import type { Order } from "./sheet.js";

/** A conductor at a terminal; what is not given is a line to write on. */
interface Connection {
  readonly sign: "+" | "-";
  readonly colour: ShownColour | null;
  readonly terminal: string | null;
}

const ROW_MM = 11;
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

type Maker = (y: number) => Block;

const rule =
  (widthMm: number): Maker =>
  (y) => ({ items: [line(point(0, y + 0.5), point(widthMm, y + 0.5), PEN.fine)], heightMm: 2.5 });

const title =
  (words: string, widthMm: number): Maker =>
  (y) =>
    textBlock(words, { x: 0, y, widthMm, capMm: 2.5, face: "bold" });

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
    (y) => amplifierRow(connections, { y, widthMm }),
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

interface Across {
  readonly y: number;
  readonly widthMm: number;
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

/** A square with a plus, or a circle with a minus: told apart by shape and sign where colour fails. */
function signMark(sign: "+" | "-", centre: PagePoint, sizeMm: number): Item[] {
  const half = sizeMm / 2;
  const arm = sizeMm * 0.3;
  const across = line(point(centre.x - arm, centre.y), point(centre.x + arm, centre.y), PEN.cut);
  if (sign === "-") return [circle(centre, half, PEN.outline), across];
  const box = { x: centre.x - half, y: centre.y - half, widthMm: sizeMm, heightMm: sizeMm };
  const up = line(point(centre.x, centre.y - arm), point(centre.x, centre.y + arm), PEN.cut);
  return [rectangle(box, PEN.outline), across, up];
}

function connectionRow(order: Order, { sign, colour, terminal }: Connection, { y, widthMm }: Across): Block {
  const { card } = order.words.labels;
  const middle = y + ROW_MM / 2;
  const columns = { word: 10, swatch: 27.5, terminal: Math.max(62, widthMm * 0.74) };
  const signWord = { x: columns.word, y: middle, widthMm: columns.swatch - columns.word - 1.5, capMm: 3 };
  return {
    items: [
      ...signMark(sign, point(SIGN_MM / 2, middle), SIGN_MM),
      ...centred(sign === "+" ? card.plus : card.minus, signWord),
      ...(colour === null
        ? blank(card.conductor, { x: columns.swatch, y, widthMm: columns.terminal - columns.swatch - 2 })
        : colourItems(colour, { x: columns.swatch, y, widthMm: columns.terminal - columns.swatch - 2 })),
      ...terminalWords(terminal, card.terminal, {
        x: columns.terminal,
        y,
        widthMm: widthMm - columns.terminal,
      }),
    ],
    heightMm: ROW_MM,
  };
}

/** Bold words about the middle of a row, on as many lines as the width asks for. */
function centred(
  words: string,
  place: { x: number; y: number; widthMm: number; capMm: number },
): readonly Item[] {
  const block = textBlock(words, { ...place, face: "bold" });
  const lettersMm = block.heightMm - place.capMm * 0.75;
  return textBlock(words, { ...place, y: place.y - lettersMm / 2, face: "bold" }).items;
}

const SWATCH_MM = 6.5;

interface Spot extends Across {
  readonly x: number;
}

/** The colour itself, which only repeats what stands beside it: its letters over its word. */
function colourItems(colour: ShownColour, { x, y, widthMm }: Spot): readonly Item[] {
  const wordsX = x + SWATCH_MM + 2;
  const words = { x: wordsX, widthMm: widthMm - SWATCH_MM - 2, capMm: 2.5 };
  const patch = swatch(colour, point(x, y + (ROW_MM - SWATCH_MM) / 2));
  if (colour.letters === null) return [...patch, ...textBlock(colour.words, { ...words, y: y + 2 }).items];
  const letters = text(point(wordsX, y + 5.5), colour.letters, { capMm: 4.5, face: "bold" });
  return [...patch, letters, ...textBlock(colour.words, { ...words, y: y + 6.8 }).items];
}

function swatch(colour: ShownColour, { x, y }: PagePoint): Item[] {
  const box = { x, y, widthMm: SWATCH_MM, heightMm: SWATCH_MM };
  const [first, second] = colour.inks;
  if (first === undefined) return [];
  const corners = [point(x + SWATCH_MM, y), point(x + SWATCH_MM, y + SWATCH_MM), point(x, y + SWATCH_MM)];
  const half = second === undefined ? [] : [outline(corners, { fill: second })];
  return [filled(box, first), ...half, rectangle(box, PEN.thin)];
}

function terminalWords(terminal: string | null, name: string, spot: Spot): readonly Item[] {
  if (terminal === null) return blank(name, spot);
  const title = textBlock(name, { ...spot, y: spot.y + 0.5, capMm: 2.5 });
  const capMm = fitText(terminal, { face: "bold", widthMm: spot.widthMm, leastMm: 2.5, mostMm: 4 });
  const value = textBlock(terminal, { ...spot, y: spot.y + 0.5 + title.heightMm, capMm, face: "bold" });
  return [...title.items, ...value.items];
}

/** A name with a line to write on under it. */
function blank(name: string, { x, y, widthMm }: Spot): readonly Item[] {
  const foot = y + ROW_MM - 1;
  return [
    ...textBlock(name, { x, y: y + 0.5, widthMm, capMm: 2.5 }).items,
    line(point(x, foot), point(x + widthMm, foot), PEN.fine),
  ];
}

/** A name and its value on one line, or a line to write on where it is not given. */
function field(name: string, value: string | null, { y, widthMm }: Across): Block {
  const nameMm = Math.min(measureText(name, { capMm: 2.5, face: "regular" }).widthMm, widthMm * 0.7);
  const named = textBlock(name, { x: 0, y: y + 1.5, widthMm: nameMm, capMm: 2.5 });
  const x = nameMm + 3;
  if (value === null) {
    const foot = y + 5;
    return {
      items: [...named.items, line(point(x, foot), point(widthMm, foot), PEN.fine)],
      heightMm: Math.max(7, named.heightMm + 1.5),
    };
  }
  const block = textBlock(value, { x, y: y + 1, widthMm: widthMm - x, capMm: 3.5, face: "bold" });
  return {
    items: [...named.items, ...block.items],
    heightMm: Math.max(7, named.heightMm + 1.5, block.heightMm + 1),
  };
}

/** How much insulation comes off, in words and as a bar of that very length to lay the conductor on. */
function stripRow(order: Order, stripMm: number | null, { y, widthMm }: Across): Block {
  const { card } = order.words.labels;
  if (stripMm === null) return field(card.stripNotGiven, null, { y, widthMm });
  const words = card.strip(order.measure.length(stripMm));
  const wordsMm = widthMm - stripMm - 3;
  const block = textBlock(words, { x: 0, y: y + 1.5, widthMm: wordsMm, capMm: 2.5 });
  const bar = { x: widthMm - stripMm, y: y + 1.2, widthMm: stripMm, heightMm: 3 };
  return { items: [...block.items, filled(bar, BLACK)], heightMm: Math.max(7, block.heightMm + 1.5) };
}

/** Each conductor again at the amplifier's end, with a box to tick. */
function amplifierRow(connections: readonly Connection[], { y, widthMm }: Across): Block {
  const stepMm = widthMm / Math.max(2, Math.min(connections.length, 4));
  const perRow = Math.floor(widthMm / stepMm + 1e-9);
  const items = connections.flatMap(({ sign, colour }, index): Item[] => {
    const x = (index % perRow) * stepMm;
    const middle = y + 4.5 + Math.floor(index / perRow) * 8.5;
    const widthOfWordsMm = stepMm - 20;
    const shown: readonly Item[] =
      colour === null
        ? [line(point(x + 8, middle + 2.5), point(x + 8 + widthOfWordsMm, middle + 2.5), PEN.fine)]
        : centred(colour.letters ?? colour.words, {
            x: x + 8,
            y: middle,
            widthMm: widthOfWordsMm,
            capMm: 3.5,
          });
    const box = { x: x + stepMm - 11, y: middle - 2.5, widthMm: 5, heightMm: 5 };
    return [...signMark(sign, point(x + 3, middle), 6), ...shown, rectangle(box, PEN.thin)];
  });
  return { items, heightMm: Math.ceil(connections.length / perRow) * 8.5 + 0.5 };
}

function polarityRow(order: Order, { y, widthMm }: Across): Block {
  const { card } = order.words.labels;
  const polarityMm = widthMm * 0.54;
  const words = textBlock(card.polarity, {
    x: 7,
    y: y + 1.5,
    widthMm: polarityMm - 7,
    capMm: 2.5,
    face: "bold",
  });
  const initials = textBlock(card.initials, {
    x: polarityMm + 2,
    y: y + 1.5,
    widthMm: widthMm * 0.19,
    capMm: 2.5,
  });
  const lineX = polarityMm + 2 + widthMm * 0.19 + 1;
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
