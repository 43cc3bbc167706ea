/** Puts values into the places of a sentence, '{name}'; a place without a value stays as it is, so that a fault is seen. */
export const fill = (sentence: string, values: Readonly<Record<string, string | number>>): string =>
  sentence.replace(/\{([a-zA-Z]+)\}/g, (place, name: string) => (Object.hasOwn(values, name) ? String(values[name]) : place));
