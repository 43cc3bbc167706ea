import { viewerOf } from '../support/draw-page.js';

const usual = viewerOf();

/** The owner of an invented organization, who has every page of Setup. */
export const ownerOf = (organization: Partial<(typeof usual)['organization']> = {}) =>
  viewerOf({
    role: 'owner',
    permissions: [...usual.permissions, 'import and export', 'manage members', 'manage organization'],
    organization: { ...usual.organization, ...organization },
  });
