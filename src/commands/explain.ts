import { closest } from "fastest-levenshtein";
import type { Words } from "../words/words.js";
import { EXIT, type ExitCode } from "./exit-code.js";
import type { Terminal } from "./terminal.js";
import { UsageError } from "./usage-error.js";

/** Says what a finding's code means; without a code, lists them all with what each means. */
export function explain(terminal: Terminal, words: Words, code: string | undefined): ExitCode {
  const pages = Object.entries(words.explain);
  if (code === undefined) {
    const width = Math.max(...pages.map(([name]) => name.length));
    const { bold } = terminal.colours;
    const lines = pages.map(([name, page]) => `  ${bold(name.padEnd(width))}  ${page.meaning}`);
    terminal.write(`${[words.commands.explain.codes, ...lines].join("\n")}\n`);
    return EXIT.clean;
  }
  const page = pages.find(([name]) => name === code);
  if (page === undefined) {
    const near = closest(
      code,
      pages.map(([name]) => name),
    );
    throw new UsageError(words.commands.failure.unknownCode(code, near));
  }
  terminal.write(explained(terminal, words, page));
  return EXIT.clean;
}

type Page = Words["explain"][keyof Words["explain"]];

function explained(terminal: Terminal, words: Words, [code, page]: readonly [string, Page]): string {
  const { bold } = terminal.colours;
  const titles = words.commands.explain;
  const parts = [
    [titles.meaning, page.meaning],
    [titles.matters, page.matters],
    [titles.limit, page.limit],
    [titles.fix, page.fix],
  ];
  const paragraphs = parts.map(([title = "", body = ""]) => `${bold(title)}\n  ${body}`);
  return `${bold(code)}\n\n${paragraphs.join("\n\n")}\n`;
}
