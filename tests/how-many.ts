/*
 * `npm test` must be quick: it looks at some of the cases. `npm run trust` looks at more of them, in the same files
 * (vitest.trust.config.ts); `BAYMARK_TIMES=40 npx vitest run tests/place/best/grid.test.ts` at as many as one likes.
 */
const TIMES = Number(process.env.BAYMARK_TIMES ?? 1);

/** Whether there is time. */
export const isThorough = TIMES > 1;

/** How many random cases to look at: so many in `npm test`, at least so many where there is time. */
export const howMany = (few: number, atLeast = few): number =>
  isThorough ? Math.max(atLeast, Math.round(few * TIMES)) : few;

/** All cases where there is time for them, else those that are the hardest. */
export const someOf = <Case>(cases: readonly Case[], isHard: (one: Case) => boolean): readonly Case[] =>
  isThorough ? cases : cases.filter(isHard);
