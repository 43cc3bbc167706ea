import { Resolver } from '@nestjs/graphql';
import { keptThingResolver } from '../../../platform/kept-things/kept-thing.resolver.js';
import { filled } from '../../../platform/records/filled.js';
import { judgeZone } from './judge-zone.js';
import { ZoneRow } from './zone.entity.js';
import { ZoneInput } from './zone.input.js';
import { showZone, Zone } from './zone.type.js';

const Kept = keptThingResolver({
  name: 'Zone',
  row: ZoneRow,
  type: Zone,
  input: ZoneInput,
  show: showZone,
  keep: (input) =>
    filled<ZoneRow>(
      input,
      [
        'propertyId',
        'name',
        'controllerId',
        'station',
        'meterId',
        'unmetered',
        'areaM2',
        'plants',
        'waterNeed',
        'plantFactor',
        'method',
        'precipMmPerH',
        'flowLPerMin',
        'flowSource',
        'handLPerWeek',
        'duLq',
        'soil',
        'slopePercent',
        'fillMinutes',
        'sun',
        'density',
        'rootDepthMm',
        'mulchMm',
        'leachingFraction',
        'establishedOn',
      ],
      { unmetered: false },
    ),
  judge: judgeZone,
});

/** Zones: created, changed, retired. */
@Resolver(() => Zone)
export class ZoneResolver extends Kept {}
