import { LEAST_CANS, LEAST_CANS_TO_TELL, waterCaught } from '@rillbook/irrigation/hardware/catch-test/water-caught.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import type { Told } from './told.js';

/** What each can caught, and how wide the cans are where somebody has measured. */
export interface CatchGiven {
  readonly kind: 'catch';
  readonly minutes: number | null;
  readonly catchesMl: readonly number[];
  readonly mouthM2: number | null;
}

const ML_PER_LITRE = 1000;
/** More cans than anybody sets. */
const MOST_CANS = 500;

/** What a test with cans told; too few cans are kept and go on no record. */
export function caughtOf({ catchesMl, minutes, mouthM2 }: CatchGiven): Told {
  if (catchesMl.length > MOST_CANS)
    throw platformProblems.valueRefused({ field: 'catchesMl', found: catchesMl.length, expected: `at most ${MOST_CANS} cans` });
  try {
    const { uniformity, rate } = waterCaught({
      catches: catchesMl.map((each) => (each / ML_PER_LITRE) as Quantity<'L'>),
      minutes: minutes as Quantity<'min'> | null,
      mouthArea: mouthM2 as Quantity<'m2'> | null,
    });
    const tells = catchesMl.length >= LEAST_CANS_TO_TELL && uniformity > 0;
    return {
      columns: { catchesMl: [...catchesMl], mouthM2, duLq: uniformity, rateMmPerH: rate },
      measured: tells ? { duLq: uniformity, ...(rate !== null && { precipMmPerH: rate }) } : null,
    };
  } catch (problem) {
    if (!(problem instanceof DomainError)) throw problem;
    throw problem.code === 'CATCH_TEST_OUT_OF_DOMAIN'
      ? platformProblems.valueRefused({ field: 'minutes', found: minutes, expected: 'minutes and a mouth above zero' })
      : platformProblems.valueRefused({
          field: 'catchesMl',
          found: catchesMl.length,
          expected: `${LEAST_CANS} cans or more, none below zero, at least one with water`,
        });
  }
}
