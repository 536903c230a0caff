/** What the process ends with; of several files the worst. */
export const EXIT = {
  /** Clean, or warnings and notes only. */
  clean: 0,
  /** Errors among the findings. */
  errors: 1,
  /** Input that cannot be used, or wrong usage. */
  unusable: 2,
  /** Our own failure. */
  ours: 3,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

const WORST_FIRST: readonly ExitCode[] = [EXIT.ours, EXIT.unusable, EXIT.errors];

export function worst(codes: readonly ExitCode[]): ExitCode {
  return WORST_FIRST.find((code) => codes.includes(code)) ?? EXIT.clean;
}
