import type { FragmentType } from '@apollo/client';
import type {
  ArriveStopFragment,
  DoneStopFragment,
  MeterStopFragment,
  SettingsStopFragment,
  TestsStopFragment,
  ZonesStopFragment,
} from '../../../graphql/__generated__/graphql.js';
import type { PhoneStep } from '../../../ui/phone/PhoneFrame.js';
import type { VisitHere } from './use-visit.js';

/** What each step of a stop is given. */
export interface StepProps {
  readonly stop: FragmentType<ArriveStopFragment> &
    FragmentType<MeterStopFragment> &
    FragmentType<SettingsStopFragment> &
    FragmentType<ZonesStopFragment> &
    FragmentType<TestsStopFragment> &
    FragmentType<DoneStopFragment>;
  /** The meter, controller or zone that the address names. */
  readonly thing: string | null;
  readonly frame: {
    readonly back: { readonly to: string; readonly words: string };
    readonly place: string;
    readonly stepsName: string;
    readonly steps: readonly PhoneStep[];
  };
  readonly now: () => Date;
  readonly visit: VisitHere;
}
