/** What phones hold, and what of their words somebody should look at. */
export const phonesPath = '/routes/phones';
