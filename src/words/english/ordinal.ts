/** 1st, 2nd, 3rd, 4th ... 11th, 12th, 13th ... */
export function ordinal(count: number): string {
  const isTeen = count % 100 > 10 && count % 100 < 14;
  return `${count}${(isTeen ? undefined : ["th", "st", "nd", "rd"][count % 10]) ?? "th"}`;
}
