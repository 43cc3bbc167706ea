import { dismissReasons, type KeptFinding, type TimedEpisode } from '@rillbook/metering/detection/life/kept-finding.js';
import { followFindings } from '@rillbook/metering/detection/life/follow-findings.js';
import { isSamePlace, matchFindings } from '@rillbook/metering/detection/life/match-findings.js';
import { silencedBy } from '@rillbook/metering/detection/life/silenced-by.js';
import { describe, expect, it } from 'vitest';
import { anEpisode } from '../episodes/an-episode.js';

const DAY = 86_400_000;
const NOW = Date.UTC(2025, 6, 1);

const episode = (given: Partial<TimedEpisode> = {}): TimedEpisode => {
  const { openedLocalDay: _, clearedLocalDay: __, ...candidate } = anEpisode();
  return { ...candidate, openedAt: NOW, clearedAt: null, litres: 10_000, ...given };
};
const finding = (given: Partial<KeptFinding> = {}): KeptFinding => ({
  id: 'f',
  kind: 'unexplained use',
  causeKey: 'another key',
  causeFamily: 'excess meter:m',
  meterId: 'm',
  controllerId: null,
  zoneId: null,
  state: 'dismissed',
  openedAt: NOW - 90 * DAY,
  clearedAt: NOW - 80 * DAY,
  litres: 10_000,
  cameBack: 0,
  decidedAt: NOW - 85 * DAY,
  dismissedReason: 'client wants it',
  isPast: false,
  ...given,
});

describe('a dismissal', () => {
  // Assumptions of this product: half more than was dismissed is something else, what was not useful is asked again at twice it.
  it.each([
    ['hand watering known', 15_000],
    ['meter known to be off', 15_000],
    ['client wants it', 15_000],
    ['not worth the trip', 15_000],
    ['not useful', 20_000],
    ['looked after', -1],
    ['numbers are wrong', -1],
    ['other', -1],
  ] as const)('as %s silences up to %i L of the same', (dismissedReason, most) => {
    const one = finding({ dismissedReason });
    expect(silencedBy(episode({ litres: Math.max(0, most) }), [one])).toBe(most < 0 ? null : one);
    expect(silencedBy(episode({ litres: Math.max(0, most) + 1 }), [one])).toBeNull();
  });

  it('has been said of each reason', () => {
    expect(dismissReasons).toHaveLength(8);
    expect(silencedBy(episode(), [finding({ dismissedReason: null })])).toBeNull();
  });

  it('is believed for 400 days from the day on which it was decided', () => {
    expect(silencedBy(episode(), [finding({ decidedAt: NOW - 400 * DAY + 1 })])).not.toBeNull();
    expect(silencedBy(episode(), [finding({ decidedAt: NOW - 400 * DAY })])).toBeNull();
    expect(silencedBy(episode(), [finding({ decidedAt: null })])).toBeNull();
    for (const state of ['open', 'in work', 'resolved'] as const) expect(silencedBy(episode(), [finding({ state })])).toBeNull();
  });

  it('covers its own kind and place, whatever its water where that is not known; the newest is named', () => {
    expect(silencedBy(episode({ kind: 'overwatered' }), [finding()])).toBeNull();
    expect(silencedBy(episode({ meterId: 'n' }), [finding()])).toBeNull();
    expect(silencedBy(episode({ litres: null }), [finding()])).not.toBeNull();
    expect(silencedBy(episode({ litres: 1e9 }), [finding({ litres: null })])).not.toBeNull();
    const newest = finding({ id: 'newest', decidedAt: NOW - 10 * DAY });
    expect(silencedBy(episode(), [finding(), newest, finding()])).toBe(newest);
  });
});

describe('the same place', () => {
  it.each<[boolean, Partial<KeptFinding>, Partial<TimedEpisode>]>([
    [true, {}, {}],
    [false, { meterId: 'n' }, {}],
    [false, { controllerId: 'c' }, {}],
    [true, { zoneId: 'z1' }, { zoneIds: ['z1'] }],
    [false, { zoneId: 'z1' }, { zoneIds: ['z2'] }],
    [true, {}, { zoneIds: ['z1', 'z2'] }],
    [true, { causeFamily: 'zone flow zone:z1' }, { causeFamily: 'zone flow zone:z1', zoneIds: ['z1', 'z2'] }],
    [false, { causeFamily: 'zone flow zone:z2' }, { causeFamily: 'zone flow zone:z1', zoneIds: ['z1', 'z2'] }],
    [false, {}, { causeFamily: 'zone flow zone:z1', zoneIds: ['z1', 'z2'] }],
  ])('%s: %j and %j', (same, ofFinding, ofEpisode) => {
    expect(isSamePlace(finding(ofFinding), episode(ofEpisode))).toBe(same);
  });
});

describe('which finding an episode is', () => {
  const open = (given: Partial<KeptFinding> = {}) =>
    finding({ state: 'open', openedAt: NOW - 10 * DAY, clearedAt: null, decidedAt: null, dismissedReason: null, ...given });

  it('is the one of its key before one of its place, each taken once', () => {
    const [byKey, byPlace] = [open({ id: 'key', causeKey: episode().causeKey, openedAt: NOW - 900 * DAY }), open({ id: 'place' })];
    expect(matchFindings([byPlace, byKey], [episode()])).toEqual([byKey]);
    expect(matchFindings([byPlace, byKey], [episode({ causeKey: 'moved' }), episode()])).toEqual([byPlace, byKey]);
    expect(matchFindings([byPlace], [episode({ causeKey: 'moved' }), episode({ causeKey: 'moved again' })])).toEqual([byPlace, null]);
  });

  it('is one that is told within 35 days of it', () => {
    const ended = (days: number) => finding({ state: 'resolved', openedAt: NOW - 90 * DAY, clearedAt: NOW - days * DAY });
    expect(matchFindings([ended(35)], [episode()])).toEqual([ended(35)]);
    expect(matchFindings([ended(36)], [episode()])).toEqual([null]);
    const later = open({ openedAt: NOW + 40 * DAY });
    expect(matchFindings([later], [episode({ clearedAt: NOW + 5 * DAY })])).toEqual([later]);
    expect(matchFindings([later], [episode({ clearedAt: NOW + 4 * DAY })])).toEqual([null]);
  });

  it('takes another kind of the same cause, while both are still told', () => {
    const steady = episode({ kind: 'steady flow' });
    expect(matchFindings([open()], [steady])).toEqual([open()]);
    expect(matchFindings([open({ state: 'in work' })], [steady])).toEqual([open({ state: 'in work' })]);
    expect(matchFindings([open({ state: 'resolved' })], [steady])).toEqual([null]);
    expect(matchFindings([open({ clearedAt: NOW - DAY })], [steady])).toEqual([null]);
    expect(matchFindings([open()], [{ ...steady, clearedAt: NOW + DAY }])).toEqual([null]);
    expect(matchFindings([open({ meterId: null })], [{ ...steady, meterId: null }])).toEqual([null]);
    expect(matchFindings([open()], [episode({ kind: 'not delivering' })])).toEqual([null]);
    const doubted = open({ kind: 'doubtful reading' });
    expect(matchFindings([doubted], [episode({ kind: 'not delivering' })])).toEqual([doubted]);
  });

  it('prefers what is open, then what was opened last', () => {
    const [old, last] = [open({ id: 'old', openedAt: NOW - 20 * DAY }), open({ id: 'last', openedAt: NOW - 2 * DAY })];
    const resolved = open({ id: 'resolved', state: 'resolved', openedAt: NOW - DAY });
    expect(matchFindings([resolved, old, last], [episode()])).toEqual([last]);
    expect(matchFindings([resolved, old], [episode()])).toEqual([old]);
    expect(matchFindings([open({ id: 'b' }), open({ id: 'a' })], [episode()])).toEqual([open({ id: 'a' })]);
  });
});

it('what is opened anew counts how often it came back by the last of its kind at its place', () => {
  const ended = (id: string, days: number, cameBack: number, more: Partial<KeptFinding> = {}) =>
    finding({ id, state: 'resolved', openedAt: NOW - days * DAY, clearedAt: NOW - (days - 5) * DAY, decidedAt: null, cameBack, ...more });
  const kept = [ended('first', 300, 0), ended('last', 100, 3), ended('middle', 200, 1), ended('elsewhere', 60, 9, { meterId: 'n' })];
  const opened = followFindings(kept, [episode()]).filter(({ deed }) => deed === 'open');
  expect(opened).toMatchObject([{ cameBack: 4, silencedBy: null }]);
  expect(followFindings([], [episode()])).toMatchObject([{ deed: 'open', cameBack: 0 }]);
});
