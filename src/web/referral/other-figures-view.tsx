import { periodWords } from '../../domain/calendar/period-words.js';
import type { OpenedReferral } from '../../usecases/referrals/open-referral.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';
import { spokenName } from '../people/names.js';
import { FigureTable, isOtherThatCounts } from './figures-section.js';
import type { FiguresShown } from './figures-section.js';

interface OtherFiguresViewProps {
  readonly frame: Frame;
  readonly opened: OpenedReferral;
  readonly figures: FiguresShown;
}

/** Every figure of a quarter that counts a referral, or may come to; the table of indicators stands on its own page. */
export function OtherFiguresView({ frame, opened, figures }: OtherFiguresViewProps): JSX.Element {
  const title = `Other figures of ${periodWords(figures.period)}`;
  return (
    <Page frame={frame} title={title}>
      <p class="crumb">
        <a href={`/referrals/${opened.referral.id}`} safe>
          {spokenName(opened.patient)}
        </a>
      </p>
      <h1 safe>{title}</h1>
      <FigureTable
        caption="How this person counts in each, and why, as things stand today"
        figures={figures.figures.filter(isOtherThatCounts)}
      />
    </Page>
  );
}
