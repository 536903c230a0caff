import type { Box } from "../drawing/pen.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { LabelStock } from "../room/room.js";
import { LABEL_STOCK } from "../standards/label-stock.js";
import { printable } from "./frame.js";
import type { Order } from "./sheet.js";

/** Kept free inside a label's edge, for stock that lies a little beside its place. Our own choice. */
const EDGE_MM = 1.5;

/** The room's stock, or flat labels of the sheet that goes with the paper: A4 for paper of the ISO series, else letter. */
export function stockOf(order: Order): LabelStock {
  const { labels } = order.job.room;
  if (labels !== null) return labels;
  const { widthMm, heightMm } = order.reading;
  // Sides of ISO 216 are as 1 to the root of 2; no other paper of the table is within 1 % of it.
  const isIso = Math.abs(heightMm / widthMm / Math.SQRT2 - 1) < 0.01;
  const geometry = LABEL_STOCK[isIso ? "A4-24" : "letter-30"];
  return { ...geometry, kind: "flat", printedHeightMm: null, used: 0 };
}

export const labelsPerSheet = (stock: LabelStock): number => stock.columns * stock.rows;

/** Outline of a label on its sheet, in page coordinates; counted along the rows from 0. */
export function labelBox(stock: LabelStock, index: number): Box {
  const column = index % stock.columns;
  const row = Math.floor(index / stock.columns);
  return {
    x: stock.leftMm + column * stock.pitchXMm,
    y: stock.topMm + row * stock.pitchYMm,
    widthMm: stock.labelWidthMm,
    heightMm: stock.labelHeightMm,
  };
}

/** Where words may stand on one label, in its own coordinates, before the printer's margins are taken off. */
export interface LaidZones {
  readonly kind: "zones";
  readonly boxes: readonly Box[];
  readonly remarks: readonly Remark[];
  /** Length of each flag, in mm; null on stock without flags. */
  readonly flagMm: number | null;
}

export interface RefusedZones {
  readonly kind: "refused";
  readonly why: "flag-without-diameter" | "wrap-without-printed-part";
}

/** What a person must know about wrap stock before printing on it; lengths in mm. */
export type Remark =
  | { readonly kind: "laps"; readonly printedMm: number; readonly aroundMm: number }
  | { readonly kind: "short-tail"; readonly tailMm: number; readonly aroundMm: number }
  | { readonly kind: "diameter-not-given"; readonly leastMm: number; readonly mostMm: number }
  /** The tail is shorter than the printed part: whatever the cable, one of the two rules is broken. */
  | { readonly kind: "no-cable-fits"; readonly printedMm: number; readonly tailMm: number };

/** Zones of a label on a cable of this outside diameter; null where it is not given. */
export function zonesOf(stock: LabelStock, outsideDiameterMm: number | null): LaidZones | RefusedZones {
  const label = { x: 0, y: 0, widthMm: stock.labelWidthMm, heightMm: stock.labelHeightMm };
  if (stock.kind === "flat") return laid([inset(label)]);
  if (stock.kind === "wrap") return wrapZones(stock, outsideDiameterMm);
  return flagZones(stock, outsideDiameterMm);
}

const laid = (boxes: readonly Box[], remarks: readonly Remark[] = []): LaidZones => ({
  kind: "zones",
  boxes,
  remarks,
  flagMm: null,
});

const inset = ({ x, y, widthMm, heightMm }: Box): Box => ({
  x: x + EDGE_MM,
  y: y + EDGE_MM,
  widthMm: widthMm - 2 * EDGE_MM,
  heightMm: heightMm - 2 * EDGE_MM,
});

/** The printed part goes round the cable once at most, and the clear tail at least once over it (rule of the trade). */
function wrapZones(stock: LabelStock, outsideDiameterMm: number | null): LaidZones | RefusedZones {
  const printedMm = stock.printedHeightMm;
  if (printedMm === null) return { kind: "refused", why: "wrap-without-printed-part" };
  const tailMm = stock.labelHeightMm - printedMm;
  const zone = (heightMm: number): Box => inset({ x: 0, y: 0, widthMm: stock.labelWidthMm, heightMm });
  if (outsideDiameterMm === null) {
    const range = { leastMm: printedMm / Math.PI, mostMm: tailMm / Math.PI };
    const remark: Remark =
      tailMm < printedMm
        ? { kind: "no-cable-fits", printedMm, tailMm }
        : { kind: "diameter-not-given", ...range };
    return laid([zone(printedMm)], [remark]);
  }
  const aroundMm = Math.PI * outsideDiameterMm;
  const remarks: Remark[] = [];
  if (printedMm > aroundMm + EPSILON_MM) remarks.push({ kind: "laps", printedMm, aroundMm });
  if (tailMm < aroundMm - EPSILON_MM) remarks.push({ kind: "short-tail", tailMm, aroundMm });
  return laid([zone(Math.min(printedMm, aroundMm))], remarks);
}

/** A flag at each end of the label, what the cable takes between them: each is (L - pi OD) / 2 long. */
function flagZones(stock: LabelStock, outsideDiameterMm: number | null): LaidZones | RefusedZones {
  if (outsideDiameterMm === null) return { kind: "refused", why: "flag-without-diameter" };
  const flagMm = flagLengthMm(stock.labelWidthMm, outsideDiameterMm);
  const flag = (x: number): Box => inset({ x, y: 0, widthMm: flagMm, heightMm: stock.labelHeightMm });
  return { ...laid([flag(0), flag(stock.labelWidthMm - flagMm)]), flagMm };
}

/** Length of each flag of a label that is folded round a cable: (L - pi OD) / 2, in mm, negative where it does not reach round. */
export const flagLengthMm = (labelMm: number, outsideDiameterMm: number): number =>
  (labelMm - Math.PI * outsideDiameterMm) / 2;

/** A zone of a label as it lies on the page, without what the printer does not reach. */
export function zoneOnPage(order: Order, stock: LabelStock, index: number, zone: Box): Box {
  const label = labelBox(stock, index);
  const page = printable(order, { widthMm: stock.pageWidthMm, heightMm: stock.pageHeightMm });
  const left = Math.max(label.x + zone.x, page.x);
  const top = Math.max(label.y + zone.y, page.y);
  const right = Math.min(label.x + zone.x + zone.widthMm, page.x + page.widthMm);
  const bottom = Math.min(label.y + zone.y + zone.heightMm, page.y + page.heightMm);
  return { x: left, y: top, widthMm: Math.max(0, right - left), heightMm: Math.max(0, bottom - top) };
}
