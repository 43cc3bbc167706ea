import { programInWords } from '@rillbook/irrigation/at-the-controller/program-in-words.js';
import type { Program } from '@rillbook/irrigation/settings/settings-fact.js';
import type { KeptProgram } from './kept-program.js';

/** A program in the words that its row keeps. */
export const keepProgram = (program: Program): KeptProgram => programInWords(program);
