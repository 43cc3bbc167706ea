/** One zone's part in a finding. */
export interface ZonePart {
  readonly zoneId: string;
  readonly minutes: number | null;
  readonly neededLitres: number | null;
  readonly programmedLitres: number | null;
  readonly overLitres: number | null;
  readonly underLitres: number | null;
}

/** What a meter's earlier months say of metered over programmed. */
export interface Habit {
  readonly months: number;
  readonly mean: number;
}

/** A reading, and the register that was probably meant. */
export interface LikelyReading {
  readonly readingId: string;
  readonly register: number;
}

/** The evidence that this page can show; what it does not know stays with the finding. */
export interface Evidence {
  readonly zones: readonly ZonePart[];
  readonly habit: Habit | null;
  readonly sdLitres: number | null;
  readonly likely: LikelyReading | null;
}

const fieldOf = (value: unknown, key: string): unknown => (value && typeof value === 'object' ? Reflect.get(value, key) : undefined);
const numberOf = (value: unknown, key: string): number | null => {
  const found = fieldOf(value, key);
  return typeof found === 'number' && Number.isFinite(found) ? found : null;
};

/** Reads a finding's evidence without believing in its shape. */
export function readEvidence(evidence: unknown): Evidence {
  const zones = fieldOf(evidence, 'zones');
  const habit = fieldOf(evidence, 'habit');
  const [months, mean] = [numberOf(habit, 'months'), numberOf(habit, 'mean')];
  return {
    zones: Array.isArray(zones) ? zones.flatMap(zoneOf) : [],
    habit: months !== null && mean !== null ? { months, mean } : null,
    sdLitres: numberOf(evidence, 'sdLitres'),
    likely: likelyOf(evidence),
  };
}

function likelyOf(evidence: unknown): LikelyReading | null {
  const [readingId, register] = [fieldOf(evidence, 'readingId'), numberOf(evidence, 'likelyRegister')];
  return typeof readingId === 'string' && register !== null ? { readingId, register } : null;
}

function zoneOf(zone: unknown): ZonePart[] {
  const zoneId = fieldOf(zone, 'zoneId');
  if (typeof zoneId !== 'string') return [];
  return [
    {
      zoneId,
      minutes: numberOf(zone, 'minutes'),
      neededLitres: numberOf(zone, 'neededLitres'),
      programmedLitres: numberOf(zone, 'programmedLitres'),
      overLitres: numberOf(zone, 'overLitres'),
      underLitres: numberOf(zone, 'underLitres'),
    },
  ];
}
