import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/**
 * The letters of a PDF in the order in which they are read, without the white space between them: where a line ends is the page's business.
 *
 * @param {Uint8Array} pdf
 * @returns {Promise<string>}
 */
export async function pdfText(pdf) {
  const task = getDocument({ data: new Uint8Array(pdf), isEvalSupported: false, disableFontFace: true, verbosity: 0 });
  const document = await task.promise;
  const pages = [];
  for (let at = 1; at <= document.numPages; at += 1) {
    const { items } = await (await document.getPage(at)).getTextContent();
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join(''));
  }
  await task.destroy();
  return withoutSpace(pages.join(''));
}

/** @param {string} words */
export const withoutSpace = (words) => words.normalize('NFKC').replace(/\s+/gu, '');

/** The pages of a PDF: their width, and each piece of text with where it ends. [pt] */
export async function pdfPages(bytes) {
  const document = await getDocument({ data: new Uint8Array(bytes), isEvalSupported: false }).promise;
  const pages = [];
  for (let at = 1; at <= document.numPages; at += 1) {
    const page = await document.getPage(at);
    const { items } = await page.getTextContent();
    const lines = items.map(({ str, transform, width }) => ({ text: str, right: transform[4] + width }));
    pages.push({ width: page.getViewport({ scale: 1 }).width, lines });
  }
  await document.destroy();
  return pages;
}
