import type { Face } from "./drawing.js";

/** About the different texts of a large packet; other rooms have others, and memory is not to grow with them. */
const MOST_KEPT = 4096;

/** The same for the same text, worked out once: frames and tables say the same words on every page. */
export function byText<Value>(work: (text: string) => Value): (text: string) => Value {
  const kept = new Map<string, Value>();
  return (text) => {
    const known = kept.get(text);
    if (known !== undefined) return known;
    if (kept.size >= MOST_KEPT) kept.clear();
    const value = work(text);
    kept.set(text, value);
    return value;
  };
}

/** A function for each face. */
export const byFace = <Made>(make: (face: Face) => Made): Readonly<Record<Face, Made>> => ({
  regular: make("regular"),
  bold: make("bold"),
});
