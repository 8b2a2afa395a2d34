import type { Block, Document, Link, Section } from '../../documents/document-model.js';
import { attributeText } from '../components/field.js';
import { Figure } from '../components/parts.js';
import { FiguresTable } from './figures-table.js';

/** Where links of the document, and its parts, stand. */
export interface Addresses {
  readonly ofLink: (link: Link) => string;
  /** Left out where a document has no parts. */
  readonly ofPart?: (partId: string) => string;
}

interface DocumentViewProps {
  readonly document: Document;
  readonly addressOf: Addresses['ofLink'];
}

/** A document without parts on one page: its sections, with a list of contents. */
export function DocumentView({ document: { sections }, addressOf }: DocumentViewProps): JSX.Element {
  return (
    <>
      <Contents entries={sections.map(({ id, title }) => ({ title, to: `#${id}` }))} />
      {sections.map((section) => (
        <SectionView section={section} addresses={{ ofLink: addressOf }} />
      ))}
    </>
  );
}

interface ContentsProps {
  readonly entries: readonly { readonly title: string; readonly to: string }[];
}

/** A list of contents, without numbers, as headings have none: which sections a report has depends on what was asked for. */
export function Contents({ entries }: ContentsProps): JSX.Element {
  return (
    <nav class="contents" aria-label="Contents">
      <ul>
        {entries.map(({ title, to }) => (
          <li>
            <a href={attributeText(to)} safe>
              {title}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** A section with its heading. */
export function SectionView({
  section: { id, title, blocks },
  addresses,
}: {
  readonly section: Section;
  readonly addresses: Addresses;
}): JSX.Element {
  return (
    <section aria-labelledby={id}>
      <h2 id={id} safe>
        {title}
      </h2>
      <Blocks blocks={blocks} addresses={addresses} />
    </section>
  );
}

/** What a section or a part consists of; its parts as a list of ways to them, after everything else. */
export function Blocks({
  blocks,
  addresses,
}: {
  readonly blocks: readonly Block[];
  readonly addresses: Addresses;
}): JSX.Element {
  const { ofLink, ofPart } = addresses;
  const parts = blocks.filter((block) => block.kind === 'part');
  return (
    <>
      {blocks.map((block) => (
        <BlockView block={block} addressOf={ofLink} />
      ))}
      {parts.length === 0 || ofPart === undefined ? (
        ''
      ) : (
        <ul>
          {parts.map(({ id, title }) => (
            <li>
              <a href={attributeText(ofPart(id))} safe>
                {title}
              </a>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

interface BlockViewProps {
  readonly block: Block;
  readonly addressOf: Addresses['ofLink'];
}

function BlockView({ block, addressOf }: BlockViewProps): JSX.Element {
  switch (block.kind) {
    case 'heading':
      return <h3 safe>{block.text}</h3>;
    case 'paragraph':
      return <p safe>{block.text}</p>;
    case 'sentences':
      return (
        <ul class="sentences">
          {block.items.map(({ text, links }) => (
            <li>
              <span safe>{text}</span>
              {links.map(({ words, to }) => (
                <>
                  {' '}
                  <a class="small not-printed" href={attributeText(addressOf(to))} safe>
                    {words}
                  </a>
                </>
              ))}
            </li>
          ))}
        </ul>
      );
    case 'part':
      return '';
    case 'table':
      return <FiguresTable table={block.table} addressOf={addressOf} />;
    case 'plot':
      return (
        <Figure title={block.title} plot={forPage(block.plot.svg)}>
          <FiguresTable table={block.table} addressOf={addressOf} />
        </Figure>
      );
  }
}

/** The drawing without the colours of paper: the style sheet has those of the page by its classes. */
function forPage(svg: string): string {
  return svg.replaceAll(/ (?:fill|stroke)="#[0-9a-f]{6}"/g, '');
}
