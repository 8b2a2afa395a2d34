import { findMeasure } from '../../domain/measures/catalogue.js';
import type { Caution, Outcomes } from '../../reports/outcomes/outcomes-model.js';
import { Notice } from '../components/notice.js';

/** Cautions above everything else: first those that somebody must put a name to. */
export function CautionList({ outcomes }: { readonly outcomes: Outcomes }): JSX.Element {
  const { cautions } = outcomes;
  const open = cautions.filter(
    ({ mustBeAcknowledged, isAcknowledged }) => mustBeAcknowledged && !isAcknowledged,
  );
  const others = cautions.filter((caution) => !open.includes(caution));
  return (
    <>
      {open.length === 0 ? (
        ''
      ) : (
        <Cautions kind="warning" title="Cautions that nobody has acknowledged" cautions={open} />
      )}
      {others.length === 0 ? (
        ''
      ) : (
        <Cautions kind="check" title="Before you use these figures" cautions={others} />
      )}
    </>
  );
}

interface CautionsProps {
  readonly kind: 'warning' | 'check';
  readonly title: string;
  readonly cautions: readonly Caution[];
}

function Cautions({ kind, title, cautions }: CautionsProps): JSX.Element {
  return (
    <Notice kind={kind} title={title}>
      <ul>
        {grouped(cautions).map((words) => (
          <li safe>{words}</li>
        ))}
      </ul>
    </Notice>
  );
}

/** Each text once, with the measures that it belongs to. */
function grouped(cautions: readonly Caution[]): readonly string[] {
  const byText = new Map<string, string[]>();
  for (const { text, measureId, isAcknowledged, mustBeAcknowledged } of cautions) {
    const key = mustBeAcknowledged && isAcknowledged ? `${text} (acknowledged)` : text;
    const name = measureId === null ? null : (findMeasure(measureId)?.shortName ?? measureId);
    const names = byText.get(key) ?? [];
    byText.set(key, name === null || names.includes(name) ? names : [...names, name]);
  }
  return [...byText].map(([text, names]) => (names.length === 0 ? text : `${names.join(', ')}: ${text}`));
}
