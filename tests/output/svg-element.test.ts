import fc from "fast-check";
import { SaxesParser, type SaxesTagPlain } from "saxes";
import { expect, it } from "vitest";
import { attribute, element, escaped } from "../../src/output/svg-element.js";

/** What XML 1.0 may hold (section 2.2), with what means something in it again and again. */
const held = fc
  .array(
    fc.oneof(
      fc.constantFrom("&", "<", ">", '"', "'", "]]>", "&amp;", "<!--", "</a>", "é", "½", "\u{1f600}"),
      fc.string({ unit: "grapheme-ascii" }),
    ),
  )
  .map((pieces) => pieces.join(""));

function read(xml: string): { tags: SaxesTagPlain[]; text: string } {
  const parser = new SaxesParser({ xmlns: false });
  const tags: SaxesTagPlain[] = [];
  let text = "";
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", (tag) => void tags.push(tag));
  parser.on("text", (piece) => {
    text += piece;
  });
  parser.write(xml).close();
  return { tags, text };
}

it("whatever stands in an element or an attribute comes back from a strict parser, and nothing else", () => {
  fc.assert(
    fc.property(held, held, held, (first, second, inside) => {
      const made = element("a", attribute("b", first) + attribute("c", second), escaped(inside));
      const { tags, text } = read(made);
      expect(tags.map(({ name, attributes }) => ({ name, ...attributes }))).toEqual([
        { name: "a", b: first, c: second },
      ]);
      expect(text).toBe(inside);
    }),
  );
});
