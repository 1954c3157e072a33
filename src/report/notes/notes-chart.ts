import type { Chart } from '../charts/draw-svg.ts';
import { markup, type Piece, say } from './piece.ts';

/** A chart with its place in the folder and in the notes. */
export interface NotesChart {
  readonly path: string;
  /** The group of analytes it belongs to, or the part of the notes. */
  readonly section: string;
  readonly svg: string;
  /** The picture with its text alternative. */
  readonly image: Piece;
}

export function noted(path: string, section: string, chart: Chart, alternative: Piece): NotesChart {
  return { path, section, svg: chart.svg, image: say`![${alternative}](${markup(path)})` };
}

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';

/** `-b`, `-c` behind the name of a further chart of one kind; nothing behind the first. */
export function suffix(index: number): string {
  if (index === 0) return '';
  const letters = [...index.toString(26)].map((digit) => LETTERS[Number.parseInt(digit, 26)]);
  return `-${letters.join('')}`;
}
