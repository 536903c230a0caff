import type { Complaint } from "../findings/complaint.js";
import type { Level } from "../findings/finding.js";
import type { LocatedFinding } from "../job.js";
import { complaintText } from "../words/complaint-text.js";
import { findingText, fixText } from "../words/finding-text.js";
import type { Measure } from "../words/measure.js";
import type { Words } from "../words/words.js";
import type { Terminal } from "./terminal.js";

/** How findings and complaints read on a terminal: where, how bad, what, and what to do. */

type Colour = (text: string) => string;

const colourOf = (terminal: Terminal, level: Level): Colour => {
  const { red, yellow, cyan } = terminal.colours;
  return { error: red, warning: yellow, note: cyan }[level];
};

export function findingLines(
  terminal: Terminal,
  words: Words,
  measure: Measure,
  typed: string,
  finding: LocatedFinding,
): string {
  const { bold, dim } = terminal.colours;
  const level = colourOf(terminal, finding.level)(bold(words.commands.level[finding.level]));
  const where = dim(`${typed}:${finding.line}:${finding.column}`);
  const lines = [`${where}  ${level}  ${findingText(words, measure, finding)}  ${dim(`[${finding.code}]`)}`];
  const fix = fixText(words, measure, finding);
  if (fix !== null) lines.push(`    ${fix}`);
  if (finding.accepted !== null) lines.push(`    ${words.commands.accepted(finding.accepted)}`);
  return `${lines.join("\n")}\n`;
}

export function complaintLines(
  terminal: Terminal,
  words: Words,
  file: { typed: string; source: string },
  complaint: Complaint,
): string {
  const { bold, red, dim } = terminal.colours;
  const where = dim(`${file.typed}:${complaint.line}:${complaint.column}`);
  const head = `${where}  ${red(bold(words.commands.level.error))}  ${complaintText(words, complaint)}`;
  return `${[head, ...excerpt(terminal, file.source, complaint)].join("\n")}\n`;
}

const MOST_SHOWN = 100;
/** What is shown of a longer line before the place. */
const SHOWN_BEFORE = 50;

/** The line itself with a mark under the place; of a long one what stands round the place. */
function excerpt(
  terminal: Terminal,
  source: string,
  { line, column }: { line: number; column: number },
): string[] {
  const whole = source.split(/\r\n|\n|\r/, line)[line - 1] ?? "";
  const { text, at } = shownAround(whole, column);
  if (text.trim() === "" || hasControl(text)) return [];
  const { dim, red } = terminal.colours;
  const gutter = `${String(line).padStart(5)} | `;
  return [dim(gutter) + text, `${" ".repeat(gutter.length + at - 1)}${red("^")}`];
}

/** A piece of the line that holds the column, and the column in that piece. */
function shownAround(whole: string, column: number): { readonly text: string; readonly at: number } {
  // No line of a person's is longer, and a column counts characters, of which each may be two halves.
  const characters = [...whole.slice(0, 2 * (column + MOST_SHOWN))];
  if (characters.length <= MOST_SHOWN) return { text: whole, at: column };
  const from = Math.max(0, column - 1 - SHOWN_BEFORE);
  const piece = characters.slice(from, from + MOST_SHOWN).join("");
  const [before, after] = [from > 0 ? "…" : "", from + MOST_SHOWN < characters.length ? "…" : ""];
  return { text: `${before}${piece}${after}`, at: column - from + before.length };
}

const hasControl = (text: string): boolean => /[\p{Cc}\p{Cf}\p{Cs}]/u.test(text.replaceAll("\t", ""));

/** Counts of findings by level, as one line. */
export function tally(words: Words, findings: readonly { level: Level }[]): string {
  const count = (level: Level): number => findings.filter((finding) => finding.level === level).length;
  return words.commands.findings(count("error"), count("warning"), count("note"));
}
