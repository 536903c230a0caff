import type { Item, Page } from "../drawing/drawing.js";
import { type Box, circle, line, PEN, point, rectangle, text } from "../drawing/pen.js";
import { longRuler, longRulerMm } from "../drawing/ruler.js";
import { type Table, tablePage } from "../drawing/table.js";
import { measureText } from "../drawing/text.js";
import { type Block, stack, textBlock } from "../drawing/text-block.js";
import { InternalError } from "../findings/internal-error.js";
import { PAPERS } from "../standards/paper.js";
import { fittedPercent, SHRUNK_PERCENT } from "../standards/print-faults.js";
import { millimetres } from "../units/format.js";
import type { Words } from "../words/words.js";
import { flow, type Part, whole } from "./flow.js";
import { frameArea, type PageSize, printable } from "./frame.js";
import type { Body, FrameFacts, Margins, Order, Paper, Sheet } from "./sheet.js";

/** What the page needs to know: no room and no job. */
export interface RulerRequest {
  readonly words: Words;
  readonly language: string;
  readonly paper: Paper;
  readonly margins: Margins;
  /** Words about a printer's correction that the page is printed with; null without one. */
  readonly correction: string | null;
}

/** The paper's own strip beside a long ruler, its figures included. */
const RULER_STRIP_MM = 15;
/** Wider columns of text are hard to read. */
const WIDEST_MM = 260;
const SQUARE_MM = 100;
const GAP_MM = 3;

/**
 * The page that proves a printer's scale, on its own: two long rulers, a square, what the readings mean. Paper smaller
 * than the table's holds only what fits under the rulers.
 */
export function rulerPage({ words, language, paper, margins, correction }: RulerRequest): Body & Page {
  const size = sizeOf(paper);
  const { title } = words.ruler;
  const named = words.ruler.paper(paper.name, sizeText(size));
  const heading = [words.frame.trueScale, named, ...(correction === null ? [] : [correction])];
  const box = printable({ margins }, size);
  return {
    ...size,
    title,
    language,
    frame: null,
    items: rulerPages(words, box, [
      (place) => textBlock(title, { ...place, capMm: 6, face: "bold" }),
      (place) => textBlock(heading.join("  ·  "), { ...place, capMm: 3, face: "bold" }),
    ])[0],
  };
}

/** The same page inside a packet, with the frame that every sheet has. */
export function rulerSheet(order: Order): Sheet[] {
  const { words, reading } = order;
  const facts: FrameFacts = {
    title: words.ruler.title,
    view: null,
    hold: null,
    front: null,
    scale: words.frame.trueScale,
    faces: null,
  };
  const { widthMm, heightMm } = reading;
  const { title } = facts;
  const pages = rulerPages(words, frameArea(order, facts, reading), []).map(
    (items): Body => ({ widthMm, heightMm, title, frame: facts, items }),
  );
  return [{ name: "ruler", trades: ["drywall", "installer"], title, pages, whole: null }];
}

/** A roll's page is as long as it is wide. */
const sizeOf = (paper: Paper): PageSize => ({
  widthMm: paper.widthMm,
  heightMm: paper.kind === "roll" ? paper.widthMm : paper.heightMm,
});

const sizeText = ({ widthMm, heightMm }: PageSize): string =>
  `${plain(widthMm)} × ${millimetres(heightMm, { decimals: decimalsOf(heightMm) }).plain}`;

const plain = (mm: number): string => mm.toFixed(decimalsOf(mm));
const decimalsOf = (mm: number): number => (Number.isInteger(mm) ? 0 : 1);

type Maker = (place: Box) => Block;

/** Both long rulers from one corner and beside them the rest; what the box does not hold comes on pages after it. */
function rulerPages(words: Words, box: Box, heading: readonly Maker[]): [Item[], ...Item[][]] {
  const acrossMm = longRulerMm(box.widthMm - RULER_STRIP_MM);
  const downMm = longRulerMm(box.heightMm - RULER_STRIP_MM);
  const zero = point(box.x + RULER_STRIP_MM, box.y + RULER_STRIP_MM);
  const free = {
    x: zero.x + GAP_MM,
    y: zero.y + GAP_MM,
    widthMm: Math.min(box.x + box.widthMm - zero.x - GAP_MM, WIDEST_MM),
    heightMm: box.y + box.heightMm - zero.y - GAP_MM,
  };
  const [first = [], ...more] = flow(partsOf(words, { acrossMm, downMm }, heading), free, GAP_MM);
  const rulers = [
    ...longRuler({ x: zero.x, y: box.y + 7, direction: "across", lengthMm: acrossMm }),
    ...longRuler({ x: box.x + 7, y: zero.y, direction: "down", lengthMm: downMm }),
  ];
  return [[...rulers, ...first], ...more];
}

interface Lengths {
  readonly acrossMm: number;
  readonly downMm: number;
}

function partsOf(words: Words, { acrossMm, downMm }: Lengths, heading: readonly Maker[]): Part[] {
  const { ruler } = words;
  return [
    ...heading.map(whole),
    whole((place) => stepLines(ruler.steps, place)),
    whole((place) =>
      stack(place.y, [
        (y) => foundLine(words, ruler.across, acrossMm, { ...place, y }),
        (y) => foundLine(words, ruler.down, downMm, { ...place, y }),
      ]),
    ),
    whole((place) =>
      stack(place.y, [
        (y) => textBlock(ruler.type, { ...place, y, capMm: 2.5 }),
        (y) => textBlock(ruler.command, { ...place, y, capMm: 2.5, face: "bold" }),
      ]),
    ),
    whole((place) => squareAndFaults(words, place)),
  ];
}

/** Numbered lines, one under the other. */
function stepLines(steps: readonly string[], place: Box): Block {
  const numberMm = 6;
  return stack(
    place.y,
    steps.map((step, index) => (y: number) => {
      const words = textBlock(step, {
        x: place.x + numberMm,
        y,
        widthMm: place.widthMm - numberMm,
        capMm: 2.5,
      });
      return {
        ...words,
        items: [
          text(point(place.x, y + 2.5), String(index + 1), { capMm: 2.5, face: "bold" }),
          ...words.items,
        ],
      };
    }),
    1,
  );
}

/** One direction: what is printed, a line for what was measured, and what that makes of 100 mm. */
function foundLine(words: Words, name: string, lengthMm: number, place: Box): Block {
  const { ruler } = words;
  const baseline = place.y + 5;
  const write = (x: number): Item => line(point(x, baseline + 0.7), point(x + 20, baseline + 0.7), PEN.fine);
  const label = textBlock(name, { x: place.x, y: place.y + 1.5, widthMm: 34, capMm: 3.5, face: "bold" });
  const stretch = ruler.stretch(lengthMm);
  const stretchX = place.x + 36;
  const writeX = stretchX + widthOf(stretch) + 1.5;
  const divided = ruler.divided(String(lengthMm / 100));
  return {
    items: [
      ...label.items,
      text(point(stretchX, baseline), stretch, { capMm: 2.5 }),
      write(writeX),
      text(point(writeX + 22, baseline), divided, { capMm: 2.5 }),
      write(writeX + 22 + widthOf(divided) + 1.5),
    ],
    heightMm: Math.max(9, label.heightMm + 1.5),
  };
}

const widthOf = (words: string): number => measureText(words, { capMm: 2.5, face: "regular" }).widthMm;

/** The square with its circle and diagonals, and the faults that a reading betrays beside it, or under it on narrow paper. */
function squareAndFaults(words: Words, place: Box): Block {
  const besideMm = place.widthMm - SQUARE_MM - 6;
  const square = squareBlock(words, place);
  if (besideMm < 60) return square;
  const table = tablePage(faultTable(words), {
    x: place.x + SQUARE_MM + 6,
    y: place.y,
    widthMm: Math.min(besideMm, 120),
    heightMm: Number.POSITIVE_INFINITY,
    first: 0,
  });
  return { items: [...square.items, ...table.items], heightMm: Math.max(square.heightMm, table.heightMm) };
}

function squareBlock(words: Words, { x, y }: Box): Block {
  const box = { x, y, widthMm: SQUARE_MM, heightMm: SQUARE_MM };
  const far = point(x + SQUARE_MM, y + SQUARE_MM);
  const diagonalMm = (SQUARE_MM * Math.SQRT2).toFixed(1);
  const caption = textBlock(words.ruler.square(diagonalMm), {
    x,
    y: far.y + 2,
    widthMm: SQUARE_MM,
    capMm: 2.5,
  });
  return {
    items: [
      rectangle(box, PEN.thin),
      circle(point(x + SQUARE_MM / 2, y + SQUARE_MM / 2), SQUARE_MM / 2, PEN.thin),
      line(point(x, y), far, PEN.fine),
      line(point(far.x, y), point(x, far.y), PEN.fine),
      ...caption.items,
    ],
    heightMm: SQUARE_MM + 2 + caption.heightMm,
  };
}

/** What a length of 100 mm reads after each mishap, computed from the sizes of the paper. */
function faultTable(words: Words): Table {
  const { faults } = words.ruler;
  const fitted = (page: string, onto: string): string[] => [
    fittedPercent(sheetNamed(page), sheetNamed(onto)).toFixed(1),
    faults.fitted(page, onto),
  ];
  const { least, most } = SHRUNK_PERCENT;
  return {
    capMm: 2.5,
    columns: [
      { heading: faults.heading, weight: 0, face: "bold", leastMm: 24 },
      { heading: faults.meaning, weight: 1 },
    ],
    rows: [
      fitted("A4", "letter"),
      fitted("letter", "A4"),
      [faults.between(String(least), String(most)), faults.shrunk],
      fitted("letter", "tabloid"),
      [faults.unequal, faults.printer],
    ],
  };
}

function sheetNamed(name: string): PageSize {
  const paper = PAPERS.find((each) => each.name === name);
  if (paper === undefined || paper.kind === "roll") throw new InternalError(`no sheet named ${name}`);
  return paper;
}
