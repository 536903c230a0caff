import { type Box, point } from "../drawing/pen.js";
import { textBlock } from "../drawing/text-block.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { Framing } from "../room/room.js";
import { CHECK_TAPE_WITHIN_MM } from "../standards/cutting-practice.js";
import { MAX_PAGE_SIDE_MM } from "../standards/paper.js";
import { facingFacts } from "./facing.js";
import { flow, type Part, run, whole } from "./flow.js";
import { frameArea, type PageSize } from "./frame.js";
import { evenLengthMm } from "./full-size-marks.js";
import { foundNote } from "./marking/found.js";
import { isAlongAxis } from "./marking/rows.js";
import { tolerated } from "./marking/steps.js";
import { surfaceAt, surfacesToMark } from "./marking/surface-stage.js";
import { type Band, bandsOf, drawnMm } from "./pole/bands.js";
import { type Pole, poleOf, type Way } from "./pole/pole.js";
import type { Body, FrameFacts, Order, Sheet } from "./sheet.js";
import { facesAt, stagesOf } from "./tapes.js";

interface NamedPole {
  readonly name: string;
  readonly title: string;
  readonly pole: Pole;
}

/** Name of every pole's sheet begins with it. */
const KIND = "pole";
/** All of them, whatever the paper. */
const ALL = "poles";
const GAP_MM = 2;
/** The frame's own ruler down the page takes as much. */
const LEAST_AREA_MM = 108;
const SMALL_MM = 2.5;

/**
 * Strips at 1:1 to mark a line without a tape: one along each axis of a ceiling with openings, one along the floor of
 * each wall with openings, every centre and edge on it. On a roll they run side by side on one sheet; on small paper
 * each is a sheet in parts with matching marks. Only where the order asks for them.
 */
export function storyPoles(order: Order): Sheet[] {
  if (!order.poles) return [];
  const poles = polesOf(order);
  if (poles.length === 0) return [];
  if (order.paper.kind === "sheet") {
    const { widthMm, heightMm } = order.paper;
    const ways: [PageSize, PageSize] = [
      { widthMm: heightMm, heightMm: widthMm },
      { widthMm, heightMm },
    ];
    return poles.map((one) => ({
      ...common(one.title, one.name),
      alsoNamed: [ALL],
      pages: fewestPages(order, factsOf(order, [one], one.title), [one], ways),
    }));
  }
  const { titles } = order.words.poles;
  const names = poles.map(({ name }) => name);
  const facts = factsOf(order, poles, titles);
  const pages = fewestPages(order, facts, poles, [rollPage(order, facts, poles)]);
  return [{ ...common(titles, ALL), alsoNamed: [KIND, ...names], pages }];
}

const common = (title: string, name: string): Pick<Sheet, "name" | "title" | "trades" | "whole"> => ({
  name,
  title,
  trades: ["installer"],
  whole: null,
});

/** Across the joists first: that axis decides where an opening can be. */
function polesOf(order: Order): NamedPole[] {
  const { room } = order.job;
  return surfacesToMark(order.job).flatMap((surface) =>
    stagesOf(room, surface).flatMap((stage, index, stages) => {
      const at = surfaceAt(order, surface, stage);
      const ways: readonly Way[] = surface.kind === "wall" ? ["u"] : waysOver(surface.framing);
      const on = surface.kind === "wall" ? `wall-${surface.name}` : surface.name;
      return ways.flatMap((way): NamedPole[] => {
        const pole = poleOf(order, at, way);
        if (pole === null) return [];
        const title = order.words.poles.title(surface.name, pole.zero);
        const along = way === "square" ? way : pole.zero;
        return [
          {
            name: `${KIND}-${on}-${along}${index === 0 ? "" : "-after"}`,
            title: stages.length === 1 ? title : `${title}, ${order.words.template.stage[stage]}`,
            pole,
          },
        ];
      });
    }),
  );
}

function waysOver(framing: Framing): readonly Way[] {
  if (framing.kind === "known" && !isAlongAxis(framing)) return ["square", "u", "v"];
  return framing.kind === "known" && framing.run === "v" ? ["u", "v"] : ["v", "u"];
}

function factsOf(order: Order, poles: readonly NamedPole[], title: string): FrameFacts {
  const { frame, poles: words } = order.words;
  const [first, ...others] = poles;
  const only = first === undefined || others.length > 0 ? null : first.pole;
  const at = only?.at ?? null;
  return {
    title,
    view: at === null ? null : facingFacts(order, at.surface).view,
    hold: words.hold(only?.zero ?? null),
    front: null,
    scale: frame.trueScale,
    faces: at === null ? null : frame.faces[facesAt(at.stage)],
  };
}

/** A roll's page as long as it takes for every pole to be in as few strips as it can be. */
function rollPage(order: Order, facts: FrameFacts, poles: readonly NamedPole[]): PageSize {
  const heightMm = order.paper.widthMm;
  const longest = { widthMm: MAX_PAGE_SIDE_MM, heightMm };
  const overheadMm = MAX_PAGE_SIDE_MM - frameArea(order, facts, longest).widthMm;
  return { widthMm: Math.max(...poles.map(({ pole }) => evenLengthMm(drawnMm(pole), overheadMm))), heightMm };
}

/** On the way for the paper to lie that takes the fewest pages; says so where no way has room. */
function fewestPages(
  order: Order,
  facts: FrameFacts,
  poles: readonly NamedPole[],
  ways: readonly [PageSize, ...PageSize[]],
): readonly Body[] {
  const laid = ways.flatMap((size) => {
    const pages = pagesOn(order, facts, poles, size);
    return pages === null ? [] : [pages];
  });
  const [first, ...others] = laid;
  if (first === undefined) return [refusal(order, facts, ways.at(-1) ?? ways[0])];
  return others.reduce((best, pages) => (pages.length < best.length ? pages : best), first);
}

function refusal(order: Order, facts: FrameFacts, size: PageSize): Body {
  const { items } = textBlock(order.words.poles.noRoom, {
    ...frameArea(order, facts, size),
    capMm: 5,
    face: "bold",
  });
  return { ...size, title: facts.title, frame: facts, items };
}

/** The parts of all the poles, as many on a page as stand over each other; null where the page has no room for one. */
function pagesOn(
  order: Order,
  facts: FrameFacts,
  poles: readonly NamedPole[],
  size: PageSize,
): readonly Body[] | null {
  const area = frameArea(order, facts, size);
  if (area.heightMm < LEAST_AREA_MM) return null;
  const bands: Band[] = [];
  for (const { pole, title } of poles) {
    const own = bandsOf(order, pole, { widthMm: area.widthMm, title: poles.length === 1 ? null : title });
    if (own === null || own.some(({ heightMm }) => heightMm > area.heightMm)) return null;
    bands.push(...own);
  }
  const parts = [
    ...notes(order, poles, bands),
    ...bands.map(({ draw, heightMm }) => bandPart(draw, heightMm)),
  ];
  return flow(parts, area, GAP_MM).map((items) => ({ ...size, title: facts.title, frame: facts, items }));
}

const bandPart = (draw: Band["draw"], heightMm: number): Part =>
  whole(({ x, y }) => ({ items: draw(point(x, y)), heightMm }));

/** How the poles are used, once before them. */
function notes(order: Order, poles: readonly NamedPole[], bands: readonly Band[]): Part[] {
  const { poles: words } = order.words;
  const framings = poles.map(({ pole }) => pole.at.surface.framing);
  const said = [
    words.use,
    words.lines,
    words.prove(tolerated(CHECK_TAPE_WITHIN_MM, order)),
    ...(bands.some(({ of }) => of > 1) ? [words.join] : []),
    ...poles.flatMap(({ pole }) => notesOn(order, pole)),
    ...framings.flatMap((framing) => foundNote(order, framing) ?? []),
  ];
  const lines = [...new Set(said)].map(
    (note) => (place: Box) => textBlock(note, { ...place, capMm: SMALL_MM }),
  );
  return [run(lines, 0.5)];
}

function notesOn({ words }: Order, { at, oblique, way }: Pole): string[] {
  const { framing, kind, frame } = at.surface;
  const slopes = kind === "ceiling" && Math.abs(frame.n.x) + Math.abs(frame.n.y) > EPSILON_MM;
  return [
    ...(framing.kind === "unknown" ? [words.poles.unknown] : []),
    ...(framing.kind === "known" && framing.unknown.length > 0 ? [words.poles.unknownBeyond] : []),
    ...(way === "square" ? [words.poles.square] : []),
    ...(oblique > 0 ? [words.poles.oblique(oblique)] : []),
    ...(slopes ? [words.poles.slope] : []),
    ...(kind === "ceiling" && !slopes ? [words.poles.plumb] : []),
  ];
}
