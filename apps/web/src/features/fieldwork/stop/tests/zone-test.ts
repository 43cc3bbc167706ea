import type { Operation } from '../../../../offline/operation.js';
import type { VisitHere } from '../use-visit.js';
import type { StepProps } from '../step-props.js';

/** A zone as far as its tests ask. */
export interface TestedZone {
  readonly id: string;
  readonly name: string;
  readonly station?: number | null;
  readonly meterId?: string | null;
  readonly flowLPerMin?: number | null;
  readonly flowSource?: string | null;
  readonly duLq?: number | null;
}

/** A meter as far as a flow test asks. */
export interface TestMeter {
  readonly id: string;
  readonly name: string;
  readonly unit: string;
  readonly multiplier: number;
  readonly digits?: number | null;
  readonly resolution?: number | null;
}

/** A test that the server has. */
export interface GivenTest {
  readonly id: string;
  readonly zoneId: string;
  readonly kind: string;
  readonly testedAt: string;
  readonly flowLPerMin?: number | null;
  readonly flowSdLPerMin?: number | null;
  readonly duLq?: number | null;
  readonly rateMmPerH?: number | null;
  readonly catchesMl: readonly number[];
  readonly onRecord: boolean;
}

/** What a test of a zone at a stop is called in the outbox: said again it is another word of the same. */
export const subjectOf = (kind: 'flow' | 'catch', stopId: string, zoneId: string): string => `${kind}-test ${stopId} ${zoneId}`;

/** What each kind of test is given. */
export interface TestProps {
  readonly zone: TestedZone & { readonly label: string };
  readonly given: readonly GivenTest[];
  readonly stopId: string;
  readonly frame: StepProps['frame'];
  readonly now: () => Date;
  readonly visit: VisitHere;
  /** The head around what a kind shows; until a test is begun also what is on record and the choice between the kinds. */
  readonly around: (content: React.ReactNode, isBegun: boolean) => React.ReactNode;
}

/** What was tested here and the server has not told of yet; once it has, its own list says what was tested last, by whomever. */
export function untoldTest(operations: readonly Operation[], subject: string, given: readonly GivenTest[]): Operation | null {
  const last = operations.findLast((one) => one.subject === subject && one.state !== 'refused');
  return last && !given.some(({ id }) => id === last.key) ? last : null;
}
