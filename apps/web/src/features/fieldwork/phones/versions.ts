const partsOf = (version: string): readonly number[] => version.split('.').map((part) => Number.parseInt(part, 10) || 0);

/** Whether a version of the pages is older than another; one that nobody told is not judged. */
export function isOlder(version: string | null, present: string): boolean {
  if (!version) return false;
  const [theirs, ours] = [partsOf(version), partsOf(present)];
  const at = ours.findIndex((part, place) => part !== (theirs[place] ?? 0));
  return at >= 0 && (theirs[at] ?? 0) < (ours[at] as number);
}
