import { execFile } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { promisify } from "node:util";
import { PDFiumLibrary } from "@hyzyla/pdfium";
import { Resvg } from "@resvg/resvg-js";
import { getDocument, VerbosityLevel } from "pdfjs-dist/legacy/build/pdf.mjs";
import { PNG } from "pngjs";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { RESVG_OPTIONS } from "../paper/renderers.js";
import { exampleRooms, ownFolder, typed } from "./command.js";

/*
 * What was printed, opened by readers that share no code with ours or with one another: pdf.js and PDFium as npm
 * packages, poppler, Ghostscript and qpdf from Debian; SVG by libxml2's validator, resvg and librsvg.
 */

const run = promisify(execFile);

/** Each example as its file says; the first once on other paper and in each language alone, and once on a roll. */
const PACKETS: readonly { readonly room: string; readonly options: readonly string[] }[] = [
  ...exampleRooms().map((room) => ({ room, options: [] })),
  ...exampleRooms()
    .slice(2, 3)
    .flatMap((room) => [
      { room, options: ["--paper", "A4", "--language", "en"] },
      { room, options: ["--paper", "letter", "--language", "es"] },
    ]),
  ...exampleRooms()
    .slice(0, 1)
    .map((room) => ({ room, options: ["--paper", "roll-914", "--language", "en,es"] })),
];

/** Of their size, at which every drawing of every example is rendered: small, since there are many. */
const ZOOM = 0.25;

interface Printed {
  readonly name: string;
  /** As the room file says. */
  readonly job: string;
  readonly folder: string;
  readonly contents: Contents;
}

/** What a packet says of itself. */
interface Contents {
  readonly files: readonly string[];
  readonly pages: readonly unknown[];
  readonly speakers: readonly { readonly id: string; readonly channel: string }[];
}

const printed: Printed[] = [];

beforeAll(async () => {
  for (const { room, options } of PACKETS) {
    const folder = ownFolder();
    const { code, err } = await typed(["print", room, "-o", "packet", ...options], { folder });
    expect([0, 1], err).toContain(code);
    const contents: Contents = JSON.parse(readFileSync(join(folder, "packet", "packet.json"), "utf8"));
    printed.push({
      name: [basename(room, ".yaml"), ...options].join(" "),
      job: /^ {2}name: (.*)$/mu.exec(readFileSync(room, "utf8"))?.[1] ?? "",
      folder: join(folder, "packet"),
      contents,
    });
  }
});

const tally = { pdf: 0, pdfPages: 0, svg: 0 };
afterAll(() => console.log(JSON.stringify(tally)));

interface File {
  readonly name: string;
  readonly path: string;
  readonly bytes: Uint8Array;
}

const filesEnding = (ending: string, packets: readonly Printed[] = printed): readonly File[] =>
  packets.flatMap(({ name, folder, contents }) =>
    contents.files
      .filter((path) => path.endsWith(ending))
      .map((path) => ({
        name: `${name}: ${path}`,
        path: join(folder, path),
        bytes: Uint8Array.from(readFileSync(join(folder, path))),
      })),
  );

/** Everything that a program from Debian says beside its answer; a refusal throws. */
const complaintsOf = async (program: string, ...words: readonly string[]): Promise<string> =>
  (await run(program, words, { maxBuffer: 2 ** 26 })).stderr;

describe("every PDF opens without a complaint", () => {
  test("in pdf.js, which stops at errors and is asked for its warnings", async () => {
    const warnings = [vi.spyOn(console, "log"), vi.spyOn(console, "warn")];
    for (const each of warnings) each.mockImplementation(() => undefined);
    for (const { name, bytes } of filesEnding(".pdf")) {
      const document = await getDocument({
        data: bytes,
        stopAtErrors: true,
        verbosity: VerbosityLevel.WARNINGS,
        useSystemFonts: false,
        disableFontFace: true,
      }).promise;
      tally.pdf += 1;
      for (let number = 1; number <= document.numPages; number++) {
        const page = await document.getPage(number);
        const operators = await page.getOperatorList();
        expect(operators.fnArray.length, `${name}, page ${number}`).toBeGreaterThan(0);
        tally.pdfPages += 1;
      }
      await document.destroy();
      const said = warnings.flatMap(({ mock }) => mock.calls);
      expect(said, name).toEqual([]);
    }
    vi.restoreAllMocks();
  });

  test("in PDFium, which finds the same pages and draws ink on each", async () => {
    const library = await PDFiumLibrary.init();
    for (const { name, path, bytes } of filesEnding(".pdf")) {
      const document = await library.loadDocument(bytes);
      const pages = [...document.pages()];
      expect(pages.length, name).toBe(
        Number(/^Pages:\s+(\d+)$/mu.exec((await run("pdfinfo", [path])).stdout)?.[1]),
      );
      for (const page of pages) {
        const { data } = await page.render({ scale: 0.25, render: "bitmap" });
        expect(
          data.some((byte) => byte < 200),
          `${name}, page ${page.number + 1}`,
        ).toBe(true);
      }
      document.destroy();
    }
    library.destroy();
  });

  test("in poppler: its facts, its fonts, its text", async () => {
    for (const { name, path } of filesEnding(".pdf")) {
      expect(await complaintsOf("pdfinfo", path), name).toBe("");
      expect(await complaintsOf("pdftotext", path, "-"), name).toBe("");
      const fonts = await run("pdffonts", [path]);
      expect(fonts.stderr, name).toBe("");
      // Each font is embedded, as a subset, with a map back to Unicode.
      for (const line of fonts.stdout.trim().split("\n").slice(2))
        expect(line, name).toMatch(/ yes +yes +yes +\d+ +\d+$/u);
    }
  });

  test("in Ghostscript, which stops at errors and warnings, and in qpdf, which checks every object", async () => {
    for (const { name, path } of filesEnding(".pdf")) {
      const strict = ["-dPDFSTOPONERROR", "-dPDFSTOPONWARNING", "-dSAFER"];
      const gs = await run("gs", ["-q", "-dNOPAUSE", "-dBATCH", ...strict, "-sDEVICE=nullpage", path]);
      expect(gs.stdout + gs.stderr, name).toBe("");
      const qpdf = await run("qpdf", ["--check", path]);
      expect(qpdf.stderr, name).toBe("");
      expect(qpdf.stdout, name).toMatch(/No syntax or stream encoding errors found/u);
    }
  });
});

describe("the text of every packet", () => {
  test("is complete: every page has some, and a search finds the job, every id and every channel", async () => {
    for (const { name, job, folder, contents } of printed) {
      const { stdout } = await run("pdftotext", [join(folder, "packet.pdf"), "-"], { maxBuffer: 2 ** 26 });
      // A page ends with a form feed.
      const pages = stdout.split("\f").slice(0, -1);
      expect(pages.length, name).toBe(contents.pages.length);
      expect(pages.filter((page) => page.trim() === "")).toEqual([]);
      expect(job).not.toBe("");
      const wanted = [job, ...contents.speakers.flatMap(({ id, channel }) => [id, channel])];
      expect(
        wanted.filter((word) => !stdout.includes(word)),
        name,
      ).toEqual([]);
      // Whatever no map back to Unicode is known for would come out as this.
      expect(stdout).not.toContain("\ufffd");
    }
  });

  test("is tagged with the first language of its sheets", async () => {
    for (const { name, bytes } of filesEnding("packet.pdf")) {
      const document = await getDocument({ data: bytes, verbosity: VerbosityLevel.ERRORS }).promise;
      const { info } = await document.getMetadata();
      expect("Language" in info ? info.Language : null, name).toBe(/--language es/u.test(name) ? "es" : "en");
      await document.destroy();
    }
  });
});

describe("every SVG", () => {
  test("validates as XML", async () => {
    for (const { folder, name } of printed) {
      const files = readdirSync(join(folder, "svg")).map((file) => join(folder, "svg", file));
      expect(files.length).toBeGreaterThan(2);
      expect(await complaintsOf("xmllint", "--noout", "--nonet", ...files), name).toBe("");
      tally.svg += files.length;
    }
  });

  test("renders in resvg and in librsvg, with ink on it in both", async () => {
    // Each example as its file says: on other paper and in one language alone they are the same drawings.
    const drawings = filesEnding(".svg", printed.slice(0, exampleRooms().length));
    expect(drawings.length).toBeGreaterThan(100);
    for (const { name, path, bytes } of drawings) {
      const drawing = run("rsvg-convert", ["--background-color", "white", "--zoom", `${ZOOM}`, path], {
        encoding: "buffer",
        maxBuffer: 2 ** 28,
      });
      const { width, pixels } = new Resvg(Buffer.from(bytes), {
        ...RESVG_OPTIONS,
        fitTo: { mode: "zoom", value: ZOOM },
      }).render();
      expect(width, name).toBeGreaterThan(50);
      expect(inkIn(pixels), name).toBeGreaterThan(0);
      const drawn = await drawing;
      expect(drawn.stderr.toString(), name).toBe("");
      expect(inkIn(PNG.sync.read(drawn.stdout).data), name).toBeGreaterThan(0);
    }
  });
});

/** How many of the pixels are dark. */
function inkIn(pixels: Uint8Array): number {
  let dark = 0;
  for (let at = 1; at < pixels.length; at += 4) if ((pixels[at] ?? 255) < 128) dark += 1;
  return dark;
}
