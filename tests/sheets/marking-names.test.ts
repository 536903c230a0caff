import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { textBox } from "../../src/drawing/text.js";
import { surfaceMarks } from "../../src/sheets/surface-marks.js";
import { roomOf } from "../rooms/build.js";
import { answer } from "../rooms/job.js";
import { ASKED, opened, orderFor } from "./orders.js";

/*
 * Whoever cuts reads the name that is nearest to a hole as the hole's name. In both rooms two openings lie near one
 * another on the page, with words under their names that are wider than the gap between them.
 */

const EXAMPLES = join(import.meta.dirname, "..", "..", "examples");

/** A name further off than this has a line to its opening. */
const FAR_MM = 20;

const away = (
  box: { x: number; y: number; widthMm: number; heightMm: number },
  at: { x: number; y: number },
): number =>
  Math.hypot(
    Math.max(box.x - at.x, 0, at.x - box.x - box.widthMm),
    Math.max(box.y - at.y, 0, at.y - box.y - box.heightMm),
  );

describe.each(["osier-row-gallery.yaml", "quarry-lane-den.yaml"])("%s", (file) => {
  const job = answer(roomOf(readFileSync(join(EXAMPLES, file), "utf8")));

  test.each(ASKED.filter(({ paper }) => paper !== "roll-36"))(
    "no opening's name stands nearer to another: $paper $languages",
    (asked) => {
      const ceiling = surfaceMarks(orderFor(job, asked)).find(({ name }) => name === "ceiling");
      const items = opened(ceiling?.pages[0]?.items ?? []);
      const cuts = items.flatMap((item) =>
        item.kind === "circle" && item.mark?.role === "cut"
          ? [{ id: item.mark.speaker, at: item.centre }]
          : [],
      );
      expect(cuts).toHaveLength(4);
      for (const { id, at } of cuts) {
        const names = items.filter((item) => item.kind === "text" && item.text === id);
        const boxes = names.flatMap((item) => (item.kind === "text" ? [textBox(item)] : []));
        const toOwn = Math.min(...boxes.map((box) => away(box, at)));
        const name = boxes.find((box) => away(box, at) === toOwn);
        if (toOwn > FAR_MM) continue;
        if (name === undefined) throw new Error(`no name of ${id}`);
        for (const other of cuts.filter((cut) => cut.id !== id)) {
          expect(away(name, other.at), `${id} beside ${other.id}`).toBeGreaterThan(toOwn);
        }
      }
    },
  );
});
