/** A sentence begins with a capital, whatever word or number of the language stands first. */
export const sentenceCase = (text: string): string => text.charAt(0).toLocaleUpperCase() + text.slice(1);
