import type { ControllerState, SettingsRecord } from '@rillbook/irrigation/settings/settings-fact.js';
import { programFromKept } from '../../../settings/program-from-kept.service.js';
import { settingsLines } from '../../rows/settings-facts.js';
import type { WritableRow } from '../../rows/write-rows.js';
import type { Answer } from './question.js';

type KeptProgram = Parameters<typeof programFromKept>[0];
type Line = Readonly<Record<string, string>>;

interface Fact {
  readonly typed: { readonly lines?: readonly Line[] };
  readonly timeZone: string;
  readonly property: string;
  readonly controller: string;
  readonly effectiveAt: Date;
  readonly record: SettingsRecord;
  readonly state: ControllerState;
  readonly programs: readonly KeptProgram[];
}

/** The lines of one settings fact. */
export function settingsOf(answer: Answer): readonly WritableRow<'settings'>[] {
  const { typed, timeZone, property, controller, effectiveAt, record, state, programs } = answer as unknown as Fact;
  const fact = {
    property,
    controller,
    effectiveAt: effectiveAt.getTime(),
    record,
    state,
    programs: programs.map(programFromKept),
    typed: { lines: typed.lines ?? [] },
  };
  return settingsLines(fact, timeZone);
}
