/** Between the two languages of one phrase; wrapping breaks a line here first. */
export const BETWEEN_LANGUAGES = " / ";

type Say = (...figures: readonly unknown[]) => unknown;

const isSay = (phrase: unknown): phrase is Say => typeof phrase === "function";

function join(first: unknown, second: unknown): unknown {
  if (typeof first === "string" && typeof second === "string") {
    return first === second ? first : `${first}${BETWEEN_LANGUAGES}${second}`;
  }
  if (isSay(first) && isSay(second)) {
    return (...figures: readonly unknown[]) => join(first(...figures), second(...figures));
  }
  if (Array.isArray(first) && Array.isArray(second)) {
    return first.map((phrase, index) => join(phrase, second[index]));
  }
  return joinRecords(first as Record<string, unknown>, second as Record<string, unknown>);
}

function joinRecords(
  first: Record<string, unknown>,
  second: Record<string, unknown>,
): Record<string, unknown> {
  return Object.fromEntries(Object.entries(first).map(([key, phrase]) => [key, join(phrase, second[key])]));
}

/** Two catalogues of one shape as one whose phrases say both; a phrase that is the same in both is said once. */
export function bilingual<Catalogue extends object>(first: Catalogue, second: Catalogue): Catalogue {
  return join(first, second) as Catalogue;
}
