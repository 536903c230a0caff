const NO_BREAK = "\u00a0";

/** A figure that no line break may part: half of `5' 3 1/4"` on the next line reads as another length. */
export const unbroken = (figure: string): string => figure.replaceAll(" ", NO_BREAK);
