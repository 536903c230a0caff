import { spawnSync } from "node:child_process";
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { DEN, EXAMPLES, STUDIO, workFolder } from "./in-folder.js";

/** What a hurried user types: each gets a clear sentence, exit 2, and nothing is written. */
async function refused(
  typed: readonly string[],
  says: RegExp,
  prepare: (folder: string) => void = () => undefined,
) {
  const { folder, type } = workFolder();
  prepare(folder);
  const { code, out, err } = await type(...typed);
  expect(code).toBe(2);
  expect(`${out}${err}`).toMatch(says);
  expect(`${out}${err}`).not.toMatch(/\bat .*\.[jt]s:\d+|undefined|\[object/);
  expect(existsSync(join(folder, "out"))).toBe(false);
}

const file = (name: string, text: string | Uint8Array) => (folder: string) =>
  writeFileSync(join(folder, name), text);

/** The den with one stretch of its text replaced, which must have been there. */
const denWith = (was: string, is: string) => (folder: string) => {
  const den = readFileSync(join(folder, DEN), "utf8");
  expect(den).toContain(was);
  writeFileSync(join(folder, "room.yaml"), den.replace(was, is));
};

describe("what cannot be used is refused in a sentence, with nothing written", () => {
  test("a file that is not there", () => refused(["print", "den.yaml"], /den\.yaml.*no such file/));
  test("a folder", () => refused(["check", "."], /folder/));
  test.skipIf(!existsSync("/dev/zero"))("a device that never ends", () =>
    refused(["check", "/dev/zero"], /name a room file/),
  );
  test("an empty file", () => refused(["print", "room.yaml"], /room\.yaml:1:1/, file("room.yaml", "")));
  test("not YAML", () =>
    refused(["print", "room.yaml"], /room\.yaml:\d+:\d+/, file("room.yaml", "a: [1, {")));
  test("bytes that are no text", () =>
    refused(["print", "room.yaml"], /room\.yaml/, file("room.yaml", Uint8Array.of(0xff, 0xfe, 0x00, 0x80))));
  test("a bare number", () =>
    refused(
      ["print", "room.yaml"],
      /room\.yaml:15:\d+.*(?=.*8")(?=.*8 mm)(?=.*8 ft)/s,
      denWith(`height: 8' 11"`, "height: 8"),
    ));
  test("an unknown key", () =>
    refused(
      ["print", "room.yaml"],
      /room\.yaml:\d+:\d+.*did you mean `?spacing/s,
      denWith('spacing: 16", mark', 'spaceing: 16", mark'),
    ));
  test("two openings with one id", () =>
    refused(["print", "room.yaml"], /room\.yaml:\d+:\d+.*TFL/s, denWith("id: TFR,", "id: TFL,")));
  test("not a number at all", () =>
    refused(["print", "room.yaml"], /room\.yaml:15:/, denWith(`height: 8' 11"`, "height: .nan")));
  test("an impossible size", () =>
    refused(["print", "room.yaml"], /room\.yaml:13:.*900/s, denWith(`width: 14' 8"`, "width: 900 m")));
  test("right-to-left override in a name", () =>
    refused(
      ["print", "room.yaml"],
      /U\+202E/,
      denWith("name: Quarry Lane den", 'name: "Quarry \\u202e den"'),
    ));
  test("a character without a glyph", () =>
    refused(["print", "room.yaml"], /U\+1F50A/, denWith("name: Quarry Lane den", "name: Quarry 🔊 den")));
  test("a control character", () =>
    refused(["print", "room.yaml"], /U\+0007/, denWith("name: Quarry Lane den", 'name: "Quarry \\a den"')));
  test("a name that would steer the terminal", () =>
    refused(
      ["check", "den\u001b[2J.yaml"],
      /denU\+001B\[2J\.yaml: has a character that nobody sees, U\+001B/,
    ));
  test("a name that reads backwards", () =>
    refused(["print", DEN, "-o", "out\u202e"], /outU\+202E: .*type it again without it/));
  test("a name that ends a line in some programs and in others not", () =>
    refused(["explain", "too-deep\u2029"], /too-deepU\+2029: .*type it again without it/));
  test("spaces alone, of any kind", () =>
    refused(["explain", " \u00a0"], /one of the words typed .* holds only spaces/));
  test("a variable of the shell that holds nothing", () =>
    refused(["check", ""], /one of the words typed is empty/));
  test("a ruler page over a room file", async () => {
    const { folder, type } = workFolder();
    const before = readFileSync(join(folder, DEN));
    const { code, err } = await type("ruler", "-o", DEN);
    expect([code, err]).toEqual([
      2,
      `baymark: ${DEN}: already exists and was left alone; name another file\n`,
    ]);
    expect(readFileSync(join(folder, DEN)).equals(before)).toBe(true);
    expect((await type("ruler")).code).toBe(0);
    expect((await type("ruler")).code).toBe(0);
  });
  test.skipIf(!existsSync("/dev/null"))("but a ruler page to a device", async () => {
    const { type } = workFolder();
    expect((await type("ruler", "-o", "/dev/null")).code).toBe(0);
  });
  test("a sheet that is not there", () => refused(["print", DEN, "--only", "roof"], /--only roof.*ceiling/s));
  test("a sheet by a name that is nearly one", () =>
    refused(["print", DEN, "--only", "openin-TFL"], /did you mean `opening-TFL`\? There are/));
  test("of many sheets of a kind the first ones and the last are named", () =>
    refused(["print", DEN, "--only", "roof"], /opening-schedule, opening-FL \.\.\. opening-\S+,/));
  test("a paper that is not there", () => refused(["print", DEN, "--paper", "foolscap"], /letter.*A4/s));
  test("a printer that nobody measured", () =>
    refused(["print", DEN, "--printer", "nobody"], /baymark ruler/));
  test("a language that is not there", () => refused(["print", DEN, "--language", "fr"], /en, es/));
  test("a command that is not there", () => refused(["prnt", DEN], /did you mean.*print/));
  test("an option that is not there", () => refused(["print", DEN, "--colour"], /--colour/));
  test("no file at all", () => refused(["check"], /files/));
  test("two rooms for one folder", () =>
    refused(["print", DEN, `sub/${DEN}`], /one folder/, (folder) => mkdirSync(join(folder, "sub"))));
});

describe("a packet is whole or not there", () => {
  test("names that are markup are printed as names", async () => {
    const { folder, type } = workFolder();
    denWith("name: Quarry Lane den", 'name: "</text><script>alert(1)</script>"')(folder);
    const { code } = await type("print", "room.yaml", "--only", "ceiling");
    expect(code).toBe(1);
    const svg = readFileSync(join(folder, "out", "room-part", "svg", "ceiling.svg"), "utf8");
    expect(svg).not.toMatch(/<script/);
    expect(svg).toContain("&lt;script&gt;");
  });

  test("--strict writes nothing while an error stands", async () => {
    const { folder, type } = workFolder();
    const { code, err } = await type("print", DEN, "--strict");
    expect(code).toBe(1);
    expect(err).toMatch(/nothing was written/);
    expect(existsSync(join(folder, "out"))).toBe(false);
  });

  test("a folder that holds something else is left alone", async () => {
    const { folder, type } = workFolder();
    mkdirSync(join(folder, "mine"));
    writeFileSync(join(folder, "mine", "letter.txt"), "keep");
    const { code, err } = await type("print", STUDIO, "-o", "mine", "--only", "ceiling");
    expect(code).toBe(2);
    expect(err).toMatch(/left alone/);
    expect(readdirSync(join(folder, "mine"))).toEqual(["letter.txt"]);
  });

  test.skipIf(process.getuid?.() === 0)("a folder that cannot be written", async () => {
    const { folder, type } = workFolder();
    mkdirSync(join(folder, "shut"));
    chmodSync(join(folder, "shut"), 0o500);
    const { code, err } = await type("print", STUDIO, "-o", "shut/packet");
    expect(code).toBe(2);
    expect(err).toMatch(/cannot be written/);
  });

  test("a folder under a file cannot be written, and says so", async () => {
    const { folder, type } = workFolder();
    writeFileSync(join(folder, "plain"), "");
    const { code, err } = await type("print", STUDIO, "-o", "plain/packet", "--only", "ceiling");
    expect(code).toBe(2);
    expect(err).toMatch(/cannot be written/);
  });

  test.skipIf(!existsSync("/proc/self"))(
    "a folder that the system never makes is refused, not waited for",
    async () => {
      const { type } = workFolder();
      const { code, err } = await type("print", STUDIO, "-o", "/proc/packet/deeper", "--only", "ceiling");
      expect(code).toBe(2);
      expect(err).toMatch(/cannot be written \(ENOENT\)/);
    },
  );

  test("a new print replaces the old packet as a whole, and a bad room leaves it standing", async () => {
    const { folder, type } = workFolder();
    expect((await type("print", STUDIO, "-o", "packet", "--only", "ceiling")).code).toBe(1);
    const before = readdirSync(join(folder, "packet"), { recursive: true }).sort();
    writeFileSync(join(folder, STUDIO), "baymark: 1\n");
    expect((await type("print", STUDIO, "-o", "packet")).code).toBe(2);
    expect(readdirSync(join(folder, "packet"), { recursive: true }).sort()).toEqual(before);
    expect(
      readdirSync(folder).filter((name) => name.startsWith("packet") || name.startsWith(".packet")),
    ).toEqual(["packet"]);
  });
});

describe("commands say what they did", () => {
  test("start writes a room that checks without complaint, once", async () => {
    const { type } = workFolder();
    expect((await type("start", "new.yaml")).code).toBe(0);
    expect((await type("check", "new.yaml")).code).toBeLessThan(2);
    const again = await type("start", "new.yaml");
    expect(again.code).toBe(2);
    expect(again.err).toMatch(/already exists/);
  });

  test("check ends with the worst of its rooms and prints one object a room as JSON", async () => {
    const { type } = workFolder();
    const { code, out } = await type("check", DEN, "missing.yaml", "--json");
    expect(code).toBe(2);
    const [den, missing] = out
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect(den.file).toBe(DEN);
    expect(den.speakers).toHaveLength(11);
    expect(den.fingerprint).toMatch(/^[0-9a-f]{64}$/);
    expect(missing.findings[0].level).toBe("error");
  });

  test("explain knows every code that the examples show", async () => {
    const { type } = workFolder();
    const { out } = await type("check", DEN, STUDIO, "--json");
    const codes = out
      .trim()
      .split("\n")
      .flatMap((line) => JSON.parse(line).findings.map((found: { code: string }) => found.code));
    expect(new Set(codes).size).toBeGreaterThan(3);
    for (const code of new Set<string>(codes)) expect((await type("explain", code)).code).toBe(0);
    expect((await type("explain", "opening-cuts-joist")).err).toMatch(/opening-cuts-member/);
  });

  test("help speaks the language asked for", async () => {
    const { type } = workFolder();
    expect((await type("print", "--help")).out).toMatch(/Usage:/);
    expect((await type("print", "--help", "--language", "es")).out).toMatch(/Uso:/);
  });
});

describe("the built program", () => {
  const PROGRAM = join(EXAMPLES, "..", "bin", "baymark.js");
  const built = existsSync(join(EXAMPLES, "..", "bin", "built", "cli.js"));
  const ended = (...typed: string[]) =>
    spawnSync(process.execPath, [PROGRAM, ...typed], { encoding: "utf8" });

  test.skipIf(!built)("ends quietly when nobody reads on", () => {
    const typed = `"${process.execPath}" "${PROGRAM}" report "${join(EXAMPLES, DEN)}" | head -n 1`;
    const { stdout, stderr } = spawnSync("sh", ["-c", typed], { encoding: "utf8" });
    expect(stdout).toBe("Quarry Lane den\n");
    expect(stderr).toBe("");
  });

  test.skipIf(!built)("gives the exit codes to the shell and no colour to a file", () => {
    const { status, stdout } = ended("check", join(EXAMPLES, DEN));
    expect(status).toBe(1);
    expect(stdout).not.toContain("\u001b");
    expect(ended("check", "nothing.yaml").status).toBe(2);
    expect(ended("explain").status).toBe(0);
  });

  test.skipIf(!built).each([
    { memory: "check", typed: ["check", "--help"], tells: /^Usage: baymark check / },
    { memory: "report", typed: ["--version"], tells: /^\d+\.\d+\.\d+\n$/ },
    { memory: "print", typed: ["print", "--help"], tells: /^Usage: baymark print / },
  ])(
    "$typed starts from what V8 had compiled, and without it or with another's as well",
    ({ memory: command, typed, tells }) => {
      const folder = mkdtempSync(join(tmpdir(), "baymark-built-"));
      cpSync(join(EXAMPLES, "..", "bin"), folder, { recursive: true });
      const asks = `process.stdout.write(String(require("./load.js").scriptFor("${command}").cachedDataRejected))`;
      const rejected = () =>
        spawnSync(process.execPath, ["-e", asks], { cwd: folder, encoding: "utf8" }).stdout;
      const said = () =>
        spawnSync(process.execPath, [join(folder, "baymark.js"), ...typed], { encoding: "utf8" }).stdout;
      const memory = join(folder, "built", `${command}.v8`);
      const told = said();
      expect(told).toMatch(tells);
      expect(rejected()).toBe("false");
      writeFileSync(memory, readFileSync(memory).fill(7, 0, 64));
      expect(rejected()).toBe("true");
      expect(said()).toBe(told);
      rmSync(memory);
      expect(said()).toBe(told);
      rmSync(folder, { recursive: true });
    },
  );

  test.skipIf(!built)(
    "as bundled it reads the marks of a text program and of a telephone like plain ones",
    () => {
      const folder = mkdtempSync(join(tmpdir(), "baymark-marks-"));
      const den = readFileSync(join(EXAMPLES, DEN), "utf8");
      const answer = (is: string) => {
        denWith(`height: 8' 11"`, `height: ${is}`)(folder);
        const { stdout, stderr } = ended("check", join(folder, "room.yaml"), "--json");
        expect(stderr).toBe("");
        // Its fingerprint is of the bytes.
        const { fingerprint, ...read } = JSON.parse(stdout);
        return read;
      };
      writeFileSync(join(folder, DEN), den);
      const plain = answer(`8' 10 1/2"`);
      for (const typed of ["8’ 10½”", "8′ 10 ½″", "8′‑10 1⁄2″", "106 ½ in"])
        expect(answer(typed)).toEqual(plain);
      rmSync(folder, { recursive: true });
    },
  );

  test.skipIf(!built)("`check` alone says what the whole program says", () => {
    const asks = (command: string) =>
      `require("./load.js").programFor("${command}").run(process.argv.slice(1)).then((code) => process.exit(code))`;
    const by = (command: string, ...typed: string[]) => {
      const { status, stdout, stderr } = spawnSync(process.execPath, ["-e", asks(command), "--", ...typed], {
        cwd: join(PROGRAM, ".."),
        encoding: "utf8",
      });
      return { status, stdout, stderr };
    };
    const lines = [
      ["check", join(EXAMPLES, DEN), "--json"],
      ["check", join(EXAMPLES, DEN), "--language", "es"],
      ["check", "nothing.yaml"],
      ["check", "--strict"],
      ["check"],
      ["check", "--help"],
    ];
    for (const typed of lines) expect(by("check", ...typed)).toEqual(by("report", ...typed));
  });
});
