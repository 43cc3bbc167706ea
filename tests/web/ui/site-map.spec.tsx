import { cleanup, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { type MapMark, type MapPlace, mapLayout, projection, scaleBar } from '../../../apps/web/src/ui/maps/layout.js';
import { SiteMap } from '../../../apps/web/src/ui/maps/SiteMap.js';
import { atDesk } from '../support/at-desk.js';

afterEach(cleanup);
const extent = { width: 288, height: 470 };
const place = (more: Partial<MapPlace>): MapPlace => ({
  id: 'a',
  name: 'Quail Commons',
  latitude: 38.9,
  longitude: -104.8,
  rank: 1,
  mark: 'settings',
  ...more,
});

describe('the map', () => {
  it('keeps distances: a mile north and a mile east are as long, at any latitude', () => {
    for (const latitude of [0, 38.9, 62]) {
      const east = 0.02 / Math.cos((latitude * Math.PI) / 180);
      const { x, y } = projection([place({ latitude }), place({ latitude: latitude + 0.02, longitude: -104.8 + east })], extent);
      const [across, up] = [x(-104.8 + east) - x(-104.8), y(latitude) - y(latitude + 0.02)];
      expect(across / up).toBeCloseTo(1, 2);
      expect(up).toBeGreaterThan(0);
    }
  });

  it('knows how long a metre is', () => {
    // One degree of latitude on a sphere of 6,371 km is 111.19 km (mean Earth radius, IUGG; from memory).
    const { metresPerUnit, y } = projection([place({}), place({ latitude: 39.9 })], extent);
    expect((y(38.9) - y(39.9)) * metresPerUnit).toBeCloseTo(111_195, -1);
  });

  it('keeps neighbours across the date line together', () => {
    const { x } = projection([place({ longitude: 179.99 }), place({ longitude: -179.99 })], extent);
    expect(Math.abs(x(-179.99) - x(179.99))).toBeLessThanOrEqual(extent.width);
    expect(x(-179.99)).toBeGreaterThan(x(179.99));
  });

  it('keeps every mark inside, and lets numbers give way rather than meet', () => {
    const marks: MapMark[] = ['unexplained', 'settings', 'under', 'near', 'unknown'];
    const any = fc.array(
      fc.record({
        latitude: fc.double({ min: 38, max: 38.05, noNaN: true }),
        longitude: fc.double({ min: -105, max: -104.95, noNaN: true }),
        mark: fc.constantFrom(...marks),
        weight: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      { minLength: 1, maxLength: 60 },
    );
    fc.assert(
      fc.property(any, (spots) => {
        const layout = mapLayout(
          spots.map((spot, index) => place({ ...spot, id: String(index), rank: index < 20 ? index + 1 : null })),
          extent,
        );
        const labels = layout.flatMap(({ label, place: { rank } }) =>
          label ? [{ left: label.x, right: label.x + String(rank).length * 8, top: label.y - 9, bottom: label.y + 2 }] : [],
        );
        for (const { x, y, half } of layout)
          expect(x - half >= 0 && x + half <= extent.width && y - half >= 0 && y + half <= extent.height).toBe(true);
        const meets = (one: (typeof labels)[0], other: (typeof labels)[0]) =>
          one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
        expect(labels.some((one, at) => labels.slice(at + 1).some((other) => meets(one, other)))).toBe(false);
        expect(layout.find(({ place: { rank } }) => rank === null)?.label ?? null).toBeNull();
      }),
      { numRuns: 60 },
    );
  });

  it('has a bar of a round length that is not longer than a third of it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 5000, noNaN: true }), (metresPerUnit) => {
        const bar = scaleBar(metresPerUnit, 288, 1609.344, 0.3048);
        expect(bar.metres / metresPerUnit).toBeLessThanOrEqual(96.001);
        expect(bar.metres / metresPerUnit).toBeGreaterThan(96 / 2.6);
        expect(String(bar.count)).toMatch(/^(0\.)?0*[125]0*$/);
      }),
    );
  });
});

describe('the map’s marks', () => {
  it('are one stop for the keyboard; arrows walk the list and Enter chooses', async () => {
    const chosen: string[] = [];
    const places = [
      place({ id: 'b', name: 'Old Mill Shops', rank: 2, mark: 'unexplained', latitude: 38.95 }),
      place({}),
      place({ id: 'c', name: 'Alder Row', rank: null, mark: 'near', longitude: -104.7 }),
    ];
    atDesk(<SiteMap places={places} withoutPosition={1} onChoose={(id) => chosen.push(id)} />);
    expect(screen.getByRole('group', { name: 'Where the properties lie: 3 places' })).toBeTruthy();
    expect(screen.getByText('One property has no position and is not on the map.')).toBeTruthy();
    await userEvent.tab();
    expect(document.activeElement?.getAttribute('aria-label')).toBe('1. Quail Commons: above need, mostly settings');
    await userEvent.keyboard('{ArrowDown}');
    expect(document.activeElement?.getAttribute('aria-label')).toBe('2. Old Mill Shops: above need, mostly unexplained');
    await userEvent.keyboard('{Enter}{End}{Enter}');
    expect(chosen).toEqual(['b', 'c']);
    await userEvent.tab();
    expect(document.activeElement).toBe(document.body);
  });

  it('are told apart by shape and fill, not by colour alone', () => {
    const marks: MapMark[] = ['unexplained', 'settings', 'under', 'near', 'unknown'];
    atDesk(
      <SiteMap
        places={marks.map((mark, index) => place({ id: mark, mark, rank: index + 1, latitude: 38.9 + index / 100 }))}
        onChoose={() => {}}
      />,
    );
    const shapes = marks.map((mark) => {
      const shape = document.querySelector(`[data-mark=${mark}]`) as Element;
      const outline = (shape.getAttribute('d') ?? 'circle').replace(/[\d.\s]+/g, '');
      return `${shape.nodeName} ${outline} ${shape.getAttribute('fill') === 'var(--paper)' ? 'open' : 'filled'}`;
    });
    expect(new Set(shapes).size).toBe(5);
  });
});
