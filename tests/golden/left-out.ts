/** Published checks of the collection that are not computed here, with the reason. */
export const leftOut: Readonly<Record<string, string>> = {
  'od-013': 'Files are read here; the web service of the network, whose defaults these are, is not asked.',
};
