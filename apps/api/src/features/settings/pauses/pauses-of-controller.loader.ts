import { defineLoader } from '../../../platform/graphql/loader.js';
import type { RainPauseRow } from './rain-pause.entity.js';
import { pauses } from './rain-pause.repository.js';

/** A controller's rain pauses, the newest first. */
export const pausesOfController = defineLoader<string, RainPauseRow[]>((tx, ids) => pauses.ofControllers(tx, ids), []);
