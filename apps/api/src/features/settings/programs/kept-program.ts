/** A station in a program as its row keeps it: minutes are its total per start at 100 %; what nobody has said is null. */
export interface KeptStation {
  readonly station: number;
  readonly minutes: number;
  readonly cycles: number | null;
  readonly soakMinutes: number | null;
}

/** A program as its row keeps it: days and clock times in the words of the import folder. */
export interface KeptProgram {
  readonly name: string;
  readonly days: string;
  readonly starts: readonly string[];
  readonly adjustPercent: number | null;
  readonly stations: readonly KeptStation[];
}

/** Whether two lists of programs say the same, in the same order. */
export const samePrograms = (a: readonly KeptProgram[], b: readonly KeptProgram[]): boolean =>
  JSON.stringify(a.map(inOrder)) === JSON.stringify(b.map(inOrder));

/** The values in a fixed order: the database gives names back in its own. */
const inOrder = ({ name, days, starts, adjustPercent, stations }: KeptProgram): unknown[] => [
  name,
  days,
  starts,
  adjustPercent,
  stations.map(({ station, minutes, cycles, soakMinutes }) => [station, minutes, cycles, soakMinutes]),
];
