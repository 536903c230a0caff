import type { Reprint } from "../sheets/reprint.js";
import type { Words } from "../words/words.js";
import { inTwoColumns } from "./compared.js";
import type { Line } from "./saying.js";
import type { Terminal } from "./terminal.js";

/** Which sheets to print again, with the command that does; the new packet's numbers are of `all` pages. */
export function sheetLines(
  terminal: Terminal,
  words: Words,
  { changes, all }: Reprint,
  file: string,
): readonly string[] {
  const { sheets, headings } = words.compare;
  const heading = ["", terminal.colours.bold(headings.sheets)];
  if (changes.length === 0) return [...heading, `  ${sheets.none}`];
  const lines = changes.map((change): Line => {
    const numbers = change.pages.length === 0 ? [] : [sheets.pages(change.pages, all)];
    const aside = change.byName ? [sheets.byName] : [];
    return [change.name, [sheets[change.what], ...numbers, ...aside].join(", ")];
  });
  const names = changes.filter(({ what, byName }) => what !== "gone" && !byName).map(({ name }) => name);
  const command = `baymark print ${quotedFile(file)} --only ${names.join(",")}`;
  return [
    ...heading,
    ...inTwoColumns(lines),
    ...(names.length === 0 ? [] : [`  ${sheets.command(command)}`]),
    `  ${sheets.rest}`,
  ];
}

/** A name with spaces is typed between quotes. */
const quotedFile = (file: string): string => (/^[\w./\\:-]+$/u.test(file) ? file : JSON.stringify(file));
