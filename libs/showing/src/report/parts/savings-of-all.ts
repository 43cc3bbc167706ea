import type { Writer } from '../figures.js';
import type { GivenProperty } from '../report-input.js';
import type { ReportLine } from '../report-model.js';
import { moneyOf } from './money-of.js';
import type { Savings } from './savings.js';

/**
 * What was saved on all properties where that can be told. Errors of different properties are each other's strangers, so that the squares of
 * their bands add up.
 */
export function savingOfAll(writer: Writer, savings: readonly Savings[], properties: readonly GivenProperty[]): ReportLine[] {
  const { words, formats } = writer;
  const told = savings.flatMap(({ avoided }, at) => (avoided ? [{ avoided, price: properties[at]?.pricePerLitre ?? null }] : []));
  if (told.length === 0) return [];
  const litres = told.reduce((sum, { avoided }) => sum + avoided.litres, 0);
  const half = Math.hypot(...told.map(({ avoided }) => avoided.halfWidthLitres));
  const isSure = Math.abs(litres) > half;
  const isPriced = told.every(({ price }) => price !== null);
  const { figure, said, asWritten } = writer.volumes(told.reduce((sum, { avoided }) => sum + avoided.expectedLitres, 0));
  const exact = told.reduce((sum, { avoided, price }) => sum + avoided.litres * (price ?? 0), 0);
  const money = moneyOf({ litres, money: exact }, asWritten(litres));
  const isTold = [isPriced, isSure, litres > 0].every(Boolean);
  const values = {
    count: savings.length,
    known: told.length,
    together: told.length > 1 ? words.say('saved.together') : '',
    litres: (litres < 0 && !isSure ? '−' : '') + said(litres),
    half: said(half),
    money: isTold && money !== null ? words.say('saved.money', { money: formats.money(Math.abs(money)) }) : '',
  };
  const word = isSure ? (litres > 0 ? 'saved.ofAll' : 'saved.moreOfAll') : 'saved.unsureOfAll';
  const figures = [
    figure({ id: 'summary.all.saved', label: words.say('figure.saved') }, litres),
    figure({ id: 'summary.all.halfWidth', label: words.say('figure.halfWidth') }, half),
    ...(isPriced ? [writer.money({ id: 'summary.all.savedMoney', label: words.say('figure.savedMoney') }, money)] : []),
  ];
  return [{ id: 'saved.all', says: words.say(word, values), figures, photos: [] }];
}
