import { loadById } from '../../../platform/records/kept-rows.js';
import { ControllerRow } from './controller.entity.js';

/** The controller of an id, retired ones too; whoever hands out the id answers for the scope. */
export const controllerOfId = loadById(ControllerRow);
