import type { DeepPartial } from 'typeorm';

/**
 * The columns that an input fills: what was left out or is blank becomes its default, or null. Without this, a field left out of a
 * change would keep what stood there.
 */
export function filled<Row extends object>(
  input: object,
  names: readonly (keyof Row & string)[],
  defaults: Partial<Row> = {},
): DeepPartial<Row> {
  const given = input as Record<string, unknown>;
  const columns = names.map((name) => {
    const value = typeof given[name] === 'string' ? given[name].trim() || null : given[name];
    return [name, value ?? defaults[name] ?? null];
  });
  return Object.fromEntries(columns) as DeepPartial<Row>;
}
