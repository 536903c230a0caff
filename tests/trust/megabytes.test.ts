import { afterAll, describe, expect, test } from "vitest";
import { ownFolder } from "./command.js";
import { asked, inTime, noMoreQuestions, roomIn } from "./fuzz/asked.js";
import { holdsOfPlaces, holdsOfWords } from "./fuzz/holds.js";
import { MEGABYTES } from "./fuzz/megabytes.js";

/* Two seconds for any file up to a megabyte, and an answer that a person can use. */

afterAll(noMoreQuestions);

describe("a megabyte of", () => {
  test.each(Object.keys(MEGABYTES))("%s", async (name) => {
    const bytes = MEGABYTES[name] ?? Buffer.of();
    const folder = ownFolder();
    roomIn(folder, "baymark: 1\n");
    // The program's first answer also waits for the program.
    await asked(folder, "check", "room.yaml");
    roomIn(folder, bytes);
    const answer = await inTime(folder, "check", "room.yaml");
    expect(answer.code).toBe(2);
    const source = Buffer.from(bytes).toString();
    holdsOfWords(answer, source);
    holdsOfPlaces(answer, source);
  });
});
