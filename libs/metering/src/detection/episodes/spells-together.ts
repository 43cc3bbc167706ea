import type { Episode } from '../evidence/episode.js';

/** Rain that comes again within this and is not paused for is the same habit: one finding, not one for each rain. Common practice. [d] */
const SAME_HABIT_DAYS = 30;

/**
 * Spells of the same kind that follow each other soon, as one episode each: water and money are those of the costliest spell.
 *
 * @param spells - Episodes of one meter and kind, oldest first. [code]
 * @returns Episodes that lie further apart; `says` counts their spells. [code]
 */
export function spellsTogether(spells: readonly Episode[]): readonly Episode[] {
  const together: Episode[] = [];
  for (const spell of spells) {
    const last = together.at(-1);
    const isSame = last && (last.clearedLocalDay === null || spell.openedLocalDay <= last.clearedLocalDay + SAME_HABIT_DAYS);
    if (isSame) together[together.length - 1] = added(last, spell);
    else together.push(counted(spell, 1));
  }
  return together;
}

function added(last: Episode, spell: Episode): Episode {
  const costliest = (spell.litres ?? 0) > (last.litres ?? 0) ? spell : last;
  return counted(
    {
      ...costliest,
      causeKey: last.causeKey,
      causeFamily: last.causeFamily,
      zoneIds: [...new Set([...last.zoneIds, ...spell.zoneIds])].sort(),
      fromDate: last.fromDate,
      untilDate: spell.untilDate,
      openedLocalDay: last.openedLocalDay,
      clearedLocalDay: spell.clearedLocalDay,
    },
    Number(last.says.details['spells'] ?? 1) + 1,
  );
}

function counted(spell: Episode, spells: number): Episode {
  return { ...spell, says: { ...spell.says, details: { ...spell.says.details, spells } } };
}
