import type { Opening } from "../job.js";
import { coneOf } from "../listen/coverage.js";
import { breachesOf, windowOf } from "../listen/window.js";
import { heardFromSeats } from "./area-parts.js";
import { axesPiece, coveredOn, curvesPiece } from "./ear/curves.js";
import { degreesText, figuresTable, keyOf } from "./ear/parts.js";
import { isCrowded, loudspeakersPiece, seatsPiece, sharesEar } from "./ear/places.js";
import { earPlaneCut } from "./ear/room-plan.js";
import { azimuthsPiece, layersOf } from "./ear/windows.js";
import { figuresOf } from "./figures.js";
import type { Part } from "./flow.js";
import { type FittedPages, fittedPages, inOneSheet } from "./marking/fitted.js";
import { below } from "./marking/floor-plan.js";
import { planOutline } from "./marking/plan-outline.js";
import type { Sketch } from "./marking/sketch.js";
import { saying } from "./reading-pages.js";
import type { Order, Sheet } from "./sheet.js";

/** Plans LOOKING DOWN: directions from the reference seat, and what each loudspeaker covers of the ear plane. */
export function listeningPlan(order: Order): Sheet[] {
  const { openings } = order.job;
  if (openings.length === 0) return [];
  const { title } = order.words.earPlane;
  const kinds = (["ceiling", "wall"] as const).flatMap((kind) => {
    const own = openings.filter(({ surface }) => surface.kind === kind);
    return own.some((opening) => coneOf(opening) !== null) ? [coveragePages(order, kind, own)] : [];
  });
  const directed = heardFromSeats(order).length > 0 ? [directionPages(order)] : [];
  const pages = [...directed, ...kinds];
  if (pages.length === 0) return [];
  return [inOneSheet({ name: "listening-plan", trades: ["installer"], title }, pages)];
}

const factsOf = ({ words }: Order, title: string) => ({
  title,
  view: words.frame.lookingDown,
  hold: null,
  front: 0,
  faces: null,
});

function directionPages(order: Order): FittedPages {
  const { room } = order.job;
  const openings = heardFromSeats(order);
  const { directions } = order.words.earPlane;
  const layers = layersOf(openings);
  const parts: Part[] = [
    saying(directions.use(room.reference.name), "bold"),
    saying(room.layout === null ? directions.noLayout : directions.windows),
    ...(room.layout !== null && layers.length > 1 ? [saying(directions.rings(layers))] : []),
    ...(sharesEar(room) ? [saying(order.words.earPlane.sameEar)] : []),
    keyOf(order, "inCeiling", "inWall", "direction", ...(room.layout === null ? [] : (["window"] as const))),
    figuresTable(order, openings),
  ];
  const facts = factsOf(order, directions.title);
  const forms = [{ sketch: directionSketch(order), parts }] as const;
  return fittedPages(order, { facts, figuresTitle: directions.figures, forms, allFigures: () => [] });
}

function directionSketch(order: Order): Sketch {
  const { room } = order.job;
  const openings = heardFromSeats(order);
  return {
    ...planOutline(order),
    chains: [],
    caption: null,
    inside: (view) => [
      azimuthsPiece(room, openings, {
        view,
        centre: view.place(below(room.reference.ear)),
        ends: pointedAt(order).map(({ position }) => view.place(below(position))),
      }),
      seatsPiece(order, room.seats, below, view),
      loudspeakersPiece({ openings, projected: below, under: (one) => azimuthSaid(order, one) }, view),
    ],
  };
}

/** Where very many share an area only those have a line that the layout has a place for. */
function pointedAt(order: Order): readonly Opening[] {
  const { room } = order.job;
  const openings = heardFromSeats(order);
  if (!isCrowded(openings)) return openings;
  return openings.filter(({ speaker }) => windowOf(room, speaker.channel) !== null);
}

function azimuthSaid({ job, words }: Order, { direction, speaker }: Opening): string[] {
  const window = windowOf(job.room, speaker.channel);
  const isOutside = window !== null && isAzimuthOutside(window, direction);
  return [
    words.earPlane.azimuth(degreesText(direction.azimuthDeg)),
    ...(isOutside ? [words.earPlane.outside] : []),
  ];
}

const isAzimuthOutside = (...[window, heading]: Parameters<typeof breachesOf>): boolean =>
  breachesOf(window, heading).some(({ figure }) => figure === "azimuth");

function coveragePages(order: Order, kind: "ceiling" | "wall", openings: readonly Opening[]): FittedPages {
  const { room } = order.job;
  const { coverage } = order.words.earPlane;
  const without = openings.filter((opening) => coneOf(opening) === null).map(({ speaker }) => speaker.id);
  const height = figuresOf(room.reference.ear.z, room.units).main;
  const parts: Part[] = [
    saying(coverage.use(height), "bold"),
    saying(coverage.model),
    ...(without.length === 0 ? [] : [saying(coverage.notStated(without.join(", ")))]),
    kind === "ceiling"
      ? keyOf(order, "inCeiling", "overhead", "axis")
      : keyOf(order, "inWall", "wall", "aimed"),
  ];
  const facts = factsOf(order, coverage.title[kind]);
  const forms = [{ sketch: coverageSketch(order, openings), parts }] as const;
  return fittedPages(order, { facts, figuresTitle: coverage.title[kind], forms, allFigures: () => [] });
}

function coverageSketch(order: Order, openings: readonly Opening[]): Sketch {
  const { room } = order.job;
  const plan = planOutline(order);
  return {
    ...plan,
    chains: [],
    caption: null,
    inside: (view) => {
      const cut = earPlaneCut(room, plan.outline);
      const covered = coveredOn(openings, cut);
      return [
        curvesPiece(covered, cut, view),
        axesPiece(covered, cut, { view, projected: below }),
        seatsPiece(order, room.seats, below, view),
        loudspeakersPiece({ openings, projected: below, under: () => [] }, view),
      ];
    },
  };
}
