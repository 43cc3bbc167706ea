/** What a machine can find wrong with a PDF by PDF/UA-1; nothing where it finds no fault. */
export function pdfUaFaults(bytes: Uint8Array): readonly string[];
