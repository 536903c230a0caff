import * as z from "zod";

/**
 * A scalar as it was written, which every figure, word and text of the file is read from. One for all: making schemas
 * takes longer than reading a room by them, so whatever is alike is made once.
 */
export const written = z.string();
