import { describe, expect, it } from "vitest";
import type { Item } from "../../src/drawing/drawing.js";
import { codesOf, shownColour } from "../../src/sheets/conductor-colour.js";
import type { Body, Order } from "../../src/sheets/sheet.js";
import { terminalCards } from "../../src/sheets/terminal-cards.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";
import { opened, orderFor, wordsOn } from "./orders.js";

const AT: Parts = { left: "1.5 m", front: "900 mm" };

/** One loudspeaker of the plain round model, with more said about the model. */
const cardsOf = (model: Parts, speaker: Parts = {}): Order =>
  orderFor(job({ models: { round: model }, speakers: [{ id: "A1", at: AT, ...speaker }] }));

const TWO: Parts = {
  conductors: [
    { colour: "red", terminal: "upper", sign: "+" },
    { colour: "BK", terminal: "lower", sign: "-" },
  ],
};

function page(order: Order): Body {
  const [first] = terminalCards(order).flatMap(({ pages }) => pages);
  if (first === undefined) throw new Error("no cards");
  return first;
}

const itemsOf = (order: Order) => opened(page(order).items);
const ofKind = <Kind extends Item["kind"]>(order: Order, kind: Kind) =>
  itemsOf(order).filter(
    (item): item is Extract<Exclude<Item, { kind: "group" }>, { kind: Kind }> => item.kind === kind,
  );

describe("terminal cards", () => {
  it("tell + and - apart by word, shape, sign and colour", () => {
    const order = cardsOf(TWO);
    const words = wordsOn(page(order));
    for (const word of ["PLUS", "MINUS", "RD", "BK", "red", "black", "upper", "lower"])
      expect(words).toContain(word);
    const word = (said: string) => {
      const found = ofKind(order, "text").find(({ text }) => text === said);
      if (found === undefined) throw new Error(said);
      return found.at.y;
    };
    const [circle] = ofKind(order, "circle");
    const square = ofKind(order, "rectangle").find(
      ({ widthMm, heightMm }) => widthMm === 8 && heightMm === 8,
    );
    if (circle === undefined || square === undefined) throw new Error("no signs");
    expect(Math.abs(circle.centre.y - word("MINUS"))).toBeLessThan(4);
    expect(Math.abs(square.corner.y + 4 - word("PLUS"))).toBeLessThan(4);
    // A cross in the square, one bar in the circle.
    const strokesIn = (x: number, y: number, half: number) =>
      ofKind(order, "line").filter(({ from, to }) =>
        [from, to].every((at) => Math.abs(at.x - x) <= half && Math.abs(at.y - y) <= half),
      );
    expect(strokesIn(square.corner.x + 4, square.corner.y + 4, 4)).toHaveLength(2);
    expect(strokesIn(circle.centre.x, circle.centre.y, 4)).toHaveLength(1);
  });

  it("guess nothing: no colour, no terminal and no channel where none is given", () => {
    const order = cardsOf({});
    const words = wordsOn(page(order));
    expect(words).toContain("PLUS");
    expect(words).toContain("MINUS");
    for (const guess of ["RD", "BK", "red", "black", "+", "-"]) expect(words).not.toContain(guess);
    const given = ofKind(
      cardsOf({ ...TWO, terminal: "spring clip", strip: "8 mm" }, { amplifier: "7" }),
      "line",
    ).length;
    // At the loudspeaker two conductors, two terminals, their kind and the strip; at the amplifier the channel, both
    // conductors and what they go to. The amplifier's kind of terminal and strip are a line either way.
    expect(ofKind(order, "line").length - given).toBe(11);
  });

  it("has a row to write on for the sign that was not given", () => {
    const order = cardsOf({ conductors: [{ colour: "red", terminal: "upper", sign: "+" }] });
    expect(wordsOn(page(order)).filter((word) => word === "MINUS")).toHaveLength(2);
    expect(ofKind(order, "circle").length).toBeGreaterThan(0);
  });

  it("are two for each, one an end, each whole when they are cut apart", () => {
    const order = cardsOf({ ...TWO, terminal: "spring clip", strip: "8 mm" }, { amplifier: "7" });
    const texts = ofKind(order, "text");
    const cutAt = ofKind(order, "line").find(
      ({ from, to, stroke }) => from.x === to.x && stroke.dashMm !== undefined,
    )?.from.x;
    if (cutAt === undefined) throw new Error("no line to cut along");
    const on = (side: "left" | "right"): string[] =>
      texts.filter(({ at }) => at.x < cutAt === (side === "left")).map(({ text }) => text);
    const both = ["A1", "M+000", "PLUS", "MINUS", "RD", "BK", "red", "black", "Polarity checked", "Initials"];
    for (const word of [...both, "AT THE LOUDSPEAKER", "upper", "lower", "spring clip"])
      expect(on("left")).toContain(word);
    for (const word of [...both, "7", "7 +", "7 -"]) expect(on("right")).toContain(word);
    expect(on("right").join(" ")).toContain("AT THE AMPLIFIER: same conductor, same sign");
    expect(on("right")).not.toContain("upper");
    expect(ofKind(order, "circle")).toHaveLength(2);
  });

  it("show how much insulation comes off at true scale", () => {
    const order = cardsOf({ strip: "9.5 mm" });
    const bars = ofKind(order, "rectangle").filter(({ fill, widthMm }) => fill !== undefined && widthMm < 20);
    expect(bars.map(({ widthMm }) => widthMm)).toEqual([9.5]);
    expect(page(order).frame?.scale).toBe("TRUE SCALE 1:1");
  });

  it("are one for each loudspeaker, several on a page", () => {
    const speakers = ["A1", "B2", "C3", "D4"].map((id, index) => ({
      id,
      at: { left: "1.5 m", front: `${900 + 700 * index} mm` },
    }));
    const pages = terminalCards(orderFor(job({ speakers }))).flatMap((sheet) => sheet.pages);
    expect(pages.length).toBeLessThan(4);
    const words = pages.flatMap(wordsOn);
    for (const { id } of speakers) expect(words.filter((word) => word === id)).toHaveLength(2);
  });
});

describe("colours of conductors", () => {
  it("are read as codes and as words of either language", () => {
    for (const typed of ["RD", "rd", "red", "Red", "rojo"]) expect(codesOf(typed), typed).toEqual(["RD"]);
    for (const typed of ["WHBU", "white/blue", "blanco-azul", "white, blue"])
      expect(codesOf(typed), typed).toEqual(["WH", "BU"]);
    for (const typed of ["striped", "red-ish", "", "constructor"]) expect(codesOf(typed), typed).toBeNull();
  });

  it("are shown as typed where they are none of the standard's", () => {
    const order = cardsOf({});
    expect(shownColour(order, "striped")).toEqual({ letters: null, words: "striped", inks: [] });
    expect(shownColour(order, "blue and white").letters).toBeNull();
    expect(shownColour(order, "WHBU")).toMatchObject({ letters: "BUWH", words: "blue + white" });
  });

  it("say both languages as two phrases, not word by word", () => {
    const both = orderFor(job({ speakers: [{ id: "A1", at: AT }] }), { languages: ["en", "es"] });
    expect(shownColour(both, "red/black").words).toBe("black + red / negro + rojo");
  });
});
