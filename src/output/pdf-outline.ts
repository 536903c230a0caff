import { type PDFContext, PDFHexString, type PDFRef } from "pdf-lib";
import { cleanText } from "./clean-text.js";

export interface Bookmark {
  readonly title: string;
  readonly page: PDFRef;
}

/** The outline of a document (ISO 32000-1, 12.3.3), one entry for each run of pages with one title; null without any. */
export function outlineOf(context: PDFContext, bookmarks: readonly Bookmark[]): PDFRef | null {
  const entries = bookmarks.filter(
    ({ title }, index) => title !== "" && title !== bookmarks[index - 1]?.title,
  );
  const refs = entries.map(() => context.nextRef());
  const [first, last] = [refs[0], refs.at(-1)];
  if (first === undefined || last === undefined) return null;
  const root = context.register(
    context.obj({ Type: "Outlines", First: first, Last: last, Count: refs.length }),
  );
  entries.forEach(({ title, page }, index) => {
    const self = refs[index];
    if (self === undefined) return;
    const neighbours = { Prev: refs[index - 1], Next: refs[index + 1] };
    const linked = Object.entries(neighbours).filter(([, ref]) => ref !== undefined);
    const entry = { Title: PDFHexString.fromText(cleanText(title)), Parent: root, Dest: [page, "Fit"] };
    context.assign(self, context.obj({ ...entry, ...Object.fromEntries(linked) }));
  });
  return root;
}
