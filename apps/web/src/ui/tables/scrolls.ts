/**
 * Makes a place that really scrolls sideways a stop for the keyboard, with a name; one that does not stays as it is. It is measured with the next
 * frame: asked while a page is put together, the browser would lay out the whole of it once more.
 */
export function scrolls(place: HTMLElement, name: string): void {
  requestAnimationFrame(() => {
    if (place.scrollWidth <= place.clientWidth) return;
    place.tabIndex = 0;
    place.setAttribute('role', 'region');
    place.setAttribute('aria-label', name);
  });
}
