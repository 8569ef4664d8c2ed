import { say } from '../../shared-core/words/index.ts';

const HOUSE_FILE_ENDING = '.struckline';
const LONGEST_NAME = 150;

export type FileKind = 'house' | 'document';

/** Of a file, to see whether it begins as a document does. */
export const BEGINNING_BYTES = 64;

/** What a file is by the ending of its name, or a document by how it begins; null where it is nothing that is taken. */
export function kindOfFile(name: string, beginning: string): FileKind | null {
  const lower = name.toLowerCase();
  if (lower.endsWith(HOUSE_FILE_ENDING)) return 'house';
  return lower.endsWith('.json') || beginning.trimStart().startsWith('{') ? 'document' : null;
}

export const FILES_TAKEN = say`Struckline takes house files, which end in .struckline, and house documents, which end in .json.`;

/** The name of a house file as every disk takes it. Example: '.Mill: 3.STRUCKLINE' is 'Mill 3.struckline'. */
export function plainFileName(name: string): string {
  const stem = name.slice(0, -HOUSE_FILE_ENDING.length).replace(/[/\\:*?"<>|\p{Cc}\s]+/gu, ' ').replace(/^[. ]+/, '').slice(0, LONGEST_NAME).trim();
  return `${stem || 'House'}${HOUSE_FILE_ENDING}`;
}
