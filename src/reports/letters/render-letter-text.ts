import { britishDate } from '../../domain/calendar/british-date.js';
import type { Letter, LetterBlock } from './letter-model.js';

/** A letter as plain text, to be put on the team's own paper. Tables are written line by line, so that no column breaks. */
export function renderLetterText(letter: Letter): string {
  const parts = [letter.title, britishDate(letter.writtenOn), ...letter.blocks.map(blockText)];
  return `${parts.join('\n\n')}\n`;
}

function blockText(block: LetterBlock): string {
  switch (block.kind) {
    case 'heading':
      return block.text;
    case 'paragraph':
      return block.text;
    case 'list':
      return block.items.map((item) => `- ${item}`).join('\n');
    case 'table': {
      const [first = '', ...others] = block.columns;
      const rows = block.rows.map(([head = '', ...cells]) => {
        const lines = cells.map((cell, index) => `  ${others[index] ?? ''}: ${cell}`);
        return [`${first}: ${head}`, ...lines].join('\n');
      });
      return [block.caption, ...rows].join('\n');
    }
    case 'signature':
      return block.lines.map((line) => `${line}: ____________________`).join('\n');
  }
}
