/** The names of colours as the style sheet defines them for every theme, and their light values for paper. */
export const paperColours = {
  paper: '#ffffff',
  ink: '#1b1f1d',
  'ink-2': '#47525c',
  'rule-2': '#85847a',
  'water-tint': '#d5e6ea',
  water: '#0b5c7a',
  clay: '#a8461f',
  amber: '#8a5a00',
  slate: '#54606b',
} as const;

export type ColourName = keyof typeof paperColours;

/** A colour that follows the person's theme. */
export const themed = (name: ColourName): string => `var(--${name})`;

/** A colour as it is printed. */
export const printed = (name: ColourName): string => paperColours[name];
