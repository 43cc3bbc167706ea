export function pdfText(pdf: Uint8Array): Promise<string>;
export function withoutSpace(words: string): string;
