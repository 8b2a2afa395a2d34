import { z } from 'zod';
import { LETTER_KINDS } from '../../reports/letters/letter-model.js';
import type { Letter, LetterBlock } from '../../reports/letters/letter-model.js';
import { renderLetterText } from '../../reports/letters/render-letter-text.js';
import { getLetter } from '../../usecases/letters/get-letter.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { dateShown, idField } from '../schema/fields.js';

const LetterBlockShown = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('heading'), text: z.string() }),
    z.strictObject({ kind: z.literal('paragraph'), text: z.string() }),
    z.strictObject({ kind: z.literal('list'), items: z.array(z.string()) }),
    z.strictObject({
      kind: z.literal('table'),
      caption: z.string(),
      columns: z.array(z.string()),
      rows: z.array(z.array(z.string())),
    }),
    z.strictObject({
      kind: z.literal('signature'),
      lines: z.array(z.string()).describe('To be filled in by hand'),
    }),
  ])
  .meta({ id: 'LetterBlock' });

const LetterShown = z
  .strictObject({
    kind: z.enum(LETTER_KINDS),
    title: z.string(),
    writtenOn: dateShown,
    settingsVersion: z.int(),
    notes: z.array(z.string()).describe('For the clinician who checks the letter; no part of it'),
    blocks: z.array(LetterBlockShown),
    text: z.string().describe('The same as plain text'),
  })
  .meta({ id: 'Letter' });

/** Letters about one person. */
export function letterRoutes(app: App, context: Context): void {
  app.get(
    '/referrals/:referralId/letters/:letter',
    {
      schema: {
        operationId: 'getLetter',
        summary: 'Build a letter about the outcomes of one person',
        description:
          'Built from the record as at today, for the general practice or in plain words for the person; to be checked and signed by a clinician. It gives no advice.',
        tags: ['letters'],
        params: z.strictObject({ referralId: idField, letter: z.enum(LETTER_KINDS) }),
        response: { 200: LetterShown, ...problemResponses(400, 401, 403, 404, 409) },
      },
    },
    async (request, reply) => {
      const { referralId, letter } = request.params;
      const outcome = await getLetter(context, teamMember(request), referralId, letter);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return reply.send(present(outcome.value));
    },
  );
}

function present(letter: Letter): z.output<typeof LetterShown> {
  return {
    kind: letter.kind,
    title: letter.title,
    writtenOn: letter.writtenOn,
    settingsVersion: letter.settingsVersion,
    notes: [...letter.notes],
    blocks: letter.blocks.map(presentBlock),
    text: renderLetterText(letter),
  };
}

function presentBlock(block: LetterBlock): z.output<typeof LetterBlockShown> {
  switch (block.kind) {
    case 'heading':
    case 'paragraph':
      return { kind: block.kind, text: block.text };
    case 'list':
      return { kind: 'list', items: [...block.items] };
    case 'table': {
      const { caption, columns, rows } = block;
      return { kind: 'table', caption, columns: [...columns], rows: rows.map((row) => [...row]) };
    }
    case 'signature':
      return { kind: 'signature', lines: [...block.lines] };
  }
}
