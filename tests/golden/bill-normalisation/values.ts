/** A bill split over calendar months by day count: first day, first day not billed, volume [CCF], printed shares [CCF]. */
export const bill = { from: '2026-05-18', until: '2026-06-18', ccf: 62, perDay: 2, may: 28, june: 34 } as const;
