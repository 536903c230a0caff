import { readFileSync, writeFileSync } from "node:fs";
import { writePdf } from "../../../src/output/pdf.js";

/* Our back end alone: pages as JSON in, one PDF out. */
const [pages = "", out = ""] = process.argv.slice(2);
const named = { cut: "cut", clear: "clear", framing: "framing", obstructions: "obstructions" };
const layerNames = { ...named, dimensions: "dimensions", aim: "aim", notes: "notes" };
const options = { title: "pages", language: "en", layerNames };
writeFileSync(out, await writePdf(JSON.parse(readFileSync(pages, "utf8")), options));
