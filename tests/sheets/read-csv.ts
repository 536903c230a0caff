/** Cells of a CSV by RFC 4180, read by a machine of a few lines that shares nothing with the library that wrote it. */
export function cellsOf(csv: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  for (const [, quoted, plain, end] of csv.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|$)/gu)) {
    if (quoted === undefined && plain === "" && end === "" && row.length === 0) break;
    row.push(quoted?.replaceAll('""', '"') ?? plain ?? "");
    if (end === ",") continue;
    rows.push(row);
    row = [];
  }
  return rows;
}
