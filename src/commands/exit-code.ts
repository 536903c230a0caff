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

export function worst(codes: readonly ExitCode[]): ExitCode {
  return codes.reduce<ExitCode>((a, b) => (b > a ? b : a), EXIT.clean);
}
