/** Whether a key is meant for a box that someone types into, and so for nothing else. */
export const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && (target.isContentEditable || /^(INPUT|SELECT|TEXTAREA)$/.test(target.tagName));

/** Whether Enter or Space already does something where the focus is. */
export const isActing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && /^(A|BUTTON|SUMMARY)$/.test(target.tagName);
