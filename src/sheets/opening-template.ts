import type { Opening } from "../job.js";
import { facingFacts } from "./facing.js";
import type { FrameFacts, Order, Sheet } from "./sheet.js";
import { facesAt, type Stage, stagesOf } from "./tapes.js";
import { liesOn, wholeLie } from "./template/lie.js";
import { templatePages } from "./template/pages.js";

/** One true-scale template for each opening, in parts where it is larger than the paper, and whole for the SVG folder. */
export const openingTemplates = (order: Order): Sheet[] =>
  order.job.openings.map((opening) => openingTemplate(order, opening));

function openingTemplate(order: Order, opening: Opening): Sheet {
  const stages = stagesOf(order.job.room, opening.surface);
  const tasks = stages.map((stage) => ({
    ...{ order, opening, stage, notes: [] },
    facts: factsOf(order, opening, stage, stages.length),
  }));
  return {
    name: `opening-${opening.speaker.id}`,
    trades: ["drywall"],
    title: order.words.template.title(opening.speaker.id),
    pages: tasks.flatMap((task) => templatePages(task, liesOn)),
    whole: tasks.slice(0, 1).flatMap((task) => templatePages(task, (each) => [wholeLie(each)]))[0] ?? null,
  };
}

function factsOf(order: Order, opening: Opening, stage: Stage, stages: number): FrameFacts {
  const { template, frame } = order.words;
  const title = template.title(opening.speaker.id);
  return {
    title: stages === 1 ? title : `${title}, ${template.stage[stage]}`,
    ...facingFacts(order, opening.surface),
    // The page's top edge says it beside the drawing.
    hold: null,
    scale: frame.trueScale,
    faces: frame.faces[facesAt(stage)],
    axes: true,
  };
}
