const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

/** Whether a text is a UUID: anything else names no row. */
export const isUuid = (text: string): boolean => UUID.test(text);
