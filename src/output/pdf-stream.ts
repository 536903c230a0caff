import { type PDFContext, PDFRawStream, type PDFRef } from "pdf-lib";

const [BEFORE, AFTER] = [Buffer.from("\nstream\n"), Buffer.from("\nendstream")];

/**
 * A stream of deflated bytes in a document, with what else its dictionary says. pdf-lib would copy the bytes one by one
 * where the document is joined, which takes a fiftieth of a whole print.
 */
export function addStream(
  context: PDFContext,
  bytes: Uint8Array,
  entries: Readonly<Record<string, number>> = {},
): PDFRef {
  const dictionary = context.obj({ Filter: "FlateDecode", Length: bytes.length, ...entries });
  const stream = PDFRawStream.of(dictionary, bytes);
  stream.copyBytesInto = (buffer, offset) => {
    let at = offset + dictionary.copyBytesInto(buffer, offset);
    for (const piece of [BEFORE, bytes, AFTER]) {
      buffer.set(piece, at);
      at += piece.length;
    }
    return at - offset;
  };
  return context.register(stream);
}
