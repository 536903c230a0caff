import { describe, expect, test } from "vitest";
import { jobJson } from "../../src/job-json.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";

/** Up the right wall's bay, in through two plates, 3 m along the joists' bay: 2100 + 170 + 3000 mm (tests/cable). */
const WIRED: Parts = {
  equipment: { at: { right: "0", back: "700 mm" }, up: "500 mm" },
  cable: { loop: "1 m", spare: "5%", loss: "0.5 dB", gauges: [16, 14] },
  models: { round: { impedance: "8 ohm", minimum_impedance: "6 ohm" } },
  speakers: [{ id: "S", at: { left: "1 m", front: "5300 mm" } }],
};

const json = (said: Parts) => jobJson(job(said));
const cable = (said: Parts = WIRED) => json(said).speakers[0]?.cable;

test("the keys of the format, with what is asked of them", () => {
  const length = (2100 + 170 + 3000 + 2000) * 1.05;
  // ASTM B258: gauge 16 has 13.174 ohm/km; out and back over the least impedance.
  const share = (2 * 13.174 * length) / 1e6 / 6;
  expect(cable()).toMatchObject({
    length: expect.closeTo(length, 6),
    gauge: 16,
    area: null,
    loss: expect.closeTo(20 * Math.log10(1 + share), 4),
    bored: 2,
    conductors: 2,
    route: expect.closeTo(5270, 6),
    share: expect.closeTo(share, 5),
    damping: expect.closeTo(1 / share, 1),
    given: { length: false, size: false },
  });
  expect(cable()?.way.map(({ surface, toward, members }) => [surface, toward, members])).toEqual([
    ["right", "ceiling", "along"],
    ["ceiling", "left", "along"],
  ]);
});

test("null without equipment, without a position, and where no way leads", () => {
  expect(cable({ ...WIRED, equipment: null })).toBeNull();
  expect(json({ ...WIRED, equipment: null }).cabling).toBeNull();
  const best = { ...WIRED, speakers: [{ id: "S", channel: "LFE1", at: "best" }] };
  expect(cable(best)).toBeNull();
  const shut = {
    ...WIRED,
    cable: {
      avoid: [{ on: "right", corner: { front: "0", up: "1 m" }, opposite: { back: "0", up: "1.2 m" } }],
    },
  };
  expect(cable(shut)).toBeNull();
  expect(json(shut).cabling?.unreached).toEqual(["S"]);
  expect(json(shut).findings.map(({ code }) => code)).toContain("cable-without-way");
});

test("loss and size are not guessed where no impedance is stated", () => {
  expect(cable({ ...WIRED, models: { round: { impedance: null } } })).toMatchObject({
    gauge: null,
    loss: null,
    damping: null,
  });
});

test("the user's figures stand, and are told as given", () => {
  const given = {
    ...WIRED,
    speakers: [{ at: { left: "1 m", front: "5300 mm" }, cable: { size: "2.5 mm2" } }],
  };
  expect(cable(given)).toMatchObject({ gauge: null, area: 2.5, given: { length: false, size: true } });
});

test("holes and spools stand beside the loudspeakers", () => {
  const { cabling } = json(WIRED);
  expect(cabling?.holes.map(({ surface, kind, verdict }) => [surface, kind, verdict])).toEqual([
    ["right", "top-plate", "allowed"],
    ["right", "top-plate", "allowed"],
  ]);
  expect(cabling).toMatchObject({ exact: true, too_long: [], totals: [{ gauge: 16, runs: 1, spools: 1 }] });
  expect(JSON.parse(JSON.stringify(cabling))).toEqual(cabling);
});

describe("findings", () => {
  const codes = (said: Parts) =>
    json(said)
      .findings.filter(({ code }) => /cable|bored/u.test(code))
      .map(({ code, level, message }) => ({ code, level, message }));

  test("a run that loses too much says what would do", () => {
    expect(codes({ ...WIRED, cable: { gauges: [24], loss: "0.5 dB" } })).toMatchObject([
      { code: "cable-too-thin", level: "warning", message: expect.stringContaining("none at hand does") },
    ]);
    const thin = { ...WIRED, speakers: [{ at: { left: "1 m", front: "5300 mm" }, cable: { gauge: 24 } }] };
    expect(codes(thin)).toMatchObject([{ message: expect.stringContaining("AWG 16 would do") }]);
    expect(codes(WIRED)).toEqual([]);
  });

  test("a hole that is too large offers several holes, or else another way", () => {
    const across = [1000, 1600, 2800].map((left, index) => ({
      id: `S${index}`,
      on: "front",
      model: "upright",
      at: { left: `${left} mm`, up: "1.2 m" },
    }));
    const equipment = { at: { right: "0", front: "1600 mm" }, up: "2400 mm" };
    // Three cables of 20 mm: 20 sqrt(3 / 0.4) = 54.8 mm, next bit 57.15; a stud of 120 mm may have 48 mm, joists 73.3.
    const thick = {
      ...WIRED,
      speakers: across,
      equipment,
      labels: { stock: "letter-30", cable_diameter: "20 mm" },
    };
    const shallow = { framing: { ceiling: { member: { width: "45 mm", depth: "150 mm" } } } };
    const [parted] = codes({ ...thick, ...shallow });
    expect(parted?.message).toMatch(/Instead: (2|3) holes of/u);
    // Joists of 89 mm may have none; along the right wall's studs there is a way as short.
    const none = { framing: { ceiling: { member: { width: "38 mm", depth: "89 mm" } } } };
    const high = { ...equipment, up: "2500 mm" };
    const messages = codes({ ...thick, ...none, equipment: high }).map(({ message }) => message);
    expect(messages.join("\n")).toMatch(/it may have none.*another way that bores none of them/u);
  });
});

describe("what the room file leaves open", () => {
  const assumed = (said: Parts) => json(said).cabling?.assumed;

  test("is told with what was taken for it: common practice, and the standards' 20 °C", () => {
    const bare = { ...WIRED, cable: null, models: { round: { impedance: "8 ohm" } } };
    expect(assumed(bare)).toEqual([
      { what: "diameter", two: 8, four: 10 },
      { what: "loop", length: expect.closeTo(914.4, 6) },
      { what: "rack-loop", length: expect.closeTo(1828.8, 6) },
      { what: "spare", percent: 5 },
      { what: "gauges", gauges: [16, 14, 12] },
      { what: "loss-limit", limit: expect.closeTo(20 * Math.log10(1.05), 9), share: 0.05 },
      { what: "temperature", celsius: 20 },
      { what: "one-pair", speakers: ["S"] },
      { what: "nominal-impedance", speakers: ["S"] },
      { what: "spools", length: expect.closeTo(152_400, 6) },
    ]);
    expect(json(bare).cabling).toMatchObject({
      ends: { loop: expect.closeTo(914.4, 6), rack_loop: expect.closeTo(1828.8, 6), spare: 5 },
      diameter: { two: 8, four: 10, given: false },
      loss_limit: expect.closeTo(20 * Math.log10(1.05), 9),
    });
    expect(json(bare).speakers[0]?.cable?.given).toEqual({ length: false, size: false, conductors: false });
  });

  test("is nothing where the file says it all", () => {
    const whole = {
      ...WIRED,
      cable: { ...(WIRED.cable as Parts), wiring: "single", temperature: "20 C", spools: ["100 m"] },
      labels: { stock: "A4-24", cable_diameter: "7 mm" },
    };
    expect(assumed(whole)).toEqual([]);
    expect(json(whole).cabling?.diameter).toEqual({ two: 7, four: 7, given: true });
  });

  test("and nothing that no figure rests on", () => {
    const given = {
      id: "S",
      at: { left: "1 m", front: "5300 mm" },
      cable: { gauge: 14, length: "9 m", conductors: 2 },
    };
    const kinds = assumed({ ...WIRED, cable: null, models: {}, speakers: [given] })?.map(({ what }) => what);
    expect(kinds).toEqual(["diameter", "spools"]);
  });
});
