import { expect, test } from "vitest";
import { Effort, within } from "../src/effort.js";

test("work that takes no more than there is gives back what it finds", () => {
  const effort = new Effort(3);
  expect(
    within(effort, () => {
      effort.spend(1);
      effort.spend(2);
      return "found";
    }),
  ).toBe("found");
  expect(effort.isSpent).toBe(false);
});

test("work that would take more ends there and gives back nothing, and so does all after it", () => {
  const effort = new Effort(3);
  const done: number[] = [];
  const work = (): string => {
    for (let step = 0; step < 5; step += 1) {
      effort.spend(1);
      done.push(step);
    }
    return "found";
  };
  expect(within(effort, work)).toBeNull();
  expect(done).toEqual([0, 1, 2]);
  expect(effort.isSpent).toBe(true);
  expect(within(effort, work)).toBeNull();
  expect(done).toEqual([0, 1, 2]);
});

test("what is granted later goes on from nothing, however far it was overdrawn", () => {
  const effort = new Effort(1);
  expect(within(effort, () => effort.spend(1000))).toBeNull();
  effort.grant(2);
  expect(within(effort, () => effort.spend(2) ?? "done")).toBe("done");
  expect(within(effort, () => effort.spend(1))).toBeNull();
});

test("an effort without end is never spent", () => {
  const effort = new Effort();
  expect(within(effort, () => effort.spend(1e300) ?? "done")).toBe("done");
});

test("only its own end is caught: not another effort's, and no error", () => {
  const [outer, inner] = [new Effort(10), new Effort(0)];
  const caught = within(outer, () => within(inner, () => inner.spend(1)) ?? "inner ended");
  expect(caught).toBe("inner ended");
  expect(within(outer, () => within(inner, () => outer.spend(11)) ?? "inner ended")).toBeNull();
  expect(() =>
    within(outer, () => {
      throw new RangeError("our own mistake");
    }),
  ).toThrow(RangeError);
});
