import { useMemo, useState } from 'react';
import { FormattedMessage } from 'react-intl';
import { Button } from '../../../ui/forms/Button.js';
import { Answer } from './answer/Answer.js';
import type { AskYear } from './ask-year.js';
import { AS_IT_IS, changeOf, type Levels, spansOf } from './sliders/levels.js';
import { Sliders } from './sliders/Sliders.js';
import { WhichZone } from './WhichZone.js';
import { askedZones, type PropertyOfYear, type YearGiven } from './year-given.js';

interface Props {
  readonly property: PropertyOfYear;
  readonly year: YearGiven;
  readonly ask: AskYear;
}

/** Which zone, three sliders, and the answer: as fast as they are moved. */
export function WhatIfQuestion({ property, year, ask }: Props) {
  const asked = useMemo(() => askedZones(property, year), [property, year]);
  const [zoneId, setZoneId] = useState(asked.isWhole ? null : (asked.zones[0]?.zoneId ?? null));
  const [levels, setLevels] = useState<Levels>(AS_IT_IS);
  const isOne = zoneId !== null;
  const now = useMemo(() => ask(zoneId, (zone) => zone), [ask, zoneId]);
  const then = useMemo(() => ask(zoneId, changeOf(levels, isOne)), [ask, zoneId, levels, isOne]);
  const chosen = asked.zones.filter((zone) => (isOne ? zone.zoneId === zoneId : zone.isCounted));
  return (
    <div className="what-if">
      <div className="what-if-asked">
        <WhichZone
          asked={asked}
          zoneId={zoneId}
          onChange={(id) => {
            setZoneId(id);
            setLevels(AS_IT_IS);
          }}
        />
        <Sliders
          spans={spansOf(chosen, isOne)}
          levels={levels}
          isOne={isOne}
          areaM2={chosen.reduce((sum, { areaM2 }) => sum + areaM2, 0)}
          onChange={(change) => setLevels({ ...levels, ...change })}
        />
        <div className="form-end">
          <Button kind="plain" onClick={() => setLevels(AS_IT_IS)}>
            <FormattedMessage id="whatIf.back" />
          </Button>
        </div>
      </div>
      <Answer
        name={isOne ? (chosen[0]?.name ?? null) : null}
        months={year.months}
        levels={levels}
        now={now}
        then={then}
        pricePerLitre={property.account?.pricePerLitre ?? null}
        assumed={[...new Set(chosen.flatMap(({ assumed }) => assumed))]}
      />
    </div>
  );
}
