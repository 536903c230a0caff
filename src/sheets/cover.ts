import { type Box, dashed, PEN, point, rectangle, text } from "../drawing/pen.js";
import { type Block, stack, textBlock } from "../drawing/text-block.js";
import type { LocatedFinding } from "../job.js";
import { ALL_CAUTIONS, cautionsOf, LINES_GAP_MM, type WordedLine, wordedLines } from "./cautions.js";
import { countOf, countTable, openingOf } from "./count.js";
import { contentsPart, type Listed } from "./cover-contents.js";
import { byLevel, findingLines } from "./finding-lines.js";
import { type Flowed, flow, flowed, headed, type Part, rowsOf, run, whole } from "./flow.js";
import { frameArea } from "./frame.js";
import { refusalText } from "./label-test-page.js";
import { labellingOf } from "./labelling.js";
import { drawnWhenAsked } from "./page-count.js";
import type { Body, FrameFacts, Order, Sheet } from "./sheet.js";

/**
 * What everyone reads first: the job, how many openings there are and which must not be cut, which sheets are whose,
 * what was found, cautions, and how to print. As many pages as it takes.
 */
export const cover = (order: Order, contents: readonly Listed[]): Sheet =>
  coverListing(order, () => contents);

/** The same, where the numbers of the others begin after its own pages: how high these lists are does not depend on them. */
export function coverListing(order: Order, contentsAfter: (coverPages: number) => readonly Listed[]): Sheet {
  const { widthMm, heightMm } = order.reading;
  const facts = factsOf(order);
  const { title } = facts;
  const area = frameArea(order, facts, order.reading);
  const { gapMm, pageCount } = narrowed((gap) => flowed(partsOf(order, contentsAfter(1)), area, gap));
  const announced = {
    name: "cover",
    trades: ["drywall", "installer"],
    title,
    pageCount,
    whole: null,
  } as const;
  return drawnWhenAsked(announced, () =>
    flow(partsOf(order, contentsAfter(pageCount)), area, gapMm).map(
      (items): Body => ({ widthMm, heightMm, title, frame: facts, items }),
    ),
  );
}

/** Between parts, the widest first: a narrower one only where it saves a page. */
const GAPS_MM: readonly number[] = [3, 2, 1];

function narrowed(laidOut: (gapMm: number) => Flowed): {
  readonly gapMm: number;
  readonly pageCount: number;
} {
  const [widestMm = 0, ...others] = GAPS_MM;
  const { pageCount: atWidest, leastPages } = laidOut(widestMm);
  let fewest = { gapMm: widestMm, pageCount: atWidest };
  if (leastPages >= atWidest) return fewest;
  for (const gapMm of others) {
    const { pageCount } = laidOut(gapMm);
    if (pageCount < fewest.pageCount) fewest = { gapMm, pageCount };
  }
  return fewest;
}

const factsOf = ({ words }: Order): FrameFacts => ({
  title: words.cover.title,
  view: null,
  hold: null,
  front: null,
  scale: words.frame.notToScale,
  faces: null,
});

function partsOf(order: Order, contents: readonly Listed[]): Part[] {
  const { cover: say } = order.words;
  return [
    whole((place) => jobFacts(order, place)),
    whole((place) => standing(order, place)),
    under(say.count.heading, countPart(order)),
    ...unplaced(order),
    under(say.sheets.heading, contentsPart(order, contents)),
    ...labelsRefused(order),
    under(say.findings.heading, findingsPart(order)),
    under(say.cautionsHeading, worded(cautionsOf(order, COVER_CAUTIONS))),
    under(say.print.heading, run(say.print.steps.map(step), 1)),
    under(say.ways.heading, worded([say.ways.bracket, say.ways.template])),
  ];
}

/** Connecting comes later: its caution is on the terminal cards. */
const COVER_CAUTIONS = ALL_CAUTIONS.filter((caution) => caution !== "amplifier");

const worded =
  (lines: readonly WordedLine[]): Part =>
  (free, fresh) =>
    run(wordedLines(lines, free.widthMm), LINES_GAP_MM)(free, fresh);

/** A heading in capitals over a part. */
const under = (heading: string, part: Part): Part =>
  headed((place) => {
    const block = textBlock(heading, { ...place, capMm: 3.5, face: "bold" });
    return { ...block, heightMm: block.heightMm + 0.5 };
  }, part);

/** What the frame does not say of the job on every page. */
function jobFacts({ words, job }: Order, place: Box): Block {
  const { facts } = words.cover;
  const { room } = job;
  const lines = [
    { word: facts.file, line: facts.fileWas(job.file, job.fingerprint.slice(0, 8)) },
    { word: facts.tapes, line: facts.faces[room.measuredTo] },
    ...(room.layout === null ? [] : [{ word: facts.system, line: room.layout }]),
    { word: facts.call, line: room.call ?? TO_WRITE },
  ];
  return stack(place.y, [
    (y) => textBlock(room.job.name, { ...place, y, capMm: 5, face: "bold" }),
    ...wordedLines(lines, place.widthMm).map((make) => (y: number) => make({ ...place, y })),
  ]);
}

/** Somebody's number on site, where the room file has none. */
const TO_WRITE = "______________________________";

/** Whether anything must not be cut, in a box that nobody overlooks. */
function standing(order: Order, place: Box): Block {
  const { words, job } = order;
  const { toDo, stopped, openings } = countOf(order, job.room.speakers);
  const said = [
    ...(stopped > 0 ? [words.cover.stopped(stopped, openings)] : []),
    words.cover.clear(toDo),
    ...(job.openings.some(({ placed }) => placed === "best") ? [words.frame.computedNotFrozen] : []),
  ];
  const inside = { x: place.x + 3, widthMm: place.widthMm - 6 };
  const lines = stack(
    place.y + 3,
    said.map((line) => (y: number) => textBlock(line, { ...inside, y, capMm: 5, face: "bold" })),
  );
  const heightMm = lines.heightMm + 3;
  const box = { ...place, heightMm };
  return {
    items: [rectangle(box, stopped > 0 ? dashed(PEN.cut, 4, 2) : PEN.outline), ...lines.items],
    heightMm,
  };
}

function countPart(order: Order): Part {
  const { toDo, stopped } = order.words.schedules.opening;
  const { counted } = order.words.cover.count;
  return rowsOf(countTable(order, order.job.room.speakers, { toDo, stopped, counted }));
}

/** Those that no sheet marks, so that nobody waits for them. */
function unplaced(order: Order): Part[] {
  const ids = order.job.room.speakers
    .filter((speaker) => openingOf(order, speaker) === null)
    .map(({ id }) => id);
  if (ids.length === 0) return [];
  const said = order.words.cover.count.unplaced(ids.join(" "));
  return [whole((place) => textBlock(said, { ...place, capMm: 3, face: "bold" }))];
}

/** Why there is no label sheet, where the stock cannot hold the labels. */
function labelsRefused(order: Order): Part[] {
  if (order.job.room.speakers.length === 0) return [];
  const labelling = labellingOf(order);
  if (labelling.kind === "printed") return [];
  const why = refusalText(order, labelling.why);
  return [
    under(
      order.words.labels.refused.heading,
      whole((place) => textBlock(why, { ...place, capMm: 2.5 })),
    ),
  ];
}

/** The gravest first, each with where it stands in the room file, its sentence, the fix, and why it was accepted. */
function findingsPart(order: Order): Part {
  const { findings: say } = order.words.cover;
  const findings = byLevel(order.job.findings);
  if (findings.length === 0) return whole((place) => textBlock(say.none, { ...place, capMm: 3 }));
  return run(
    findings.map((finding) => (place: Box) => findingBlock(order, finding, place)),
    1,
  );
}

const LEVEL_MM = 39;

function findingBlock(order: Order, finding: LocatedFinding, { x, y, widthMm }: Box): Block {
  const { findings: say } = order.words.cover;
  const margin = { x, y, widthMm: LEVEL_MM - 2, capMm: 2.5 };
  const level = textBlock(say.at(finding.level, finding.line), { ...margin, face: "bold" });
  const beside = { x: x + LEVEL_MM, widthMm: widthMm - LEVEL_MM };
  const block = stack(
    y,
    findingLines(order, finding).map(
      ({ words, ...lettering }) =>
        (at: number) =>
          textBlock(words, { ...beside, y: at, ...lettering }),
    ),
  );
  return { items: [...level.items, ...block.items], heightMm: Math.max(level.heightMm, block.heightMm) };
}

/** A numbered line. */
const step =
  (words: string, index: number) =>
  ({ x, y, widthMm }: Box): Block => {
    const block = textBlock(words, { x: x + 6, y, widthMm: widthMm - 6, capMm: 2.5 });
    const number = text(point(x, y + 2.5), String(index + 1), { capMm: 2.5, face: "bold" });
    return { ...block, items: [number, ...block.items] };
  };
