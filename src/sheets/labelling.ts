import type { Item } from "../drawing/drawing.js";
import type { LabelStock, Speaker } from "../room/room.js";
import {
  type LaidZones,
  labelsPerSheet,
  type RefusedZones,
  stockOf,
  zoneOnPage,
  zonesOf,
} from "./label-stock.js";
import { type Amount, type End, FILLINGS, type Filling, labelItems } from "./label-words.js";
import type { Order } from "./sheet.js";

/** One label of one end of one run. */
interface Label {
  readonly speaker: Speaker;
  readonly end: End;
}

/** What can be printed on the room's stock. */
export type Labelling =
  | {
      readonly kind: "printed";
      readonly stock: LabelStock;
      readonly zones: LaidZones;
      readonly amount: Amount;
      readonly pages: readonly (readonly Item[])[];
    }
  | { readonly kind: "refused"; readonly stock: LabelStock; readonly why: Refusal };

export type Refusal =
  | RefusedZones
  | {
      readonly kind: "refused";
      readonly why: "too-small";
      readonly id: string;
      readonly flagMm: number | null;
    };

/** The labels of a room on its stock, all filled alike: as well as the one with the least room allows. */
export function labellingOf(order: Order): Labelling {
  const stock = stockOf(order);
  const zones = zonesOf(stock, order.job.room.cable.outsideDiameterMm);
  if (zones.kind === "refused") return { kind: "refused", stock, why: zones };
  const labels = order.job.room.speakers.flatMap((speaker): Label[] => [
    { speaker, end: "rack" },
    { speaker, end: "speaker" },
  ]);
  let id = "";
  for (const filling of FILLINGS) {
    const drawn = drawAll(order, { stock, zones, filling, labels });
    if (drawn.kind === "drawn") {
      return { kind: "printed", stock, zones, amount: filling.amount, pages: drawn.pages };
    }
    id = drawn.id;
  }
  return { kind: "refused", stock, why: { kind: "refused", why: "too-small", id, flagMm: zones.flagMm } };
}

interface Drawing {
  readonly stock: LabelStock;
  readonly zones: LaidZones;
  readonly filling: Filling;
  readonly labels: readonly Label[];
}

/** Every label on its place, sheet by sheet, the used places of the first sheet left out; or the id that does not fit. */
function drawAll(
  order: Order,
  { stock, zones, filling, labels }: Drawing,
): { readonly kind: "drawn"; readonly pages: Item[][] } | { readonly kind: "no-room"; readonly id: string } {
  const pages: Item[][] = [];
  const perSheet = labelsPerSheet(stock);
  for (const [count, { speaker, end }] of labels.entries()) {
    const place = (stock.used % perSheet) + count;
    const page = Math.floor(place / perSheet);
    const here = pages[page] ?? [];
    for (const zone of zones.boxes) {
      const box = zoneOnPage(order, stock, place % perSheet, zone);
      const items = labelItems(order, speaker, { end, filling, box });
      if (items === null) return { kind: "no-room", id: speaker.id };
      here.push(...items);
    }
    pages[page] = here;
  }
  return { kind: "drawn", pages };
}
