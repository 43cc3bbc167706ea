export function pdfText(pdf: Uint8Array): Promise<string>;
export function withoutSpace(words: string): string;

/** The pages of a PDF: their width, and each piece of text with where it ends. [pt] */
export function pdfPages(
  pdf: Uint8Array,
): Promise<readonly { readonly width: number; readonly lines: readonly { readonly text: string; readonly right: number }[] }[]>;
