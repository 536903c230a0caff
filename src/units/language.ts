/** Languages of the catalogue, by their ISO 639-1 codes. */
export type Language = "en" | "es";
