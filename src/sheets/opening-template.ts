import type { Code } from "../findings/finding.js";
import { InternalError } from "../findings/internal-error.js";
import type { Opening } from "../job.js";
import { facingFacts } from "./facing.js";
import { findingsAbout } from "./finding-lines.js";
import { type Announced, drawnWhenAsked } from "./page-count.js";
import type { Body, FrameFacts, Order, Sheet } from "./sheet.js";
import { facesAt, type Stage, stagesOf } from "./tapes.js";
import { liesOn, type Task, wholeLie } from "./template/lie.js";
import { templatePages } from "./template/pages.js";

/**
 * One true-scale template for each opening, in parts where it is larger than the paper, and whole for the SVG folder.
 * Those of an area that are all alike share one on paper: nobody cuts four hundred equal holes by as many sheets.
 */
export const openingTemplates = (order: Order): Sheet[] => templatesToMake(order).map((make) => make());

/** The same one by one, each made when it is asked for. */
export function templatesToMake(order: Order): readonly (() => Sheet)[] {
  const groups = alikeIn(order);
  const shared = new Set(groups.flat().map(({ speaker }) => speaker.id));
  return [
    ...groups.map((group, index) => () => sharedTemplate(order, group, index)),
    ...order.job.openings.map(
      (opening) => () => openingTemplate(order, opening, { onPaper: !shared.has(opening.speaker.id) }),
    ),
  ];
}

/** Openings of one area, surface and size, of which nothing is to be said that the others do not say. */
function alikeIn(order: Order): readonly (readonly [Opening, ...Opening[]])[] {
  const groups = new Map<string, Opening[]>();
  for (const opening of order.job.openings.filter((one) => isPlain(order, one))) {
    const { area, surface, model, turnDeg } = opening.speaker;
    const key = JSON.stringify([area, surface, model.name, turnDeg]);
    groups.set(key, [...(groups.get(key) ?? []), opening]);
  }
  return [...groups.values()].flatMap(([first, ...others]) =>
    first === undefined || others.length === 0 ? [] : [[first, ...others] as const],
  );
}

const isPlain = (order: Order, { speaker, mustNotCut, placed, aim }: Opening): boolean =>
  speaker.area !== null &&
  !mustNotCut &&
  placed === "given" &&
  (aim === null || aim.arrowDeg === null) &&
  findingsAbout(order, speaker).every(({ level, code }) => level === "note" || OF_NO_HOLE.has(code));

/** Warnings that stand on other sheets: whoever cuts has nothing to do with cable. */
const OF_NO_HOLE: ReadonlySet<Code> = new Set([
  "cable-too-thin",
  "cable-without-way",
  "cables-not-looked-for",
  "bored-hole-too-large",
  "engineered-member-bored",
]);

/** Without what is near one of them only. */
function sharedTemplate(order: Order, alike: readonly [Opening, ...Opening[]], index: number): Sheet {
  const [first] = alike;
  const { speaker, surface } = first;
  const area = speaker.area ?? speaker.id;
  const pattern: Opening = {
    ...first,
    speaker: { ...speaker, id: area },
    surface: { ...surface, framing: { kind: "unknown" }, obstructions: [] },
  };
  const title = order.words.template.alike.title(area, speaker.model.name);
  return onPages(tasksOf(order, pattern, { title, alike }), {
    name: `template-${index + 1}-${area}`,
    alsoNamed: ["opening", ...alike.map(({ speaker: { id } }) => `opening-${id}`)],
    trades: ["drywall"],
    title,
    whole: null,
  });
}

function openingTemplate(order: Order, opening: Opening, { onPaper }: { readonly onPaper: boolean }): Sheet {
  const title = order.words.template.title(opening.speaker.id);
  const tasks = tasksOf(order, opening, { title, alike: [] });
  return onPages(onPaper ? tasks : [], {
    name: `opening-${opening.speaker.id}`,
    trades: ["drywall"],
    title,
    whole: () => wholeTemplate(tasks),
  });
}

/** To count the pages, the words of each must have their places; the rest is drawn where it is printed. */
function onPages(tasks: readonly Task[], sheet: Omit<Announced, "pageCount">): Sheet {
  const parts = tasks.map((task) => templatePages(task, liesOn));
  const pageCount = parts.reduce((sum, part) => sum + part.pageCount, 0);
  return drawnWhenAsked({ ...sheet, pageCount }, () => parts.flatMap(({ draw }) => draw()));
}

/** As it is used first, where it is used at two stages. */
function wholeTemplate([task]: readonly Task[]): Body {
  const [body] = task === undefined ? [] : templatePages(task, (each) => [wholeLie(each)]).draw();
  if (body === undefined) throw new InternalError("a template has no page");
  return body;
}

interface Titled {
  readonly title: string;
  readonly alike: readonly Opening[];
}

function tasksOf(order: Order, opening: Opening, { title, alike }: Titled): readonly Task[] {
  const stages = stagesOf(order.job.room, opening.surface);
  return stages.map((stage) => ({
    ...{ order, opening, alike, stage, notes: [] },
    facts: factsOf(order, opening, {
      stage,
      title: stages.length === 1 ? title : `${title}, ${order.words.template.stage[stage]}`,
    }),
  }));
}

function factsOf(
  order: Order,
  opening: Opening,
  { stage, title }: { readonly stage: Stage; readonly title: string },
): FrameFacts {
  const { frame } = order.words;
  return {
    title,
    ...facingFacts(order, opening.surface),
    // The page's top edge says it beside the drawing.
    hold: null,
    scale: frame.trueScale,
    faces: frame.faces[facesAt(stage)],
    axes: true,
  };
}
