import { loadInUse } from '../../../platform/records/kept-rows.js';
import { BackflowAssemblyRow } from './backflow-assembly.entity.js';

/** The backflow assemblies in use of a property. */
export const backflowAssembliesOfProperty = loadInUse(BackflowAssemblyRow, 'propertyId', { name: 'ASC' });
