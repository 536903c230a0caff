/**
 * How much one part of an answer may still look at. It is a count and no time, so that a file has one answer on every
 * machine; what a look is, the part says that spends it.
 */
export class Effort {
  /** Without end unless said. */
  constructor(private left = Number.POSITIVE_INFINITY) {}

  /** Whether more was asked for than there was. */
  get isSpent(): boolean {
    return this.left < 0;
  }

  /** Looks that nothing was spent on. */
  get unspent(): number {
    return Math.max(0, this.left);
  }

  /** Lets it go on for so many looks more. */
  grant(looks: number): void {
    this.left = this.unspent + looks;
  }

  /** Ends the work that `within` began where there is not so much left. */
  spend(looks: number): void {
    this.left -= looks;
    if (this.left < 0) throw new EffortSpent(this);
  }
}

/** Never seen outside `within`: whoever gives an effort an end also catches this. */
class EffortSpent extends Error {
  constructor(readonly effort: Effort) {
    super("effort spent");
  }
}

/** What the work gives back; null where it would take more effort than there is. */
export function within<Found>(effort: Effort, work: () => Found): Found | null {
  try {
    return work();
  } catch (error) {
    if (error instanceof EffortSpent && error.effort === effort) return null;
    throw error;
  }
}
