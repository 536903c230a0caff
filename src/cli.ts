import { availableParallelism } from "node:os";
import type { MessagePort, Worker } from "node:worker_threads";
import { Command, CommanderError, Option } from "commander";
import packageFile from "../package.json" with { type: "json" };
import type { check } from "./commands/check.js";
import type { Crew, RoomTask } from "./commands/crew.js";
import { EXIT, type ExitCode } from "./commands/exit-code.js";
import type { ShareTask } from "./commands/mate.js";
import { languagesTyped } from "./commands/options.js";
import { processTerminal, type Terminal } from "./commands/terminal.js";
import { UsageError } from "./commands/usage-error.js";
import { codePointText, shown } from "./room/shown.js";
import type { Language } from "./units/language.js";
import { type Words, wordsIn } from "./words/words.js";

export interface Surroundings {
  readonly terminal?: Terminal;
  /** Starts a thread that hands every message to `work`; without it all is printed by this one. */
  readonly startThread?: (() => Worker) | null;
  /** Commands that are loaded already: see `cli-check.ts`. */
  readonly loaded?: { readonly check?: typeof check };
}

/**
 * Runs one command line and gives the exit code: 0 clean, 1 errors among the findings, 2 unusable input or wrong
 * usage, 3 our own failure. Each command's code is loaded only when it is asked for.
 */
export async function run(
  typed: readonly string[],
  { terminal: given, startThread = null, loaded = {} }: Surroundings = {},
): Promise<ExitCode> {
  const language = spokenLanguage(typed);
  const words = wordsIn([language]);
  const terminal = given ?? processTerminal(words);
  const ended: { code: ExitCode } = { code: EXIT.clean };
  const count = availableParallelism();
  const crew = startThread === null || count < 2 ? null : { start: startThread, count, language };
  try {
    refuseUnseeable(typed, words);
    const program = programOf({ typed, terminal, words, crew, loaded, ended });
    await program.parseAsync([...typed], { from: "user" });
    return ended.code;
  } catch (cause) {
    return complained(terminal, words, cause);
  }
}

/** What a thread does that is told a task: a room of many, or its share of the sheets of one. */
export async function work(task: RoomTask | ShareTask, port: MessagePort): Promise<void> {
  if (task.kind === "share") {
    const { share } = await import("./commands/mate-work.js");
    return share(task);
  }
  const { printAsAsked } = await import("./commands/crew-member.js");
  port.postMessage(await printAsAsked(task));
}

/** The terminal speaks the first language asked for; the sheets may carry both. */
function spokenLanguage(typed: readonly string[]): Language {
  const at = typed.findIndex((word) => word === "--language" || word.startsWith("--language="));
  const value = typed[at]?.split("=")[1] ?? typed[at + 1];
  return at >= 0 && value !== undefined && /^es\b/i.test(value) ? "es" : "en";
}

/** What steers a terminal or turns a line about: a file by such a name would speak for the program. */
const STEERING = /[\p{Cc}\p{Bidi_Control}\p{Cs}\p{Zl}\p{Zp}]/u;

function refuseUnseeable(typed: readonly string[], words: Words): void {
  for (const word of typed) {
    const [found] = STEERING.exec(word) ?? [];
    if (found !== undefined)
      throw new UsageError(words.commands.failure.unseen(shown(word), codePointText(found)));
    if (word.trim() === "") throw new UsageError(words.commands.failure.emptyWord);
  }
}

function complained(terminal: Terminal, words: Words, cause: unknown): ExitCode {
  if (cause instanceof UsageError) {
    terminal.tell(`baymark: ${cause.message}\n`);
    return EXIT.unusable;
  }
  if (cause instanceof CommanderError) return commanderEnded(terminal, words, cause);
  const message = cause instanceof Error ? cause.message : String(cause);
  terminal.tell(`baymark: ${words.commands.failure.ours(message)}\n`);
  return EXIT.ours;
}

function commanderEnded(terminal: Terminal, words: Words, cause: CommanderError): ExitCode {
  if (cause.exitCode === 0) return EXIT.clean;
  const phrase = words.commands.usage[cause.code];
  const [, name = ""] = /'([^']*)'/.exec(cause.message) ?? [];
  const [, suggestion = ""] = /Did you mean (?:one of )?(.*?)\?\)/.exec(cause.message) ?? [];
  if (phrase !== undefined) {
    terminal.tell(`baymark: ${phrase(name)}; ${words.commands.usageHint(suggestion)}\n`);
  }
  return EXIT.unusable;
}

interface Around {
  readonly typed: readonly string[];
  readonly terminal: Terminal;
  readonly words: Words;
  readonly crew: Crew | null;
  readonly loaded: NonNullable<Surroundings["loaded"]>;
  readonly ended: { code: ExitCode };
}

/**
 * The program with the command that was typed; with all of them where that is none of them, for help and for what is
 * said of a word that is misspelt.
 */
function programOf(around: Around): Command {
  const program = emptyProgram(around.terminal, around.words);
  const [typed = ""] = around.typed;
  const wanted = COMMANDS.filter(({ name }) => name === typed);
  for (const { add } of wanted.length > 0 ? wanted : COMMANDS) add(program, around);
  return program;
}

const languageOption = ({ commands: { option } }: Words): Option =>
  new Option("--language <codes>", option.language);

const spoken = (flags: { language?: string }, words: Words) => languagesTyped(flags.language ?? "en", words);

interface AddedCommand {
  readonly name: string;
  readonly add: (program: Command, around: Around) => void;
}

function addStart(program: Command, { terminal, words, ended }: Around): void {
  const { describe, argument, option } = words.commands;
  program
    .command("start")
    .description(describe.start)
    .argument("[file]", argument.newFile, "room.yaml")
    .addOption(new Option("--units <system>", option.units).default("imperial"))
    .addOption(languageOption(words))
    .action(async (file: string, flags: { units: string; language?: string }) => {
      const { start } = await import("./commands/start.js");
      const units = flags.units;
      if (units !== "imperial" && units !== "metric")
        throw new UsageError(words.commands.failure.unknownUnits(units));
      ended.code = start(terminal, words, { file, units, language: spoken(flags, words)[0] ?? "en" });
    });
}

function addCheck(program: Command, { terminal, words, loaded, ended }: Around): void {
  const { describe, argument, option } = words.commands;
  program
    .command("check")
    .description(describe.check)
    .argument("<files...>", argument.files)
    .option("--json", option.json)
    .addOption(languageOption(words))
    .action(async (files: string[], flags: { json?: boolean; language?: string }) => {
      const check = loaded.check ?? (await import("./commands/check.js")).check;
      spoken(flags, words);
      ended.code = check(terminal, words, files, flags.json === true ? "json" : "text");
    });
}

function addPlace(program: Command, { terminal, words, ended }: Around): void {
  const { describe, argument, option } = words.commands;
  program
    .command("place")
    .description(describe.place)
    .argument("<file>", argument.file)
    .option("--write", option.write)
    .option("--rank <bays>", option.rank)
    .addOption(new Option("--lock <id>", option.lock).argParser(oneMore).default([], ""))
    .option("--json", option.json)
    .addOption(languageOption(words))
    .action(async (file: string, flags: import("./commands/place.js").PlaceFlags) => {
      const { place } = await import("./commands/place.js");
      spoken(flags, words);
      ended.code = place(terminal, words, file, flags);
    });
}

function addPrint(program: Command, { terminal, words, crew, ended }: Around): void {
  const { describe, argument, option } = words.commands;
  program
    .command("print")
    .description(describe.print)
    .argument("<files...>", argument.files)
    .option("-o, --out <folder>", option.out)
    .option("--strict", option.strict)
    .option("--printer <name>", option.printer)
    .option("--only <names>", option.only)
    .option("--paper <paper>", option.paper)
    .option("--margin <length>", option.margin)
    .addOption(languageOption(words))
    .option("--svg", option.svg)
    .option("--pdf", option.pdf)
    .option("--json", option.json)
    .action(async (files: string[], flags: import("./commands/print.js").PrintFlags) => {
      const { print } = await import("./commands/print.js");
      ended.code = await print(terminal, words, files, { flags, crew });
    });
}

function addReport(program: Command, { terminal, words, ended }: Around): void {
  const { describe, argument, option } = words.commands;
  program
    .command("report")
    .description(describe.report)
    .argument("<files...>", argument.files)
    .option("--json", option.json)
    .addOption(languageOption(words))
    .action(async (files: string[], flags: { json?: boolean; language?: string }) => {
      const { report } = await import("./commands/report.js");
      spoken(flags, words);
      ended.code = report(terminal, words, files, flags.json === true ? "json" : "text");
    });
}

function addCompare(program: Command, { terminal, words, ended }: Around): void {
  const { describe, argument, option } = words.commands;
  program
    .command("compare")
    .description(describe.compare)
    .argument("<old>", argument.oldRoom)
    .argument("<new>", argument.newRoom)
    .option("--json", option.json)
    .addOption(languageOption(words))
    .action(async (before: string, after: string, flags: { json?: boolean; language?: string }) => {
      const { compare } = await import("./commands/compare.js");
      spoken(flags, words);
      ended.code = compare(terminal, words, [before, after], flags.json === true ? "json" : "text");
    });
}

function addExplain(program: Command, { terminal, words, ended }: Around): void {
  const { describe, argument } = words.commands;
  program
    .command("explain")
    .description(describe.explain)
    .argument("[code]", argument.code)
    .addOption(languageOption(words))
    .action(async (code: string | undefined, flags: { language?: string }) => {
      const { explain } = await import("./commands/explain.js");
      spoken(flags, words);
      ended.code = explain(terminal, words, code);
    });
}

function addRuler(program: Command, { terminal, words, ended }: Around): void {
  const { describe, argument, option } = words.commands;
  program
    .command("ruler")
    .description(describe.ruler)
    .option("-o, --out <file>", argument.newFile, "ruler.pdf")
    .option("--paper <paper>", option.paper)
    .option("--margin <length>", option.margin)
    .option("--printer <name>", option.printer)
    .option("--across <length>", option.across)
    .option("--down <length>", option.down)
    .addOption(languageOption(words))
    .action(async (flags: import("./commands/ruler.js").RulerFlags) => {
      const { ruler } = await import("./commands/ruler.js");
      ended.code = await ruler(terminal, words, flags);
    });
}

/** In the order in which help tells them. */
const COMMANDS: readonly AddedCommand[] = [
  { name: "start", add: addStart },
  { name: "check", add: addCheck },
  { name: "place", add: addPlace },
  { name: "print", add: addPrint },
  { name: "report", add: addReport },
  { name: "compare", add: addCompare },
  { name: "explain", add: addExplain },
  { name: "ruler", add: addRuler },
];

/** An option that may be typed again. */
const oneMore = (typed: string, before: readonly string[]): readonly string[] => [...before, typed];

/** The program without its commands; ways of ending and of speaking are set first, since commands inherit them. */
function emptyProgram(terminal: Terminal, words: Words): Command {
  const { about, option, describe, helpTitles, exitCodes } = words.commands;
  return new Command("baymark")
    .description(about)
    .version(packageFile.version, "-V, --version", option.version)
    .helpOption("-h, --help", option.help)
    .helpCommand("help [command]", describe.help)
    .addHelpText("after", `\n${exitCodes}`)
    .configureOutput({ writeOut: terminal.write, writeErr: terminal.tell, outputError: () => undefined })
    .configureHelp({ styleTitle: (title) => helpTitles[title] ?? title })
    .exitOverride();
}
