import { describe, expect, test } from "vitest";
import type { Member, Surface } from "../../src/room/room.js";
import { surfaceNamed } from "../../src/room/room.js";
import { type Parts, room } from "../rooms/build.js";
import { codesOf, job, openingNamed } from "../rooms/job.js";

/** The plain room's front wall is 4 m wide and 2.6 m high; plates of 1 1/2 in (38.1 mm), one below, two above. */
const front = (entry: Parts, more: Parts = {}): Surface =>
  surfaceNamed(room({ framing: { front: entry }, ...more }), "front");

const membersOf = ({ framing }: Surface, kind: Member["kind"]): readonly Member[] => {
  if (framing.kind === "unknown") throw new Error("unknown");
  return framing.members.filter((member) => member.kind === kind);
};

const line = ({ from, to }: Member): readonly number[] =>
  [from.u, from.v, to.u, to.v].map((mm) => Math.round(mm * 10) / 10);

const DOOR: Parts = {
  name: "hall door",
  corner: { left: "1 m", up: "0 mm" },
  opposite: { left: "1900 mm", up: "2080 mm" },
  header: "200 mm",
};

describe("a door", () => {
  const wall = front({ openings: [DOOR] });

  test("is what openings stay away from", () => {
    expect(wall.obstructions.map(({ name, area }) => [name, area])).toEqual([
      ["hall door", { kind: "rectangle", min: { u: 1000, v: 0 }, max: { u: 1900, v: 2080 } }],
    ]);
  });

  test("has its header over it, and two studs on each side up to the plates", () => {
    expect(membersOf(wall, "header").map((each) => [line(each), each.widthMm])).toEqual([
      [[1000, 2180, 1900, 2180], 200],
    ]);
    // Studs are 45 mm wide: 22.5 and 67.5 beyond both sides; plates leave 38.1 to 2600 - 76.2.
    expect(
      membersOf(wall, "opening-stud")
        .map((each) => line(each)[0])
        .toSorted(),
    ).toEqual([977.5, 932.5, 1922.5, 1967.5].toSorted());
    expect(line(membersOf(wall, "opening-stud")[0] ?? ({} as Member)).slice(1)).toEqual([
      38.1, 977.5, 2523.8,
    ]);
    expect(membersOf(wall, "sill")).toEqual([]);
  });

  test("leaves of the layout's studs what stands over the header", () => {
    // Studs every 600: at 1200 and 1800 in the door, over its header of 2080 + 200.
    const studs = membersOf(wall, "stud").map(line);
    expect(studs.filter(([u]) => u === 1200)).toEqual([[1200, 2280, 1200, 2523.8]]);
    expect(studs.filter(([u]) => u === 600)).toEqual([[600, 38.1, 600, 2523.8]]);
  });

  test("without a header told, everything over it up to the plates counts as one, assumed", () => {
    const { header: _none, ...plain } = DOOR;
    const [header] = membersOf(front({ openings: [plain] }), "header");
    expect([header?.widthMm, header?.basis]).toEqual([expect.closeTo(2523.8 - 2080, 6), "assumed"]);
  });

  test("a cut into its header is told by that name", () => {
    const findings = job({
      framing: { front: { openings: [DOOR] } },
      speakers: [{ id: "C", model: "round", on: "front", at: { left: "1450 mm", up: "2180 mm" } }],
    }).findings;
    expect(findings.find(({ code }) => code === "opening-cuts-member")?.figures).toMatchObject({
      member: { kind: "header", number: 1 },
    });
  });

  test("a window has a sill, and cripples under it", () => {
    const window = front({
      openings: [{ ...DOOR, name: "window", corner: { left: "1 m", up: "900 mm" } }],
    });
    expect(membersOf(window, "sill").map(line)).toEqual([[1000, 881, 1900, 881]]);
    const studs = membersOf(window, "stud")
      .map(line)
      .filter(([u]) => u === 1200);
    expect(studs).toEqual([
      [1200, 38.1, 1200, 861.9],
      [1200, 2280, 1200, 2523.8],
    ]);
  });
});

describe("other framing", () => {
  test("blocking lies where its two corners say, along its longer side", () => {
    const one = room({
      framing: {
        ceiling: {
          also: [
            {
              kind: "blocking",
              corner: { left: "1 m", front: "600 mm" },
              opposite: { left: "1045 mm", front: "1200 mm" },
            },
          ],
        },
      },
    });
    const [blocking] = membersOf(surfaceNamed(one, "ceiling"), "blocking");
    // u counts from the right wall: 4000 - 1022.5; v from the back: 4800 to 5400.
    expect([line(blocking ?? ({} as Member)), blocking?.widthMm]).toEqual([[2977.5, 4800, 2977.5, 5400], 45]);
  });

  test("a doubled member is twice as wide about its line; one that is not there is told", () => {
    const ceiling = surfaceNamed(room({ framing: { ceiling: { doubled: [2] } } }), "ceiling");
    expect(
      membersOf(ceiling, "joist")
        .map(({ widthMm }) => widthMm)
        .slice(0, 3),
    ).toEqual([45, 90, 45]);
    expect(() => room({ framing: { ceiling: { doubled: [11] } } })).toThrow(/found-no-member/u);
  });

  test("rims stand across the ends of the members", () => {
    const ceiling = surfaceNamed(room({ framing: { ceiling: { rims: true } } }), "ceiling");
    // Joists run left to right, so the rims are along the left and the right wall, half their width inside.
    expect(
      membersOf(ceiling, "rim")
        .map((each) => line(each)[0])
        .toSorted(),
    ).toEqual([22.5, 3977.5]);
  });

  test("keys of the other kind of surface are refused", () => {
    expect(() => room({ framing: { front: { rims: true } } })).toThrow(/rims/u);
    expect(() => room({ framing: { ceiling: { openings: [DOOR] } } })).toThrow(/openings/u);
  });
});

describe("strapping and layers", () => {
  const speakers = [{ id: "S1", model: "deep", at: { left: "1 m", front: "1500 mm" } }];
  const deep = (depth: string): Parts => ({
    models: {
      deep: {
        opening: { round: "200 mm" },
        flange: { round: "230 mm" },
        depth,
        clamp_reach: "12 mm",
        board_range: ["20 mm", "25 mm"],
      },
    },
  });

  test("strapping deepens what is behind the face and lowers that face; the clamps hold board alone", () => {
    const strapped: Parts = { framing: { ceiling: { strapping: "40 mm" } }, speakers };
    const board: Parts = { board: { ceiling: ["12.5 mm", "9.5 mm"] } };
    // 220 of joist, 40 of strapping, 22 of board: 282.
    expect(codesOf({ ...strapped, ...board, ...deep("282 mm") })).not.toContain("too-deep");
    expect(codesOf({ ...strapped, ...board, ...deep("283 mm") })).toContain("too-deep");
    expect(codesOf({ ...strapped, ...board, ...deep("100 mm") })).not.toContain("board-out-of-clamp-range");
    const one = job({ ...strapped, ...board, ...deep("100 mm") });
    expect(openingNamed(one).position.z).toBeCloseTo(2600 - 62, 9);
  });

  test("measured to finished faces, the framing lies the strapping further behind", () => {
    const one = room({
      room: { measured_to: "finish" },
      framing: { ceiling: { strapping: "40 mm" }, left: { strapping: "25 mm" } },
    });
    const { origin } = surfaceNamed(one, "ceiling").frame;
    // 4000 between boards: 12.5 + 25 on the left, 12.5 on the right; 12.5 + 40 over the ceiling's face.
    expect([origin.x, origin.z]).toEqual([4050, 2652.5]);
  });
});

describe("joints of the board", () => {
  const sheets: Parts = {
    from: "front",
    first: "1200 mm",
    width: "1200 mm",
    length: "2400 mm",
    ends: { from: "left", first: "1 m", stagger: "1200 mm" },
  };
  const one = room({ board: { sheets: { ceiling: sheets } } });
  const { joints } = surfaceNamed(one, "ceiling");

  test("lie at every width from the first", () => {
    const long = joints.filter(({ kind }) => kind === "long").map(({ from }) => 6000 - from.v);
    expect(long).toEqual([1200, 2400, 3600, 4800]);
  });

  test("butt in each row at every length, every other row further on", () => {
    const butt = joints
      .filter(({ kind }) => kind === "butt")
      .map(({ from, to }) => [4000 - from.u, 6000 - Math.max(from.v, to.v)]);
    // First row: 1000, 3400; second: 2200 alone, since 4600 is past the wall.
    expect(butt.filter(([, row]) => row === 0).map(([left]) => left)).toEqual([1000, 3400]);
    expect(butt.filter(([, row]) => row === 1200).map(([left]) => left)).toEqual([2200]);
    expect(butt).toHaveLength(8);
  });

  test("are told where an opening lies over one, and at its edge they are not", () => {
    const through = (front: string) =>
      codesOf({
        board: { sheets: { ceiling: { from: "front", first: "1200 mm", width: "1200 mm" } } },
        speakers: [{ id: "S1", at: { left: "1 m", front } }],
      });
    expect(through("1250 mm")).toContain("joint-through-opening");
    // The hole is 200 mm: with its centre 100 mm away its edge is on the joint, which passes.
    expect(through("1300 mm")).not.toContain("joint-through-opening");
    expect(through("1299 mm")).toContain("joint-through-opening");
  });
});
