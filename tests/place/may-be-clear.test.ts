import fc from "fast-check";
import { expect, test } from "vitest";
import { areaMm2 } from "../../src/geometry/clip.js";
import { extentOf, holdsTest } from "../../src/geometry/region.js";
import { mountedIn } from "../../src/listen/mounted.js";
import { clearTest } from "../../src/place/clear.js";
import { fittingOf } from "../../src/place/fitting.js";
import { mayBeClear } from "../../src/place/may-be-clear.js";
import { obstaclesOn, takenBy } from "../../src/place/obstacles.js";
import { howMany } from "../how-many.js";
import { room } from "../rooms/build.js";
import { randomRoom } from "../rooms/random.js";

const thousandths = fc.integer({ min: 0, max: 1000 });
const MANY = { minLength: 20, maxLength: 60 };

test("wherever a centre is clear, it may be", () => {
  let clear = 0;
  fc.assert(
    fc.property(randomRoom, fc.array(fc.tuple(thousandths, thousandths), MANY), (parts, shares) => {
      const one = room(parts);
      for (const { surface, speaker } of mountedIn(one)) {
        if (surface.framing.kind === "unknown") continue;
        const fitting = fittingOf(speaker, one.checks);
        const isClear = clearTest(surface, fitting, []);
        const mayBe = holdsTest(mayBeClear(surface, obstaclesOn(surface, fitting, []).map(takenBy)));
        const { least, most } = extentOf([surface.finished]);
        for (const [across, up] of shares) {
          const at = {
            u: least.u + (across / 1000) * (most.u - least.u),
            v: least.v + (up / 1000) * (most.v - least.v),
          };
          if (!isClear(at)) continue;
          clear += 1;
          expect(mayBe(at)).toBe(true);
        }
      }
    }),
    { numRuns: howMany(20) },
  );
  expect(clear).toBeGreaterThan(100);
});

test("under joists that leave less than an opening between them nothing may be", () => {
  const framing = { ceiling: { at: null, first: "240 mm", spacing: "240 mm" } };
  const one = room({ framing, speakers: [{ id: "S", at: { left: "2 m", front: "3 m" } }] });
  const [mounted] = mountedIn(one);
  if (mounted === undefined) throw new Error("not mounted");
  const fitting = fittingOf(mounted.speaker, one.checks);
  const bodies = obstaclesOn(mounted.surface, fitting, []).map(takenBy);
  expect(areaMm2(mayBeClear(mounted.surface, bodies))).toBe(0);
});
