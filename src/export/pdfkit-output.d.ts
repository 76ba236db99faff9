/** The types of the PDF library leave out the part of it that collects the written bytes. */
declare module 'pdfkit/output' {
  /** All bytes of a document; to be called before its `end`. */
  export const toBytes: (document: PDFKit.PDFDocument) => Promise<Uint8Array>;
}
