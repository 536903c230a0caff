import { describe, expect, test } from "vitest";
import {
  CHANNELS,
  type Channel,
  channelOf,
  nominalOf,
  type RangeDeg,
  SYSTEMS,
  type System,
  systemNamed,
} from "../../src/standards/loudspeaker-layouts.js";
import { PUBLISHED } from "./published-positions.js";

function rangeOf(text: string): RangeDeg {
  const [low = Number.NaN, high = low] = text.split("..").map(Number);
  return [low, high];
}

function published(line: string): Channel {
  const [label = "", azimuth = "", elevation = "", azimuths = "", elevations = ""] = line.trim().split(/ +/u);
  return {
    label,
    azimuthDeg: Number(azimuth),
    elevationDeg: Number(elevation),
    azimuthRangeDeg: rangeOf(azimuths),
    elevationRangeDeg: rangeOf(elevations),
    lfe: label === "LFE1" || label === "LFE2",
  };
}

function byLabel(channels: readonly Channel[]): Channel[] {
  return [...channels].sort((a, b) => a.label.localeCompare(b.label));
}

function loudspeakers(system: System): Channel[] {
  return system.channels.filter((channel) => !channel.lfe);
}

function systemOf(letter: string): System {
  const system = systemNamed(letter);
  if (system === null) throw new Error(`no system ${letter}`);
  return system;
}

describe("ITU-R BS.2051", () => {
  test("has ten systems and 107 channels in all (count in the open reference renderer's data)", () => {
    expect(SYSTEMS.map((system) => system.letter).join("")).toBe("ABCDEFGHIJ");
    expect(SYSTEMS.flatMap((system) => system.channels)).toHaveLength(107);
  });

  test.each(PUBLISHED)(
    "system %s (%s) has the published positions",
    (letter, name, count, lfeCount, lines) => {
      const system = systemOf(letter);
      expect(system.name).toBe(name);
      expect(loudspeakers(system)).toHaveLength(count);
      expect(system.channels.length - count).toBe(lfeCount);
      expect(byLabel(system.channels)).toEqual(byLabel(lines.trim().split("\n").map(published)));
    },
  );

  test.each(SYSTEMS)("the loudspeakers of $name are as many by layer as its name says", (system) => {
    const inLayer = (layers: RegExp) => loudspeakers(system).filter(({ label }) => layers.test(label)).length;
    expect([inLayer(/^(U|UH|T)[+-]/u), inLayer(/^M[+-]/u), inLayer(/^B[+-]/u)].join("+")).toBe(system.name);
  });

  test.each(SYSTEMS)("pairs of $name are exact mirrors", (system) => {
    const left = loudspeakers(system).filter(({ azimuthDeg }) => azimuthDeg > 0 && azimuthDeg < 180);
    const right = loudspeakers(system).filter(({ azimuthDeg }) => azimuthDeg < 0);
    const mirrored = right.map((channel) => ({
      ...channel,
      label: channel.label.replace("-", "+"),
      azimuthDeg: -channel.azimuthDeg,
      azimuthRangeDeg: [-channel.azimuthRangeDeg[1], -channel.azimuthRangeDeg[0]] as const,
    }));
    expect(byLabel(mirrored)).toEqual(byLabel(left));
  });

  test("a label says its nominal azimuth, and its sign is the side: + is left", () => {
    for (const { label, azimuthDeg } of SYSTEMS.flatMap(loudspeakers)) {
      const [, digits] = /^[A-Z]+([+-]\d{3})$/u.exec(label) ?? [];
      if (digits !== undefined) expect(azimuthDeg, label).toBe(Number(digits));
    }
  });

  test.each(SYSTEMS)(
    "no label stands twice in $name, and every nominal position lies in its range",
    (system) => {
      expect(new Set(system.channels.map(({ label }) => label)).size).toBe(system.channels.length);
      for (const channel of system.channels) {
        expect(channel.azimuthRangeDeg[0], channel.label).toBeLessThanOrEqual(channel.azimuthDeg);
        expect(channel.azimuthRangeDeg[1], channel.label).toBeGreaterThanOrEqual(channel.azimuthDeg);
        expect(channel.elevationRangeDeg[0], channel.label).toBeLessThanOrEqual(channel.elevationDeg);
        expect(channel.elevationRangeDeg[1], channel.label).toBeGreaterThanOrEqual(channel.elevationDeg);
      }
    },
  );

  test("only upper and top loudspeakers may stand at 30 degrees or higher", () => {
    for (const { label, elevationRangeDeg } of SYSTEMS.flatMap(loudspeakers)) {
      expect(elevationRangeDeg[1] >= 30, label).toBe(/^(U|UH|T)/u.test(label));
    }
  });

  test("over 55 degrees a U loudspeaker is out of range in C, D, E, G and J; F and H end at 45", () => {
    const highest = (letter: string) =>
      Math.max(
        ...loudspeakers(systemOf(letter)).flatMap((c) =>
          /^U[+-]/u.test(c.label) ? c.elevationRangeDeg[1] : [],
        ),
      );
    expect(["C", "D", "E", "G", "J"].map(highest)).toEqual([55, 55, 55, 55, 55]);
    expect(["F", "H"].map(highest)).toEqual([45, 45]);
  });

  // ITU-R BS.775-3, figure 1: centre at 0°, left and right at 30°, surrounds at 100° to 120°.
  test("system B is the arrangement of ITU-R BS.775", () => {
    const system = systemOf("B");
    expect(
      loudspeakers(system)
        .map(({ label }) => label)
        .sort(),
    ).toEqual(["M+000", "M+030", "M+110", "M-030", "M-110"].sort());
    expect(channelOf(system, "M+110")?.azimuthRangeDeg).toEqual([100, 120]);
    expect(channelOf(system, "M-110")?.azimuthRangeDeg).toEqual([-120, -100]);
    expect(channelOf(system, "M-030")?.azimuthDeg).toBe(-30);
  });
});

describe("systemNamed", () => {
  test.each([
    ["4+7+0", "J"],
    [" 4+7+0 ", "J"],
    ["j", "J"],
    ["H", "H"],
    ["9+10+3", "H"],
  ])("%s", (text, letter) => expect(systemNamed(text)?.letter).toBe(letter));

  test.each(["", "K", "AB", "4+7", "4+7+0+0", "toString"])("%j is none", (text) => {
    expect(systemNamed(text)).toBeNull();
  });
});

test("CHANNELS holds each label once, and channelOf knows no other", () => {
  expect(new Set(CHANNELS).size).toBe(CHANNELS.length);
  expect([...CHANNELS].sort()).toEqual(
    [
      ...new Set(
        PUBLISHED.flatMap(([, , , , lines]) =>
          lines
            .trim()
            .split("\n")
            .map((line) => published(line).label),
        ),
      ),
    ].sort(),
  );
  expect(channelOf(systemOf("A"), "U+045")).toBeNull();
});

test("a label has one nominal direction, whatever the system; low-frequency effects have none", () => {
  const channels = SYSTEMS.flatMap((system) => system.channels);
  for (const { label, azimuthDeg, elevationDeg, lfe } of channels) {
    if (lfe) expect(nominalOf(label), label).toBeNull();
    else expect(nominalOf(label), label).toMatchObject({ azimuthDeg, elevationDeg });
  }
  expect(nominalOf("M+045")).toBeNull();
});
