import { settingsDifferences } from '@rillbook/irrigation/settings/settings-differences.js';
import { factOf, type GivenProgram, type GivenSettings, type GivenStation } from '../../../programs/settings-fact.js';

/** One line of the table: what is planned beside what is on the controller. */
export interface PlanRow {
  readonly what: 'days' | 'station' | 'starts' | 'percent';
  readonly station: number | null;
  readonly planned: GivenProgram | null;
  readonly present: GivenProgram | null;
  readonly differs: boolean;
}

export interface PlanProgram {
  readonly name: string;
  readonly rows: readonly PlanRow[];
  readonly differ: number;
}

type Difference = ReturnType<typeof settingsDifferences>[number];

/** The station of a program, all its lines together. */
export function stationIn(program: GivenProgram | null, station: number): GivenStation | null {
  const lines = (program?.stations ?? []).filter((line) => line.station === station && line.minutes > 0);
  const first = lines[0];
  return first ? { ...first, minutes: lines.reduce((sum, { minutes }) => sum + minutes, 0) } : null;
}

/** Each program's lines, planned beside present; without a plan, or without present settings, nothing differs. */
export function planPrograms(planned: GivenSettings | null, present: GivenSettings | null): readonly PlanProgram[] {
  const differences = planned && present ? settingsDifferences(factOf(planned), factOf(present)) : [];
  const names = [...new Set([...(planned?.programs ?? []), ...(present?.programs ?? [])].map(({ name }) => name))];
  return names.map((name) => {
    const rows = rowsOf(
      named(planned, name),
      named(present, name),
      differences.filter(({ program }) => program === name),
    );
    return { name, rows, differ: rows.filter(({ differs }) => differs).length };
  });
}

/** Whether the controller stands in another state than planned: then the state is all that differs. */
export const stateDiffers = (planned: GivenSettings | null, present: GivenSettings | null): boolean =>
  planned !== null && present !== null && planned.state !== present.state;

/** How much is not as planned. */
export const countOfDifferences = (planned: GivenSettings | null, present: GivenSettings | null): number =>
  planned && present ? settingsDifferences(factOf(planned), factOf(present)).length : 0;

const named = (settings: GivenSettings | null, name: string): GivenProgram | null =>
  settings?.programs.find((program) => program.name === name) ?? null;

function rowsOf(planned: GivenProgram | null, present: GivenProgram | null, differences: readonly Difference[]): PlanRow[] {
  const isWhole = differences.some(({ what }) => what === 'program-missing' || what === 'program-extra');
  const stations = [...new Set([...(planned?.stations ?? []), ...(present?.stations ?? [])].map(({ station }) => station))].sort(
    (a, b) => a - b,
  );
  const row = (what: PlanRow['what'], station: number | null = null): PlanRow => ({
    what,
    station,
    planned,
    present,
    differs: isWhole || differences.some((difference) => (station === null ? difference.what === what : difference.station === station)),
  });
  return [row('days'), ...stations.map((station) => row('station', station)), row('starts'), row('percent')];
}
