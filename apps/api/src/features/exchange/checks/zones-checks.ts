import { flowFromPrecipitationRate } from '@rillbook/irrigation/hardware/precipitation/precipitation-rate.js';
import { flowAgreesWithRate } from '@rillbook/irrigation/hardware/precipitation/flow-agreement.js';
import { squareMetres } from '@rillbook/units/area.js';
import { millimetresPerHour } from '@rillbook/units/depth-rate.js';
import { gallonsPerMinuteFromLitresPerMinute, litresPerMinute } from '@rillbook/units/flow.js';
import type { DraftRow } from '../drafts/draft-row.js';
import type { FileCheck } from './file-check.js';
import { KeyTable, keyOf } from '../drafts/key-table.js';
import type { Names } from '../drafts/names.js';
import { bothOrNeither, nameOrReject } from './portfolio-checks.js';
import { referController, referMeter, referProperty } from '../drafts/refer.js';
import { keyPart, sameKeyCheck } from '../drafts/same-key.js';

export function zonesCheck(names: Names): FileCheck {
  const sameKey = sameKeyCheck('property', 'zone');
  const stations = new KeyTable();
  return (row) => {
    const [property, zone] = [row.text('property'), row.text('zone')];
    const known = referProperty(row, names);
    sameKey(row, [keyPart(property), keyPart(zone)]);
    bothOrNeither(row, ['controller', 'controller'], ['station', 'station']);
    if (known) {
      stationCheck(row, names, stations);
      meterCheck(row, names);
    }
    flowCheck(row);
    nameOrReject(row, names, 'zone', () => names.zone.add(property ?? '', zone ?? '', { property: property ?? '', zone: zone ?? '' }));
  };
}

/** The station must exist on the controller, and waters one zone only. */
function stationCheck(row: DraftRow, names: Names, stations: KeyTable): void {
  if (row.text('controller') === null) return;
  const controller = referController(row, names);
  const station = row.number('station');
  if (!controller || station === null) return;
  if (station > controller.thing.stations) {
    row.refuse('STATION_BEYOND_CONTROLLER', { column: 'station', found: String(station), expected: String(controller.thing.stations) });
    return;
  }
  const otherLine = stations.firstSeen(keyOf(controller.property, row.text('controller'), station), row.line);
  if (otherLine !== null) row.refuse('STATION_TAKEN', { column: 'station', found: String(station), otherLine });
}

/** `none` is no meter; blank is the property's only one. */
function meterCheck(row: DraftRow, names: Names): void {
  const meter = row.text('meter');
  if (meter !== null && meter !== 'none') referMeter(row, names);
}

function flowCheck(row: DraftRow): void {
  const [flow, rate, area] = [row.number('flowLPerMin'), row.number('precipMmPerH'), row.number('areaM2')];
  if (flow === null || rate === null || area === null) return;
  if (flowAgreesWithRate(litresPerMinute(flow), millimetresPerHour(rate), squareMetres(area))) return;
  const derived = flowFromPrecipitationRate(millimetresPerHour(rate), squareMetres(area));
  const gpm = gallonsPerMinuteFromLitresPerMinute(derived);
  row.warn('FLOW_DISAGREES', { column: 'flow_gpm', found: `${row.found('flow_gpm')} gpm`, expected: `${gpm.toFixed(1)} gpm` });
}
