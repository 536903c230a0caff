import type { Problem } from "../../findings/complaint.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import { LABEL_STOCK, type LabelSheet, type LabelStockName } from "../../standards/label-stock.js";
import type { LabelStock, Path } from "../room.js";
import type { StockFile } from "../schema/printing.js";
import type { RoomFile } from "../schema.js";
import { type Resolved, refused, resolved } from "./resolved.js";

/** The label stock that the file asks for; null where it asks for none. */
export function labelStockOf({ labels }: RoomFile): Resolved<LabelStock | null> {
  if (labels === undefined) return resolved(null);
  const used = labels.used ?? 0;
  const stock = typeof labels.stock === "string" ? namedStock(labels.stock) : statedStock(labels.stock);
  if (!stock.ok) return stock;
  const most = stock.value.columns * stock.value.rows - 1;
  if (used <= most) return resolved({ ...stock.value, used });
  const figures = { typed: String(used), least: 0, most };
  return refused({ code: "not-a-whole-number", path: ["labels", "used"], at: "value", figures });
}

type Unused = Omit<LabelStock, "used">;

const namedStock = (name: LabelStockName): Resolved<Unused> =>
  resolved({ ...LABEL_STOCK[name], kind: "flat", printedHeightMm: null });

function statedStock(stock: StockFile): Resolved<Unused> {
  const sheet = sheetOf(stock);
  const problems = [...sheetProblems(sheet), ...printedProblems(stock)];
  if (problems.length > 0) return refused(...problems);
  return resolved({ ...sheet, kind: stock.kind ?? "flat", printedHeightMm: stock.printed ?? null });
}

const sheetOf = (stock: StockFile): LabelSheet => ({
  pageWidthMm: stock.page.widthMm,
  pageHeightMm: stock.page.heightMm,
  labelWidthMm: stock.label.width,
  labelHeightMm: stock.label.height,
  columns: stock.columns,
  rows: stock.rows,
  leftMm: stock.left,
  topMm: stock.top,
  pitchXMm: stock.pitch?.across ?? stock.label.width,
  pitchYMm: stock.pitch?.down ?? stock.label.height,
});

const STOCK: Path = ["labels", "stock"];

/** Labels that would lie over each other or past the sheet's edge. */
function sheetProblems(sheet: LabelSheet): readonly Problem[] {
  const across = { count: sheet.columns, pitchMm: sheet.pitchXMm, labelMm: sheet.labelWidthMm };
  const down = { count: sheet.rows, pitchMm: sheet.pitchYMm, labelMm: sheet.labelHeightMm };
  return [
    ...overlapProblem("across", across),
    ...overlapProblem("down", down),
    ...offPageProblem("columns", sheet.leftMm + reachMm(across) - sheet.pageWidthMm),
    ...offPageProblem("rows", sheet.topMm + reachMm(down) - sheet.pageHeightMm),
  ];
}

interface Row {
  readonly count: number;
  readonly pitchMm: number;
  readonly labelMm: number;
}

const reachMm = ({ count, pitchMm, labelMm }: Row): number => (count - 1) * pitchMm + labelMm;

function overlapProblem(key: "across" | "down", { count, pitchMm, labelMm }: Row): readonly Problem[] {
  const byMm = labelMm - pitchMm;
  if (count === 1 || byMm <= EPSILON_MM) return [];
  return [{ code: "labels-overlap", path: [...STOCK, "pitch", key], at: "value", figures: { byMm } }];
}

function offPageProblem(key: "columns" | "rows", byMm: number): readonly Problem[] {
  if (byMm <= EPSILON_MM) return [];
  return [{ code: "labels-off-page", path: [...STOCK, key], at: "value", figures: { byMm } }];
}

/** Stock that wraps itself says how much of it is printed, and that is a part of the label. */
function printedProblems({ kind, printed, label }: StockFile): readonly Problem[] {
  const path = [...STOCK, "printed"];
  if (kind === "wrap" && printed === undefined) {
    return [{ code: "missing-key", path, at: "value", figures: { key: "printed" } }];
  }
  const byMm = (printed ?? 0) - label.height;
  return byMm <= EPSILON_MM ? [] : [{ code: "taller-than-label", path, at: "value", figures: { byMm } }];
}
