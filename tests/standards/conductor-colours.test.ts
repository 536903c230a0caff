import { describe, expect, it } from "vitest";
import { COLOUR_CODES, designation, readColourCodes } from "../../src/standards/conductor-colours.js";

describe("letters of colours (IEC 60757)", () => {
  // The rule of combining and this example were read in a public copy of IEC 60757, clause 5.1.
  it("puts the codes of a two-coloured conductor together in the order of the table", () => {
    expect(designation(["BU", "RD"])).toBe("RDBU");
    expect(readColourCodes("RDBU")).toEqual(["RD", "BU"]);
  });

  // The list as in check values read in a public copy of GB 7947, which takes it over; GNYE is green and yellow.
  it("has the fourteen codes, two letters each", () => {
    expect([...COLOUR_CODES].join(" ")).toBe("BK BN RD OG YE GN BU VT GY WH PK GD TQ SR");
    expect(readColourCodes("gnye")).toEqual(["GN", "YE"]);
  });

  it("takes nothing else for a code", () => {
    for (const typed of ["red", "R", "RDX", "XX", "", "RD BU"]) expect(readColourCodes(typed)).toBeNull();
  });
});
