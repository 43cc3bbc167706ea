const FITS = new Set(['ok', 'first', 'rollover']);

/** Whether a reading was judged to be what the register can have shown. */
export const isFitting = ({ judgement }: { readonly judgement: string }): boolean => FITS.has(judgement);
