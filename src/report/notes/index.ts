// Takes: a bench, what the commands gave over it, and the facts behind. Gives: notes as Markdown,
// tables, charts and data, by path. Never computes a reduction or a volume, never writes to disk.
// Imports the folders left of report/ and its neighbours in it.
export { composeNotes } from './compose-notes.ts';
export type { NotesInput, NotesOutcomes } from './notes-input.ts';
