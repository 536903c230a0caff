/** What the commands say on a terminal: help, what was written, what went wrong at the edge. */
export const commands = {
  about: "Marks openings for in-ceiling and in-wall loudspeakers that land in a clear bay.",
  helpTitles: {
    "Usage:": "Usage:",
    "Arguments:": "Arguments:",
    "Options:": "Options:",
    "Commands:": "Commands:",
    "Global Options:": "Global options:",
  } as Readonly<Record<string, string>>,
  describe: {
    start: "write a commented room file to begin from",
    check: "resolve and check rooms; findings with line and column",
    place: "find the best clear position of every loudspeaker that asks for one",
    print: "write the packet of each room: PDF by trade, SVG by sheet, schedules",
    report: "positions, directions, aim and findings of a room",
    compare: "say what moved between two revisions of a room, and which sheets to print again",
    explain: "what a finding means, why it matters, where its limit comes from, how to fix it",
    ruler: "print the page that proves a printer's scale, and keep what was measured on it",
    help: "how a command is used",
  },
  argument: {
    file: "room file (YAML)",
    files: "room files (YAML)",
    oldRoom: "room file as it was",
    newRoom: "room file as it is",
    newFile: "file to write",
    code: "code of a finding; all codes when left out",
  },
  option: {
    help: "show this help",
    version: "show the version",
    language: "language of words: en, es, or both as en,es",
    json: "machine-readable output, one object a room",
    write: "put the positions found into the room file; nothing else in it changes",
    rank: "show the best places in so many bays, with what each costs",
    lock: "leave this loudspeaker as it is: no other bays, not written (again for another one)",
    out: "folder of the packet (default: out/<room file>)",
    strict: "write nothing while an error stands",
    printer: "correct for a printer whose ruler page was measured",
    only: "only these sheets or trades: ceiling, opening-TFL, opening, drywall ...",
    paper: "letter, legal, tabloid, A4, A3, arch-d, A1, roll-36, roll-914, or a size: 13 in x 19 in",
    margin: "what the printer leaves blank at every edge, as a length",
    svg: "only the SVG drawings",
    pdf: "only the PDF files",
    units: "imperial or metric",
    across: "what the 100 mm ruler across the page measures, as a length",
    down: "what the 100 mm ruler down the page measures, as a length",
  },
  exitCodes:
    "Exit codes: 0 clean or warnings only, 1 errors among the findings, 2 unusable input or wrong usage, 3 a failure of baymark itself.",
  wrote: (what: string) => `wrote ${what}`,
  packetOf: (pages: number, drawings: number) => `${pages} pages, ${drawings} drawings`,
  roomsDone: (done: number, of: number) => `${done} of ${of} rooms`,
  progress: (room: string, done: number, of: number) => `${room}: ${done} of ${of}`,
  findings: (errors: number, warnings: number, notes: number) =>
    errors + warnings + notes === 0
      ? "no findings"
      : `${plural(errors, "error")}, ${plural(warnings, "warning")}, ${plural(notes, "note")}`,
  level: { error: "error", warning: "warning", note: "note" },
  openings: (count: number) => plural(count, "opening"),
  accepted: (why: string) => `accepted: ${why}`,
  explainHint: (code: string) => `\`baymark explain ${code}\` says more`,
  stopped: "an error stands: with --strict nothing was written",
  cutNone: "sheets of openings under an error say DO NOT CUT",
  explain: {
    meaning: "What it means",
    matters: "Why it matters",
    limit: "Where the limit comes from",
    fix: "How to fix it",
    codes: "Codes",
  },
  report: {
    speaker: "speaker",
    channel: "channel",
    surface: "on",
    direction: "azimuth / elevation",
    distance: "distance",
    gap: "gap to member",
    aim: "aim",
    offAxis: "off axis",
    from: (seat: string) => `Directions from the reference seat, ${seat}; azimuth positive to the left`,
    straight: "straight",
    unknown: "unknown",
  },
  ruler: {
    kept: (printer: string, x: string, y: string) =>
      `kept for printer ${printer}: ${x} across, ${y} down; use it with --printer ${printer}`,
    correction: (printer: string, x: string, y: string) => `Corrected for printer ${printer}: x ${x}, y ${y}`,
  },
  failure: {
    notFound: (file: string) => `${file}: there is no such file; check the name and the folder`,
    folderNotFile: (file: string) => `${file}: this is a folder; name a room file in it`,
    notAFile: (file: string) => `${file}: this is a device and never ends; name a room file`,
    noPermission: (file: string) => `${file}: not allowed to read it; check the file's permissions`,
    unreadable: (file: string, reason: string) => `${file}: cannot be read (${reason})`,
    exists: (file: string) => `${file}: already exists and was left alone; name another file`,
    unsaid: (reason: string) =>
      `what was asked for could not be written out (${reason}): look at where standard output goes`,
    unwritable: (file: string, reason: string) =>
      `${file}: cannot be written (${reason}); nothing was changed`,
    notOurs: (folder: string) =>
      `${folder}: holds other files than a packet, so it was left alone; name a new or empty folder with -o`,
    sameName: (first: string, second: string) =>
      `${first} and ${second} would write one folder; print them one at a time with -o`,
    noOpenings: "no speaker has a position yet, so there is nothing to print",
    unknownSheet: (name: string, near: string, names: string) =>
      `--only ${name}: no such sheet or trade; ${near === "" ? "there" : `did you mean \`${near}\`? There`} are ${names}`,
    unknownCode: (code: string, near: string) =>
      `${code}: no finding has this code${near === "" ? "" : `; did you mean \`${near}\`?`}`,
    unknownLanguage: (language: string) => `--language ${language}: type en, es or en,es`,
    unknownUnits: (units: string) => `--units ${units}: type imperial or metric`,
    badPaper: (paper: string, names: string) =>
      `--paper ${paper}: type one of ${names}, or a size such as 13 in x 19 in`,
    badMargin: (margin: string) =>
      `--margin ${margin}: type a length from 0 to 30 mm, such as 6.35 mm or 1/4"`,
    unknownPrinter: (printer: string) =>
      `--printer ${printer}: nothing is kept for it; print the page with \`baymark ruler\`, measure it, then type \`baymark ruler --printer ${printer} --across 99.5mm --down 100.2mm\``,
    badProfile: (file: string) => `${file}: is not a list of printers; mend or delete it`,
    badMeasured: (typed: string) => `${typed}: type what the 100 mm ruler measures, between 80 mm and 120 mm`,
    bothMeasured: "--across and --down go together, with --printer: both rulers are measured",
    unseen: (word: string, codePoint: string) =>
      `${word}: has a character that nobody sees, ${codePoint}; type it again without it`,
    emptyWord:
      'one of the words typed is empty ("") or holds only spaces: a name is missing there, or a variable of the shell holds none',
    ours: (message: string) => `baymark itself failed, nothing is wrong with what you typed: ${message}`,
  },
  usage: {
    "commander.unknownOption": (name: string) => `there is no option ${name}`,
    "commander.unknownCommand": (name: string) => `there is no command ${name}`,
    "commander.missingArgument": (name: string) => `${name} is missing`,
    "commander.optionMissingArgument": (name: string) => `${name} needs a value behind it`,
    "commander.excessArguments": () => "too many arguments",
  } as Readonly<Record<string, (name: string) => string>>,
  usageHint: (suggestion: string) =>
    suggestion === "" ? "`baymark help` lists what can be typed" : `did you mean ${suggestion}?`,
};

const plural = (count: number, word: string): string => `${count} ${word}${count === 1 ? "" : "s"}`;
