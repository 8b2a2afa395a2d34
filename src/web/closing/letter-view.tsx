import type { Letter, LetterBlock } from '../../reports/letters/letter-model.js';
import { Notice } from '../components/notice.js';
import { Table, Text } from '../components/table.js';
import { britishDate } from '../../domain/calendar/british-date.js';

/** A letter as it will be printed, below what only those who check it are told. */
export function LetterView({ letter }: { readonly letter: Letter }): JSX.Element {
  const id = `letter-${letter.kind}`;
  return (
    <>
      <div class="not-printed">
        <Notice kind="check" title="Check it, then sign it by hand">
          <ul>
            {letter.notes.map((note) => (
              <li safe>{note}</li>
            ))}
          </ul>
        </Notice>
      </div>
      <article class="letter" aria-labelledby={id}>
        <h2 id={id} safe>
          {letter.title}
        </h2>
        <p class="muted" safe>
          {britishDate(letter.writtenOn)}
        </p>
        {letter.blocks.map((block) => (
          <Block block={block} />
        ))}
      </article>
    </>
  );
}

/** An entry as it is set: a true minus sign, and no date broken over two lines. */
function printed(cell: string): string {
  return cell
    .replace(/^-(?=\d)/, '\u2212')
    .replace(/\(\d+ \w+ \d{4}\)/, (date) => date.replaceAll(' ', '\u00a0'));
}

function Block({ block }: { readonly block: LetterBlock }): JSX.Element {
  switch (block.kind) {
    case 'heading':
      return <h3 safe>{block.text}</h3>;
    case 'paragraph':
      return <p safe>{block.text}</p>;
    case 'list':
      return (
        <ul>
          {block.items.map((item) => (
            <li safe>{item}</li>
          ))}
        </ul>
      );
    case 'table':
      return (
        <Table
          caption={block.caption}
          isStacked
          columns={block.columns.map((head) => ({ head }))}
          rows={block.rows.map((row) => row.map((cell) => <Text value={printed(cell)} />))}
        />
      );
    case 'signature':
      return (
        <div class="sign">
          {block.lines.map((line) => (
            <p safe>{line}</p>
          ))}
        </div>
      );
  }
}
