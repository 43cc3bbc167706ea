/** Published checks of soil and scheduling that are not computed here, with the reason. */
export const leftOut: Readonly<Record<string, string>> = {
  'ss-064':
    'UC Guide to Healthy Lawns, zone 2: minutes a week are printed without the evapotranspiration and turf coefficients behind them, so they cannot be computed from what is given',
};
