/** Gallons in a cubic foot and in a hundred, and a dial read one digit off: the factors by which registers are mixed up. */
const MIXED_UP_FACTORS = [7.48052, 10, 748.052] as const;

/** A register that was read, the one before it, and the number of digits of the meter. */
export interface ReadRegister {
  readonly previousRegister: number;
  readonly nextRegister: number;
  readonly digits: number | null;
}

/** A register that may have been meant, and what would have gone wrong. */
export interface LikelyRegister {
  readonly register: number;
  readonly judgement: 'digits swapped' | 'unit mixed up';
  readonly factor: number | null;
}

/**
 * Registers that may have been meant by a reading: two neighbouring digits swapped, or the unit mixed up (times or divided by 7.48, 10, 748).
 *
 * The factor is tried on the register itself and on what it has moved since the last reading.
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
  return [...swapped, ...mixed].filter(({ register }) => register !== nextRegister);
}

function moved(previous: number, next: number, factor: number): readonly number[] {
  return next > previous ? [previous + (next - previous) / factor, previous + (next - previous) * factor] : [];
}

function swaps(register: number, digits: number | null): readonly number[] {
  const [whole = '', fraction] = String(register).split('.');
  const padded = whole.padStart(digits ?? 0, '0');
  return Array.from({ length: Math.max(0, padded.length - 1) }, (_, at) => {
    const text = `${padded.slice(0, at)}${padded[at + 1]}${padded[at]}${padded.slice(at + 2)}`;
    return Number(fraction === undefined ? text : `${text}.${fraction}`);
  });
}
