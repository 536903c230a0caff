import { type ArrayPattern, type Expression, type Pattern, parse, type VariableDeclarator } from "acorn";
import { simple } from "acorn-walk";
import MagicString from "magic-string";

/*
 * `const [a, b] = [x, y]` reads well, and says in one line that two things belong together. Until V8 optimises it, which
 * it does for little of so short a run, it makes an array, an iterator and an object a step for it: twelve times as long
 * as `const a = x, b = y` (measured with Node 20). The bundles have the latter.
 */

/** A program with each such declaration taken apart, and otherwise to the letter as it was. */
export function pairsTakenApart(program: string): string {
  const changed = new MagicString(program);
  simple(parse(program, { ecmaVersion: "latest" }), {
    VariableDeclaration({ kind, declarations }) {
      // What `var` declares may stand on the right of it too.
      if (kind === "var") return;
      for (const declarator of declarations) takeApart(declarator, changed);
    },
  });
  return changed.toString();
}

function takeApart({ id, init }: VariableDeclarator, changed: MagicString): void {
  if (id.type !== "ArrayPattern" || init?.type !== "ArrayExpression") return;
  const names = namesIn(id);
  const values = init.elements.filter(isValue);
  if (names === null || values.length < init.elements.length || values.length !== names.length) return;
  const [first, ...others] = names.map((name, index) => ({ name, value: values[index] }));
  if (first?.value === undefined) return;
  // Values stay where they are, for there may be such declarations in them; each gets its name before it.
  changed.remove(id.start, first.value.start);
  changed.appendLeft(first.value.start, ` ${changed.original.slice(first.name.start, first.name.end)}=`);
  let end = first.value.end;
  for (const { name, value } of others) {
    if (value === undefined) return;
    changed.overwrite(end, value.start, `,${changed.original.slice(name.start, name.end)}=`);
    end = value.end;
  }
  changed.remove(end, init.end);
}

/** Null where one of them is left out, has a value of its own for want of another, or takes all the rest. */
function namesIn({ elements }: ArrayPattern): readonly Pattern[] | null {
  const names = elements.filter((each) => each?.type === "Identifier" || each?.type === "ObjectPattern");
  return names.length === elements.length ? names : null;
}

const isValue = (element: Expression | { readonly type: "SpreadElement" } | null): element is Expression =>
  element !== null && element.type !== "SpreadElement";
