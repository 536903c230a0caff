import { describe, expect, it } from "vitest";
import { bracketsCsv, cablesCsv, grillesCsv, openingsCsv } from "../../src/sheets/csv.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";
import { orderFor } from "./orders.js";
import { cellsOf } from "./read-csv.js";

function recordsOf(csv: string): Record<string, string>[] {
  const [header = [], ...rows] = cellsOf(csv);
  return rows.map((row) => Object.fromEntries(header.map((name, index) => [name, row[index] ?? ""])));
}

const CLEAR: Parts = { id: "OK", at: { left: "1500 mm", front: "2700 mm" } };
const WALL: Parts = {
  id: "SL",
  channel: "M-030",
  model: "upright",
  on: "left",
  at: { front: "1500.4 mm", up: "1200 mm" },
};

const order = (speakers: readonly Parts[], more: Parts = {}) => orderFor(job({ speakers, ...more }));

describe("openings.csv", () => {
  it("has a row for each opening, millimetres in full and feet beside them", () => {
    const one = order([CLEAR, WALL]);
    const [ceiling, wall] = recordsOf(openingsCsv(one));
    expect(ceiling).toMatchObject({
      id: "OK",
      tapes_touch: "framing",
      first_from: "left",
      first_mm: "1500",
      cut_diameter_mm: "200",
      cut_radius_mm: "100",
      cut_width_mm: "",
      do_not_cut: "false",
      bay: "5",
      bay_from: "front",
    });
    // 1500 mm is 59.055 in; a tape to 1/16 reads 4' 11 1/16".
    expect(ceiling?.first_ft_in).toBe("4' 11 1/16\"");
    // The board of the front wall, 12.5 mm, stands between the studs and the tape.
    expect(Number(wall?.first_mm)).toBeCloseTo(1500.4 - 12.5, 9);
    expect(wall).toMatchObject({
      tapes_touch: "finish",
      cut_shape: "rectangle",
      cut_diameter_mm: "",
      channel: "M-030",
    });
    const [opening] = one.job.openings;
    expect(Number(ceiling?.gap_mm)).toBe(opening?.gap?.mm);
    expect(Number(ceiling?.y_mm)).toBe(opening?.position.y);
  });

  it("has a row for each state of the walls, and one without tapes for what has no position", () => {
    const both = recordsOf(
      openingsCsv(order([CLEAR, { id: "LOST", channel: "LFE1", at: "best" }], { stage: { walls: "both" } })),
    );
    expect(both.map(({ id, tapes_touch }) => [id, tapes_touch])).toEqual([
      ["OK", "framing"],
      ["OK", "finish"],
      ["LOST", ""],
    ]);
    expect(both[2]).toMatchObject({ first_mm: "", do_not_cut: "", cut_diameter_mm: "200" });
  });

  it("names what forbids to cut", () => {
    const [row] = recordsOf(openingsCsv(order([{ ...CLEAR, at: { left: "1500 mm", front: "3000 mm" } }])));
    expect(row?.do_not_cut).toBe("true");
    expect(row?.errors).toContain("opening-cuts-member");
    expect(Number(row?.gap_mm)).toBeLessThan(0);
    expect(row?.gap_mm).not.toContain("'");
  });

  it("is empty for a room without loudspeakers", () => {
    expect(openingsCsv(order([]))).toBe("");
  });
});

describe("the other schedules", () => {
  it("brackets.csv is on bare framing whatever the walls", () => {
    const rows = recordsOf(bracketsCsv(order([CLEAR, WALL])));
    expect(rows.map(({ tapes_touch }) => tapes_touch)).toEqual(["framing", "framing"]);
    expect(rows[1]?.first_mm).toBe("1500.4");
  });

  it("cables.csv has what is given and leaves empty what is not, or not computed yet", () => {
    const given = { ...CLEAR, amplifier: "7", cable: { gauge: 14, conductors: 2, length: "14.2 m" } };
    const [full, bare] = recordsOf(cablesCsv(order([given, WALL])));
    expect(full).toMatchObject({
      amplifier_channel: "7",
      gauge_awg: "14",
      conductors: "2",
      length_mm: "14200",
      loss_db: "",
    });
    expect(bare).toMatchObject({
      amplifier_channel: "",
      gauge_awg: "",
      conductors: "",
      length_mm: "",
      terminals: "",
    });
  });

  it("cables.csv has what is computed where equipment is given, and the user's figures before it", () => {
    const room = {
      equipment: { at: { right: "0", back: "700 mm" }, up: "500 mm" },
      cable: { loop: "1 m", spare: "0%", gauges: [16, 14] },
      models: { round: { impedance: "8 ohm" } },
    };
    const at = { left: "1 m", front: "5300 mm" };
    const [one] = recordsOf(cablesCsv(order([{ id: "S", at }], room)));
    // 2100 up, 170 round the corner, 3000 along, two loops of 1000 (tests/cable).
    expect(one).toMatchObject({
      gauge_awg: "16",
      size_from: "computed",
      conductors: "2",
      length_mm: "",
      route_mm: "5270",
      cut_to_mm: "7270",
      bored_holes: "2",
      way: "right toward ceiling 2100 mm; ceiling toward left 3000 mm",
    });
    expect(Number(one?.loss_db)).toBeCloseTo(20 * Math.log10(1 + (2 * 13.174 * 7.27) / 1000 / 8), 4);
    const [given] = recordsOf(cablesCsv(order([{ id: "S", at, cable: { gauge: 12, length: "9 m" } }], room)));
    expect(given).toMatchObject({
      gauge_awg: "12",
      size_from: "given",
      length_mm: "9000",
      cut_to_mm: "9000",
    });
  });

  it("grilles.csv goes by the flange", () => {
    const rows = recordsOf(grillesCsv(order([CLEAR, WALL])));
    expect(rows[0]).toMatchObject({ flange_shape: "round", flange_diameter_mm: "230", count: "1" });
    expect(rows[1]).toMatchObject({
      flange_shape: "rectangle",
      flange_width_mm: "210",
      flange_height_mm: "330",
    });
  });
});

describe("text from a room file cannot become a formula", () => {
  // What a spreadsheet takes for the beginning of a formula: OWASP, "CSV Injection".
  it.each(["=1+1", "+1", "-1", "@SUM(A1)"])("a terminal kind of %s", (terminal) => {
    const [row] = recordsOf(cablesCsv(order([CLEAR], { models: { round: { terminal } } })));
    expect(row?.terminal_kind).toBe(`'${terminal}`);
  });

  it("quotes and commas come back as they were", () => {
    const terminal = 'clip, 1/4" wide';
    const [row] = recordsOf(cablesCsv(order([CLEAR], { models: { round: { terminal } } })));
    expect(row?.terminal_kind).toBe(terminal);
  });
});
