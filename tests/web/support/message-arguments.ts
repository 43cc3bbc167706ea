/** The names of a message's arguments, also within its branches; a branch's own words are none. */
export function argumentsOf(message: string): readonly string[] {
  const names = new Set<string>();
  let at = 0;
  const skip = (pattern: RegExp): string => {
    const found = new RegExp(pattern.source, 'y');
    found.lastIndex = at;
    const text = found.exec(message)?.[0] ?? '';
    at += text.length;
    return text.trim();
  };
  const branches = (): void => {
    while (skip(/\s*[^\s{}]+\s*/) && message[at] === '{') {
      at += 1;
      words();
    }
    at += 1;
  };
  const argument = (): void => {
    names.add(skip(/[^,}]+/));
    const isPlain = message[at] !== ',';
    if (!isPlain) skip(/,[^,}]+/);
    at += 1;
    if (!isPlain && message[at - 1] === ',') branches();
  };
  const words = (): void => {
    while (at < message.length && message[at] !== '}') {
      at += 1;
      if (message[at - 1] === '{') argument();
    }
    at += 1;
  };
  while (at < message.length) words();
  return [...names].sort();
}
