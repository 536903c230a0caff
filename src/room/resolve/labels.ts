import type { Problem } from "../../findings/complaint.js";
import { InternalError } from "../../findings/internal-error.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import { LABEL_STOCK, type LabelSheet } from "../../standards/label-stock.js";
import { parsePaper } from "../../standards/paper.js";
import type { LabelStock } from "../room.js";
import type { StockFile } from "../schema/printing.js";
import type { RoomFile } from "../schema.js";
import { type Resolved, refused, resolved } from "./resolved.js";

/** The label stock that the file asks for; null where it asks for none. */
export function labelStockOf({ labels }: RoomFile): Resolved<LabelStock | null> {
  if (labels === undefined) return resolved(null);
  const used = labels.used ?? 0;
  if (typeof labels.stock === "string") {
    return resolved({ ...LABEL_STOCK[labels.stock], kind: "flat", printedHeightMm: null, used });
  }
  const sheet = sheetOf(labels.stock);
  const problems = sheetProblems(sheet);
  if (problems.length > 0) return refused(...problems);
  const { kind = "flat", printed = null } = labels.stock;
  return resolved({ ...sheet, kind, printedHeightMm: printed, used });
}

function sheetOf(stock: StockFile): LabelSheet {
  const page = parsePaper(stock.page);
  if (!page.ok || page.paper.kind !== "sheet") throw new InternalError(`no sheet named ${stock.page}`);
  return {
    pageWidthMm: page.paper.widthMm,
    pageHeightMm: page.paper.heightMm,
    labelWidthMm: stock.label.width,
    labelHeightMm: stock.label.height,
    columns: stock.columns,
    rows: stock.rows,
    leftMm: stock.left,
    topMm: stock.top,
    pitchXMm: stock.pitch?.across ?? stock.label.width,
    pitchYMm: stock.pitch?.down ?? stock.label.height,
  };
}

/** Labels that would lie over each other or past the sheet's edge. */
function sheetProblems(sheet: LabelSheet): readonly Problem[] {
  const across = sheet.leftMm + (sheet.columns - 1) * sheet.pitchXMm + sheet.labelWidthMm - sheet.pageWidthMm;
  const down = sheet.topMm + (sheet.rows - 1) * sheet.pitchYMm + sheet.labelHeightMm - sheet.pageHeightMm;
  return [...offPage("columns", across), ...offPage("rows", down)];
}

function offPage(key: "columns" | "rows", byMm: number): readonly Problem[] {
  if (byMm <= EPSILON_MM) return [];
  return [{ code: "labels-off-page", path: ["labels", "stock", key], at: "value", figures: { byMm } }];
}
