import type { Item } from "../drawing/drawing.js";
import { arrow, type Box, circle, dashed, layer, PEN, point } from "../drawing/pen.js";
import { fitText } from "../drawing/text.js";
import { type Block, stack, textBlock } from "../drawing/text-block.js";
import type { Opening } from "../job.js";
import { BETWEEN_LANGUAGES } from "../words/bilingual.js";
import { facingFacts } from "./facing.js";
import { frameArea } from "./frame.js";
import { drawnWhenAsked } from "./page-count.js";
import type { Body, FrameFacts, Order, Sheet } from "./sheet.js";
import { facesAt } from "./tapes.js";
import { gapsInWords, placeData, sizeData } from "./template/band.js";
import { dataBoxes, type Place } from "./template/data-boxes.js";
import { reasonsOf } from "./template/notes.js";
import { edgeNames, insideEdges } from "./template/page-edges.js";

/** A page for each opening, to be fixed at the spot at rough-in so that no board buries it. */
export const markerSheets = (order: Order): Sheet[] =>
  order.job.openings.map((opening) => {
    const { id } = opening.speaker;
    const title = order.words.strips.marker.title(id);
    return drawnWhenAsked(
      { name: `marker-${id}`, trades: ["installer"], title, pageCount: 1, whole: null },
      () => [markerBody(order, opening, title)],
    );
  });

/** At rough-in every wall is bare. */
const STAGE = "bare";
const GAP_MM = 3;

function markerBody(order: Order, opening: Opening, title: string): Body {
  const facts = factsOf(order, opening, title);
  const outer = frameArea(order, facts, order.reading);
  const area = insideEdges(order, opening.surface, outer);
  const head = sayings(order, opening, area);
  const foot = figures(order, opening, { ...area, y: 0 });
  const bottom = area.y + area.heightMm - foot.heightMm;
  const middle = {
    ...area,
    y: area.y + ACCENT_MM + head.heightMm,
    heightMm: bottom - area.y - ACCENT_MM - head.heightMm - GAP_MM,
  };
  const items = [
    ...edgeNames(order, opening, outer),
    ...head.items,
    ...middleItems(order, opening, middle),
    { kind: "group" as const, shift: point(0, bottom), items: foot.items },
  ];
  return { ...order.reading, title, frame: facts, items: [layer("notes", items)] };
}

function factsOf(order: Order, { surface }: Opening, title: string): FrameFacts {
  const { words } = order;
  return {
    title,
    ...facingFacts(order, surface),
    // The page's top edge says it.
    hold: null,
    scale: words.frame.notToScale,
    faces: words.frame.faces[facesAt(STAGE)],
  };
}

/** What everybody who sees it must know, largest first. */
function sayings(order: Order, opening: Opening, place: Place): Block {
  const { marker } = order.words.strips;
  const { doNotCut } = order.words.frame;
  const large = opening.mustNotCut ? [doNotCut, marker.notHere] : [marker.here, marker.keep];
  const small = [...(opening.mustNotCut ? reasonsOf(order, opening).flat() : []), marker.use];
  return stack(place.y + ACCENT_MM, [
    ...large.flatMap((words, index) => largeLines(words, place, index === 0 ? 9 : 4.5)),
    ...small.map((words) => (y: number) => textBlock(words, { ...place, y, capMm: 2.5, anchor: "middle" })),
  ]);
}

/** One line for each language, as large as the width allows. */
function largeLines(words: string, place: Place, mostMm: number): ((y: number) => Block)[] {
  return words.split(BETWEEN_LANGUAGES).map((line) => (y) => {
    const capMm = fitText(line, { face: "bold", widthMm: place.widthMm, leastMm: 3.5, mostMm });
    const block = textBlock(line, { ...place, y, capMm, face: "bold", anchor: "middle" });
    return { ...block, heightMm: block.heightMm - capMm * CLOSER };
  });
}

/** Above the first line's capitals. */
const ACCENT_MM = 2;

/** Capitals on lines of their own need less air than running words, as a share of their height. */
const CLOSER = 0.2;

function figures(order: Order, opening: Opening, place: Place): Block {
  const data = [...placeData(order, opening, STAGE), ...sizeData(order, opening).slice(0, 1)];
  const { channel, model } = opening.speaker;
  return stack(place.y, [
    (y) => textBlock(`${channel} · ${model.name}`, { ...place, y, capMm: 5 }),
    (y) => dataBoxes(data, { ...place, y }),
    (y) => textBlock(gapsInWords(order, opening), { ...place, y: y + 1, capMm: 2.5 }),
  ]);
}

const RING_MM = 36;

/** The id to be read from the floor, and under it the ring for the cable beside the arrow. */
function middleItems(order: Order, opening: Opening, box: Box): Item[] {
  const { speaker } = opening;
  const roomMm = box.heightMm - RING_MM - 3 * GAP_MM;
  const capMm = fitText(speaker.id, { face: "bold", widthMm: box.widthMm, leastMm: 5, mostMm: roomMm });
  const id = textBlock(speaker.id, {
    ...box,
    y: box.y + GAP_MM + (roomMm - capMm) / 2,
    capMm,
    face: "bold",
    anchor: "middle",
  });
  const y = box.y + box.heightMm - RING_MM / 2 - GAP_MM;
  return [
    ...id.items,
    ...cableRing(order, { x: box.x + box.widthMm / 4, y }),
    ...towardArrow(order, opening, { x: box.x + box.widthMm * 0.6, y }),
  ];
}

function cableRing({ words }: Order, centre: { x: number; y: number }): Item[] {
  const widthMm = RING_MM * 0.8;
  const place = { x: centre.x - widthMm / 2, widthMm, capMm: 3, face: "bold", anchor: "middle" } as const;
  const { heightMm } = textBlock(words.strips.marker.cable, { ...place, y: 0 });
  const label = textBlock(words.strips.marker.cable, { ...place, y: centre.y - heightMm / 2 });
  return [circle(centre, RING_MM / 2, dashed(PEN.outline, 4, 2)), ...label.items];
}

function towardArrow({ words }: Order, { surface }: Opening, centre: { x: number; y: number }): Item[] {
  const { frame } = words;
  const half = RING_MM / 2;
  const stroke = { ...PEN.cut, widthMm: 1.4 };
  const shaft = arrow(point(centre.x, centre.y + half), point(centre.x, centre.y - half), stroke);
  const label = surface.kind === "ceiling" ? frame.front : frame.up;
  const place = { x: centre.x + 7, y: centre.y - half, widthMm: 50, capMm: 6, face: "bold" } as const;
  const lines = stack(
    place.y,
    label.split(BETWEEN_LANGUAGES).map((line) => (y: number) => textBlock(line, { ...place, y })),
  );
  return [...shaft, ...lines.items];
}
