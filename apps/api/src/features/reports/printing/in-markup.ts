const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what markup may not hold
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;

const LONE = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Words as text of HTML or XML: nothing in them can become markup. */
export const inMarkup = (words: string): string =>
  words
    .replace(LONE, '')
    .replace(FORBIDDEN, '')
    .replace(/[&<>"']/g, (sign: string) => ENTITIES[sign] ?? sign);

/** Words with their own line breaks: a note's paragraphs stay apart in every reader of mail, and an address's lines at the head of a page. */
export const inLines = (words: string): string => inMarkup(words).replace(/\r?\n/g, '<br>');
