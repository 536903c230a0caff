/** Something that only we can have caused; never worded as the user's mistake. The process ends with exit 3. */
export class InternalError extends Error {
  override readonly name = "InternalError";
}
