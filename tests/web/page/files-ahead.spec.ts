import { describe, expect, it } from 'vitest';
import { deskPages, fieldFrame, fieldPages, filesAt, portfolioPage } from '../../../apps/web/src/app/pages.js';

describe('filesAt', () => {
  it('names the page of an address, and around a page of the field the phone', () => {
    expect(filesAt('/')).toEqual([portfolioPage]);
    expect(filesAt('/findings/0198')).toEqual([deskPages['/findings/:id?']]);
    expect(filesAt('/findings/week')).toEqual([deskPages['/findings/week']]);
    expect(filesAt('/setup/clients')).toEqual([deskPages['/setup/*']]);
    expect(filesAt('/today/0198')).toEqual([fieldPages['/today/:stopId'], fieldFrame]);
    expect(filesAt('/today/phone')).toEqual([fieldPages['/today/phone'], fieldFrame]);
  });

  it('names none for an address that never was', () => {
    expect(filesAt('/nowhere/at/all')).toEqual([]);
  });
});
