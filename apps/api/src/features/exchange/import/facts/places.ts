import type { ImportTarget } from '../directory/file-merge.js';

/** The meter that a row names in its property. */
export function meterIdOf({ directory }: ImportTarget, row: { readonly property: string; readonly meter: string }): string {
  return directory.meters.known(row.meter, directory.properties.known(row.property));
}

/** The controller that a row names in its property. */
export function controllerIdOf({ directory }: ImportTarget, row: { readonly property: string; readonly controller: string }): string {
  return directory.controllers.known(row.controller, directory.properties.known(row.property));
}

/** The accounts of the meters' properties no longer stand. */
export function touchMeters({ directory, touched }: ImportTarget, rows: readonly { readonly meterId: string }[]): void {
  for (const { meterId } of rows) touched.properties.add(directory.meters.ownerOf(meterId));
}

/** The accounts of the controllers' properties no longer stand. */
export function touchControllers({ directory, touched }: ImportTarget, rows: readonly { readonly controllerId: string }[]): void {
  for (const { controllerId } of rows) touched.properties.add(directory.controllers.ownerOf(controllerId));
}
