import type { MapMark } from './layout.js';

interface Props {
  readonly mark: MapMark;
  readonly x: number;
  readonly y: number;
  readonly half: number;
}

/** Marks differ in shape and in fill, so that they read without colour. */
export function MarkShape({ mark, x, y, half }: Props) {
  switch (mark) {
    case 'unexplained':
      return (
        <path d={triangle(x, y, half)} fill="var(--clay)" stroke="var(--clay)" strokeWidth="2" strokeLinejoin="round" data-mark={mark} />
      );
    case 'settings':
      return (
        <path d={triangle(x, y, half)} fill="var(--paper)" stroke="var(--amber)" strokeWidth="2" strokeLinejoin="round" data-mark={mark} />
      );
    case 'under':
      return (
        <path
          d={`M${x - half} ${y - half * 0.8}h${2 * half}l${-half} ${half * 1.75}z`}
          fill="var(--paper)"
          stroke="var(--water)"
          strokeWidth="2"
          strokeLinejoin="round"
          data-mark={mark}
        />
      );
    case 'near':
      return <circle cx={x} cy={y} r={half} fill="var(--paper)" stroke="var(--ink-2)" strokeWidth="1.5" data-mark={mark} />;
    case 'unknown':
      return (
        <path
          d={`M${x - half} ${y - half}h${2 * half}v${2 * half}h${-2 * half}z`}
          fill="var(--paper)"
          stroke="var(--ink-2)"
          strokeWidth="1.5"
          strokeDasharray="3 2"
          data-mark={mark}
        />
      );
  }
}

const triangle = (x: number, y: number, half: number): string => `M${x} ${y - half * 0.95}l${half} ${half * 1.75}h${-2 * half}z`;
