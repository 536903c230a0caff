import { readFileSync } from "node:fs";
import { hasGlyph } from "../../src/drawing/coverage.js";
import type { Item, Page, PagePoint } from "../../src/drawing/drawing.js";
import { emMm, measureText } from "../../src/drawing/text.js";
import { answerRoom } from "../../src/job.js";
import { readRoom } from "../../src/room/read.js";
import { resolveRoom } from "../../src/room/resolve.js";
import { orderOf } from "../../src/sheets/order.js";
import { packet } from "../../src/sheets/packet.js";
import { SAFE_MARGINS_MM } from "../../src/standards/paper.js";

/** The pages of a room's packet, as they are handed to our back end. */
export function packetPages(file: string): readonly Page[] {
  const read = readRoom(readFileSync(file), file, { hasGlyph });
  if (!read.ok) throw new Error(`${file} is no room`);
  const resolved = resolveRoom(read.file);
  if (!resolved.ok) throw new Error(`${file} is no room`);
  const { fingerprint, locate } = read;
  const job = answerRoom({ file, fingerprint, room: resolved.room, locate });
  const wishes = {
    paper: null,
    languages: null,
    margins: SAFE_MARGINS_MM,
    correction: null,
    fullSize: false,
  };
  return packet(orderOf(job, wishes)).pages.map(({ page }) => page);
}

/** An item with nothing left to reckon: places on the page, a text by where it starts and its size in mm. */
export type Plain =
  | Exclude<Item, { kind: "group" | "text" }>
  | {
      readonly kind: "text";
      readonly at: PagePoint;
      readonly text: string;
      readonly emMm: number;
      readonly face: string;
      readonly turnDeg: number;
      readonly grey: number;
    }
  | {
      readonly kind: "window";
      readonly x: number;
      readonly y: number;
      readonly widthMm: number;
      readonly heightMm: number;
      readonly items: readonly Plain[];
    };

export interface PlainPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly items: readonly Plain[];
}

/** The same pages for those who know nothing of ours. */
export const plainPages = (pages: readonly Page[]): readonly PlainPage[] =>
  pages.map(({ widthMm, heightMm, items }) => ({ widthMm, heightMm, items: plain(items, { x: 0, y: 0 }) }));

const plain = (items: readonly Item[], shift: PagePoint): readonly Plain[] =>
  items.flatMap((item) => plainItem(item, shift));

function plainItem(item: Item, shift: PagePoint): readonly Plain[] {
  const moved = ({ x, y }: PagePoint): PagePoint => ({ x: x + shift.x, y: y + shift.y });
  switch (item.kind) {
    case "line":
      return [{ ...item, from: moved(item.from), to: moved(item.to) }];
    case "circle":
      return [{ ...item, centre: moved(item.centre) }];
    case "rectangle":
      return [{ ...item, corner: moved(item.corner) }];
    case "path":
      return [
        {
          ...item,
          steps: item.steps.map((step) => (step.to === "close" ? step : { ...step, at: moved(step.at) })),
        },
      ];
    case "text": {
      const turnDeg = item.turnDeg ?? 0;
      const back = { start: 0, middle: 0.5, end: 1 }[item.anchor] * measureText(item.text, item).widthMm;
      const radians = (turnDeg * Math.PI) / 180;
      const { x, y } = moved(item.at);
      const at = { x: x - back * Math.cos(radians), y: y - back * Math.sin(radians) };
      return [
        { kind: "text", at, text: item.text, emMm: emMm(item), face: item.face, turnDeg, grey: item.ink.red },
      ];
    }
    case "group": {
      const inside = moved(item.shift ?? { x: 0, y: 0 });
      const items = plain(item.items, inside);
      if (item.window === undefined) return items;
      return [{ kind: "window", ...item.window, ...moved(item.window), items }];
    }
  }
}
