import { fitNeedLine, pullOfErrors } from '@rillbook/metering/savings/need-line.js';
import { studentQuantile } from '@rillbook/metering/savings/student-quantile.js';
import { expect, it } from 'vitest';
import { certified, norris, studentTable } from './norris.values.js';

const months = norris.map(([x]) => ({ days: 1, neededLitres: x, spread: 1 }));
const line = fitNeedLine(
  months,
  norris.map(([, y]) => y),
);

it('the line is the certified one', () => {
  expect(line.perDay).toBeCloseTo(certified.intercept, 10);
  expect(line.perNeed).toBeCloseTo(certified.slope, 12);
});

it('its errors are the certified ones', () => {
  const squares = norris.reduce((sum, [x, y]) => sum + (y - line.perDay - line.perNeed * x) ** 2, 0);
  const sd = Math.sqrt(squares / (norris.length - 2));
  expect(sd).toBeCloseTo(certified.residualSd, 11);
  expect(sd * Math.sqrt(line.inverse[0])).toBeCloseTo(certified.interceptSd, 11);
  expect(sd * Math.sqrt(line.inverse[2])).toBeCloseTo(certified.slopeSd, 13);
  const ofIntercept = pullOfErrors(line, months, { days: 1, neededLitres: 0 });
  expect(sd * Math.hypot(...ofIntercept)).toBeCloseTo(certified.interceptSd, 11);
});

it.each(studentTable)('Student’s t with %d degrees of freedom', (freedom, ninety, ninetyFive) => {
  expect(studentQuantile(0.9, freedom)).toBeCloseTo(ninety, 2);
  expect(Math.abs(studentQuantile(0.95, freedom) - ninetyFive)).toBeLessThan(0.002);
});
