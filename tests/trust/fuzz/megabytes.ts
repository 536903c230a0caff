/*
 * A megabyte of one thing: what a program that reads in steps may take minutes over.
 */

const MOST_BYTES = 1_000_000;

/** The head, then the piece again and again up to a megabyte, then the tail. */
function again(piece: string, head = "", tail = ""): string {
  const room = MOST_BYTES - Buffer.byteLength(head + tail);
  return head + piece.repeat(Math.floor(room / Buffer.byteLength(piece))) + tail;
}

/** The head, then pieces by their number up to a megabyte. */
function numbered(piece: (index: number) => string, head = ""): string {
  const pieces: string[] = [head];
  let length = head.length;
  for (let index = 0; ; index++) {
    const next = piece(index);
    length += next.length;
    if (length > MOST_BYTES) return pieces.join("");
    pieces.push(next);
  }
}

const then = (text: string, ...bytes: readonly number[]): Uint8Array => {
  const all = Buffer.from(text);
  return Buffer.concat([all.subarray(0, MOST_BYTES - bytes.length), Buffer.from(bytes)]);
};

const BAD = 0xff;

export const MEGABYTES: Readonly<Record<string, Uint8Array>> = {
  "lines before a byte that is no text": then(again("\n"), BAD),
  "one line before a byte that is no text": then(again("a"), BAD),
  "stand-ins before a byte that is no text": then(again("\ufffd"), BAD),
  "carriage returns": then(again("\r")),
  spaces: then(again(" ")),
  tabs: then(again("\t")),
  "one word": then(again("a")),
  "one key": then(again("a", "", ": 1")),
  "an open quote": then(again("a", '"')),
  "open brackets": then(again("[")),
  "open braces": then(again("{")),
  dashes: then(again("- ")),
  "dashes on lines": then(again("-\n")),
  "question marks": then(again("? ")),
  colons: then(again(": ")),
  "one key again": then(again("a: b\n")),
  keys: then(numbered((index) => `k${index}: 1\n`)),
  "keys in braces": then(numbered((index) => `k${index}: 1, `, "a: {")),
  "a list": then(again("- 1\n", "speakers:\n")),
  "a list in brackets": then(again("1,", "speakers: [")),
  comment: then(again("x", "#")),
  comments: then(again("#\n")),
  documents: then(again("---\n")),
  "ends of documents": then(again("...\n")),
  anchors: then(again("- &a a\n")),
  aliases: then(again("- *a\n", "a: &a 1\nb:\n")),
  "aliases of aliases": then(
    numbered((index) => `a${index + 1}: &a${index + 1} [*a${index}, *a${index}]\n`, "a0: &a0 [x]\n"),
  ),
  tags: then(again("- !x a\n")),
  directives: then(again("%a b\n")),
  "merge keys": then(again("<<: 1\n")),
  "keys of JavaScript's": then(again("__proto__: 1\n")),
  escapes: then(again("\\x41", 'a: "', '"')),
  "escapes that are none": then(again("\\q", 'a: "', '"')),
  "folded lines": then(again(" a\n", "a: >\n")),
  "literal lines": then(again(" a\n", "a: |\n")),
  "a value over lines": then(again("  c\n", "a: b\n")),
  "a quote over lines": then(again("  c\n", 'a: "b\n', '"')),
  "byte order marks": then(again("\ufeff")),
  "accents on one letter": then(again("\u0301\u0323", "job: { name: a", " }")),
  "a name of emoji": then(again("\u{1f600}", "job: { name: ", " }")),
  "a name": then(again("x", "job:\n  name: ")),
  digits: then(again("9", "room:\n  width: ")),
  "figures with spaces": then(again("9 ", "room:\n  width: ")),
  fractions: then(again("1/", "room:\n  width: ")),
  feet: then(again("1' ", "room:\n  width: ")),
  points: then(again("1.", "room:\n  width: ")),
  commas: then(again("1,", "room:\n  width: ")),
  "spaces before a figure": then(again(" ", 'room:\n  width: "', '1"')),
  "spaces in a figure": then(again(" ", 'room:\n  width: "1', 'x"')),
  "spaces in an angle": then(again(" ", 'models: { a: { baffle_tilt: "1', 'x" } }')),
  "a unit": then(again("m", "room:\n  width: 1 ")),
  "a date": then(again("2026-", "job:\n  date: ")),
  "a lumber size": then(again("2x", "framing: { ceiling: { member: ", " } }")),
  "a channel": then(again("M+0", "speakers: [{ channel: ", " }]")),
  loudspeakers: then(numbered((index) => `- {id: a${index}}\n`, "speakers:\n")),
  "loudspeakers with a wrong key": then(numbered((index) => `- {id: a${index}, chanel: x}\n`, "speakers:\n")),
  "loudspeakers that mirror the next": then(
    numbered((index) => `- {id: a${index}, mirror: a${index + 1}}\n`, "speakers:\n"),
  ),
  models: then(numbered((index) => ` m${index}: {}\n`, "models:\n")),
  seats: then(numbered((index) => `- {name: s${index}, at: {lft: 1}}\n`, "seats:\n")),
  walls: then(numbered((index) => ` - w${index}\n`, "room:\n outline: [[0,0]]\n walls:\n")),
  corners: then(numbered((index) => `[${index} mm, ${(index * 7) % 977} mm], `, "room:\n outline: [")),
  ceilings: then(
    numbered((index) => ` - {name: c${index}, corners: [[0,0],[1 m,0],[1 m,1 m]]}\n`, "room:\n ceilings:\n"),
  ),
  obstructions: then(numbered((index) => `- {name: a${index}, on: cieling}\n`, "obstructions:\n")),
  members: then(again("1 m, ", "framing: {ceiling: {at: [", "1 m]}}")),
  framing: then(numbered((index) => ` w${index}: {}\n`, "framing:\n")),
  gauges: then(again("1, ", "cable: {gauges: [", "1]}")),
};
