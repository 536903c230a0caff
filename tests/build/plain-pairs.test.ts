import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pairsTakenApart } from "../../src/build/plain-pairs.js";

describe("pairs declared together are taken apart", () => {
  test.each([
    { was: "const [a, b] = [x, y];", is: "const  a=x,b=y;" },
    { was: "let[a,b]=[f(1, 2),[3]],c=d;", is: "let a=f(1, 2),b=[3],c=d;" },
    { was: "const [{ x }, b] = [point, 2];", is: "const  { x }=point,b=2;" },
    {
      was: "const [a, b] = [() => { const [c, d] = [1, 2]; return c + d; }, 3,];",
      is: "const  a=() => { const  c=1,d=2; return c + d; },b=3;",
    },
  ])("$was", ({ was, is }) => expect(pairsTakenApart(was)).toBe(is));
});

test.each([
  "const [a, b] = pair;",
  "const [a] = [...all];",
  "const [a, , b] = [1, 2, 3];",
  "const [a = 1, b] = [x, y];",
  "const [a, ...b] = [x, y];",
  "const [a] = [x, y];",
  "const [a, b] = [, y];",
  "var [a, b] = [b, a];",
  "[a, b] = [b, a];",
  "for (const [a, b] of [x, y]) f(a, b);",
])("to the letter as it was: %s", (program) => expect(pairsTakenApart(program)).toBe(program));

test("values are worked out in their order, and what is declared is the same", () => {
  const value = fc.oneof(fc.integer().map(String), fc.constant("[n(), [n(), n()]]"), fc.constant("n()"));
  fc.assert(
    fc.property(fc.array(value, { minLength: 1, maxLength: 5 }), (values) => {
      const names = values.map((_, index) => `v${index}`);
      const program = `let at = 0; const n = () => at++; const [${names}] = [${values}]; return [${names}];`;
      const run = (text: string): unknown => new Function(text)();
      const apart = pairsTakenApart(`(() => {${program}})()`);
      expect(apart).not.toContain("const [");
      expect(run(`return ${apart}`)).toEqual(run(program));
    }),
  );
});
