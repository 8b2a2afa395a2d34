import { britishDate } from '../../domain/calendar/british-date.js';
import type { TimelineEvent } from '../../domain/pathway/timeline.js';

/** The course as a line of dated events, left to right; on a narrow screen from top to bottom. */
export function CourseLine({ timeline }: { readonly timeline: readonly TimelineEvent[] }): JSX.Element {
  return (
    <section>
      <h2>Course</h2>
      <ol class="course">
        {timeline.map(({ on, words, isPlanned }) => (
          <li class={isPlanned ? 'planned' : undefined}>
            <time datetime={on} safe>
              {britishDate(on)}
            </time>
            <span safe>{words}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}
