import type { Page } from 'playwright-core';
import type { Step } from '../../web/offline/fleet.js';
import type { Harness, Happened } from './harness.js';
import type { KillableProduct } from './server.js';

declare const harness: Harness;

type AtStop = Extract<Step, { what: 'arrive' | 'work' | 'take back' }>;

/** Stops to which the phones of a history come, at which they work, and from which they go again because they were there by mistake. */
export class RealStops {
  /** by stop and phone, what its person was told is kept */
  private readonly said = new Map<string, Pick<Happened, 'isHere' | 'hasWorked'>>();

  constructor(
    private readonly product: KillableProduct,
    private readonly stopIds: readonly string[],
    private readonly zoneId: string,
  ) {}

  async happen(page: Page, at: number, { what, stop }: AtStop, arrivedAt: string): Promise<Happened> {
    const stopId = this.stopIds[stop % this.stopIds.length]!;
    const before = this.said.get(`${stopId} ${at}`) ?? { isHere: false, hasWorked: false };
    const body = { stopId, arrivedAt, zoneId: this.zoneId };
    const happened = await page.evaluate(([done, said, now]) => harness.atStop(done, said, now), [what, body, before] as const);
    const { isHere, hasWorked } = happened;
    this.said.set(`${stopId} ${at}`, { isHere, hasWorked });
    return happened;
  }

  /** A stop is visited exactly where somebody said so last, or did something there; throws where it is not. */
  async judge(): Promise<void> {
    for (const stopId of this.stopIds) {
      const wanted = [...this.said].some(([name, { isHere, hasWorked }]) => name.startsWith(stopId) && (isHere || hasWorked));
      const rows = await this.product.sql<{ stands: boolean }>('select withdrawn_at is null as stands from visit where stop_id = $1', [
        stopId,
      ]);
      if (rows.length > 1) throw new Error(`${rows.length} visits to stop ${stopId}`);
      if ((rows[0]?.stands ?? false) !== wanted)
        throw new Error(`stop ${stopId} is ${wanted ? 'not visited, and was' : 'visited, and was not'}`);
    }
  }
}

interface AtPlace {
  readonly stopId: string;
  readonly visitId: string;
  readonly acknowledged: ReadonlyMap<string, string>;
}

/** What all the deliveries made at the stop of a history: each thing once; throws with what is not. */
export async function judgeEffects(product: KillableProduct, { stopId, visitId, acknowledged }: AtPlace): Promise<void> {
  const visits = await product.sql('select id from visit where stop_id = $1', [stopId]);
  if (visits.length !== 1) throw new Error(`${visits.length} visits were made of one arrival`);
  const notes = await product.sql<{ zone_id: string; count: number }>(
    'select zone_id, count(*)::int as count from zone_note where visit_id = $1 group by zone_id, kind',
    [visitId],
  );
  for (const note of notes) if (note.count !== 1) throw new Error(`zone ${note.zone_id} has ${note.count} notes of one kind`);
  const photos = await product.sql<{ id: string; whole: boolean }>(
    'select id, arrived_at is not null and file_bytes > 0 as whole from photo where visit_id = $1',
    [visitId],
  );
  const wanted = [...acknowledged].filter(([, body]) => body.includes('"takenAt"')).map(([key]) => key);
  const here = new Set(photos.filter(({ whole }) => whole).map(({ id }) => id));
  for (const key of wanted) if (!here.has(key)) throw new Error(`the picture of ${key} is lost`);
  if (photos.length !== wanted.length) throw new Error(`${photos.length} photos of ${wanted.length}`);
}
