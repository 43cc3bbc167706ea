/** Files of a world with so many rows of weather, readings and usage together. */
export function world(wish: { rows: number; meters?: number }): Record<string, string>;
