import { readsFigures } from '../../auth/access.js';
import type { Actor, Context } from '../context.js';

/** What somebody has entered who reads figures: to be left once they are read. */
export type AtTheGate =
  | { readonly kind: 'in'; readonly leave: () => void }
  | { readonly kind: 'shut' }
  | { readonly kind: 'no-gate' };

/** Lets somebody into an operation or a page; into figures only while no sheet of the team is half in. */
export function atTheGate(context: Context, actor: Actor, id: string): AtTheGate {
  if (actor.role === 'commissioner' || !readsFigures(id)) return { kind: 'no-gate' };
  const leave = context.trials.figuresGate.enter(actor.teamId);
  return leave === null ? { kind: 'shut' } : { kind: 'in', leave };
}
