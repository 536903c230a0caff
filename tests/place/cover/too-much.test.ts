import { expect, test } from "vitest";
import { fillAreas } from "../../../src/place/cover/fill.js";
import { wordsIn } from "../../../src/words/words.js";
import { room } from "../../rooms/build.js";
import { TOO_MUCH_TO_FILL } from "../../rooms/too-much.js";

test("areas that ask for more than a run looks through are left unfilled and say so; those before them are filled", () => {
  const fillings = fillAreas(room(TOO_MUCH_TO_FILL), []);
  expect(fillings.map(({ area: { name }, kind }) => [name, kind])).toEqual([
    ["corner", "filled"],
    ["second", "unfilled"],
    ["third", "unfilled"],
    ["fourth", "unfilled"],
  ]);
  for (const filling of fillings.slice(1)) expect(filling).toMatchObject({ because: "not-looked-for" });
  expect(wordsIn(["en"]).areas.unfilled["not-looked-for"]).toContain("run it again");
});
