import { useMemo } from 'react';
import { useIntl } from 'react-intl';
import { useNavigate } from 'react-router';
import { paths } from '../../../page/paths.js';
import { GaugeKey } from '../../../ui/gauge/GaugeKey.js';
import type { MapPlace } from '../../../ui/maps/layout.js';
import { MapKey, SiteMap } from '../../../ui/maps/SiteMap.js';
import { groupedRows, markOf, type PortfolioRow } from './portfolio-groups.js';

interface Props {
  readonly rows: readonly PortfolioRow[];
  readonly month: string;
}

/** The same list on a map, and how its marks are read. */
export function PortfolioAside({ rows, month }: Props) {
  const intl = useIntl();
  const navigate = useNavigate();
  const places = useMemo(() => placesOf(rows), [rows]);
  return (
    <aside className="beside" aria-label={intl.formatMessage({ id: 'overview.map' })}>
      <SiteMap places={places} withoutPosition={rows.length - places.length} onChoose={(id) => void navigate(paths.property(id, month))} />
      <MapKey />
      <GaugeKey />
    </aside>
  );
}

function placesOf(rows: readonly PortfolioRow[]): MapPlace[] {
  const ranks = new Map(groupedRows(rows).over.map(({ property }, at) => [property.id, at + 1]));
  const most = Math.max(1, ...rows.map(({ account }) => account?.aboveNeed.litres ?? 0));
  return rows.flatMap((row) => {
    const { id, name, latitude, longitude } = row.property;
    if (typeof latitude !== 'number' || typeof longitude !== 'number') return [];
    return [
      {
        id,
        name,
        latitude,
        longitude,
        rank: ranks.get(id) ?? null,
        mark: markOf(row),
        weight: Math.max(0, row.account?.aboveNeed.litres ?? 0) / most,
      },
    ];
  });
}
