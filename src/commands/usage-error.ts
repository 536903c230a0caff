/** Something typed on the command line that cannot be used: its message is for the person, the process ends with exit 2. */
export class UsageError extends Error {
  override readonly name = "UsageError";
}
