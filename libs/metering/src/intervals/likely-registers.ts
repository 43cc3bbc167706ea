/** Gallons in a cubic foot and in a hundred, and a dial read one digit off: the factors by which registers are mixed up. */
const MIXED_UP_FACTORS = [7.48052, 10, 748.052] as const;

/** A decimal point that was lost: two or three places; one place is a dial read one digit off. */
const LOST_POINT_FACTORS = [100, 1000] as const;

const DIGITS = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9'] as const;

/** A register that was read, the one before it, and the number of digits of the meter. */
export interface ReadRegister {
  readonly previousRegister: number;
  readonly nextRegister: number;
  readonly digits: number | null;
}

/** A register that may have been meant, and what would have gone wrong. */
export interface LikelyRegister {
  readonly register: number;
  readonly judgement: 'digits swapped' | 'unit mixed up' | 'digit mistyped';
  readonly factor: number | null;
}

/**
 * Registers that may have been meant by a reading: two neighbouring digits swapped, the unit mixed up (times or divided by 7.48, 10, 748), a
 * decimal point lost (divided by 100 or 1,000), or one digit mistyped.
 *
 * The factor of a unit is tried on the register itself and on what it has moved since the last reading.
 *
 * @param reading - The last register and the one that was read, and the number of digits of the meter. [any]
 * @returns All candidates that differ from the reading, in no order of likelihood. [any]
 */
export function likelyRegisters(reading: ReadRegister): readonly LikelyRegister[] {
  const { previousRegister, nextRegister, digits } = reading;
  const swapped = swaps(nextRegister, digits).map((register) => ({ register, judgement: 'digits swapped' as const, factor: null }));
  const mixed = MIXED_UP_FACTORS.flatMap((factor) =>
    [nextRegister / factor, nextRegister * factor, ...moved(previousRegister, nextRegister, factor)].map((register) => ({
      register,
      judgement: 'unit mixed up' as const,
      factor,
    })),
  );
  const pointless = LOST_POINT_FACTORS.map((factor) => ({ register: nextRegister / factor, judgement: 'unit mixed up' as const, factor }));
  const typed = mistypes(nextRegister, digits).map((register) => ({ register, judgement: 'digit mistyped' as const, factor: null }));
  return [...swapped, ...mixed, ...pointless, ...typed].filter(({ register }) => register !== nextRegister);
}

function moved(previous: number, next: number, factor: number): readonly number[] {
  return next > previous ? [previous + (next - previous) / factor, previous + (next - previous) * factor] : [];
}

function swaps(register: number, digits: number | null): readonly number[] {
  const { whole, numberOf } = written(register, digits);
  return Array.from({ length: Math.max(0, whole.length - 1) }, (_, at) =>
    numberOf(`${whole.slice(0, at)}${whole[at + 1]}${whole[at]}${whole.slice(at + 2)}`),
  );
}

function mistypes(register: number, digits: number | null): readonly number[] {
  const { whole, numberOf } = written(register, digits);
  return Array.from(whole).flatMap((_, at) => DIGITS.map((digit) => numberOf(`${whole.slice(0, at)}${digit}${whole.slice(at + 1)}`)));
}

function written(register: number, digits: number | null) {
  const [whole = '', fraction] = String(register).split('.');
  return {
    whole: whole.padStart(digits ?? 0, '0'),
    numberOf: (text: string) => Number(fraction === undefined ? text : `${text}.${fraction}`),
  };
}
