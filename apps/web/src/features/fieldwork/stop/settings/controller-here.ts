import type { NamedStation } from '../../../../programs/named-station.js';
import type { GivenSettings } from '../../../../programs/settings-fact.js';
import type { LeastToEnter } from '../enter/use-least-to-enter.js';
import type { SettingsDeed } from './use-settings.js';

/** A controller at a stop: what is known of it, and what can be done. */
export interface ControllerHere {
  readonly planned: GivenSettings | null;
  readonly present: (GivenSettings & { readonly effectiveAt: string }) | null;
  readonly stations: readonly NamedStation[];
  readonly next: { readonly to: string; readonly words: string | null };
  /** whether the least to enter can be reckoned from what is found */
  readonly canReckon: boolean;
  readonly deed: SettingsDeed;
  /** null where nobody has found it different here */
  readonly least: LeastToEnter | null;
  readonly onEdit: (what: 'found' | 'left') => void;
  readonly onSetAsPlanned: () => void;
}
