/** Advance widths of Public Sans with tabular figures, in thousandths of the type size, measured from the font itself. */
const CHARACTERS =
  ' !"#$%&\'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~áéíóúüñÁÉÍÓÚÜÑ¿¡±·²³°€£×–—−’‘“”…';
const REGULAR = [
  243, 251, 426, 603, 700, 904, 709, 248, 303, 309, 394, 555, 300, 378, 300, 351, 700, 700, 700, 700, 700, 700, 700, 700, 700, 700, 226,
  240, 546, 555, 546, 521, 831, 715, 675, 689, 694, 625, 594, 733, 766, 283, 389, 682, 578, 886, 754, 733, 637, 747, 677, 674, 608, 701,
  679, 960, 714, 630, 645, 303, 351, 303, 473, 544, 219, 553, 597, 543, 597, 567, 384, 617, 577, 252, 263, 562, 296, 865, 577, 566, 596,
  596, 391, 506, 365, 581, 511, 786, 560, 541, 486, 328, 263, 332, 568, 553, 567, 246, 566, 581, 581, 577, 715, 625, 283, 733, 701, 701,
  754, 518, 252, 555, 256, 367, 402, 463, 700, 700, 540, 555, 1117, 555, 232, 240, 419, 411, 794,
];
const BOLD = [
  226, 282, 480, 616, 700, 939, 784, 261, 333, 337, 473, 589, 300, 393, 300, 381, 700, 700, 700, 700, 700, 700, 700, 700, 700, 700, 270,
  279, 578, 589, 578, 535, 828, 736, 692, 718, 720, 637, 614, 759, 770, 308, 402, 717, 578, 918, 782, 758, 653, 770, 696, 697, 633, 724,
  715, 980, 737, 687, 678, 337, 381, 337, 484, 571, 264, 566, 609, 547, 609, 577, 393, 626, 593, 269, 289, 580, 322, 896, 593, 576, 607,
  607, 412, 526, 400, 595, 532, 800, 586, 574, 505, 385, 269, 384, 612, 566, 577, 267, 576, 595, 595, 593, 736, 637, 308, 758, 724, 724,
  782, 544, 283, 589, 277, 392, 425, 474, 700, 700, 577, 593, 1149, 589, 262, 263, 480, 478, 913,
];

const table = (widths: readonly number[]): ReadonlyMap<string, number> =>
  new Map([...CHARACTERS].map((character, place) => [character, widths[place] ?? UNKNOWN]));

/** What a character outside the table is taken for: wider than most, so that a label has room rather than too little. */
const UNKNOWN = 1050;
const NO_BREAK = '\u00a0';
const regular = table(REGULAR);
const bold = table(BOLD);

/** Width of some text at a type size, in the drawing's units. */
export function textWidth(text: string, size: number, isBold = false): number {
  const widths = isBold ? bold : regular;
  let sum = 0;
  for (const character of text) sum += widths.get(character === NO_BREAK ? ' ' : character) ?? UNKNOWN;
  return (sum * size) / 1000;
}
