/** Between the values of a field that holds several. */
const BETWEEN = '\n';

export const partsOf = (text: string): readonly string[] => (text === '' ? [] : text.split(BETWEEN));
export const joined = (parts: readonly string[]): string => parts.join(BETWEEN);
