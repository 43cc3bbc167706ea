/** Makes a place that really scrolls sideways a stop for the keyboard, with a name; one that does not stays as it is. */
export function scrolls(place: HTMLElement, name: string): void {
  if (place.scrollWidth <= place.clientWidth) return;
  place.tabIndex = 0;
  place.setAttribute('role', 'region');
  place.setAttribute('aria-label', name);
}
