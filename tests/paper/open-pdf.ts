import { getDocument, type PDFDocumentProxy, VerbosityLevel } from "pdfjs-dist/legacy/build/pdf.mjs";

/** A document as pdf.js reads it; the bytes are copied, since pdf.js keeps what it is given. */
export function openPdf(pdf: Uint8Array): Promise<PDFDocumentProxy> {
  return getDocument({
    data: Uint8Array.from(pdf),
    verbosity: VerbosityLevel.ERRORS,
    useSystemFonts: false,
    disableFontFace: true,
  }).promise;
}
