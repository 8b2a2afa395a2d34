import type { Citation } from '../../evidence/citation.js';
import type { SafetyItem, SafetyList } from '../safety-list.js';
import {
  ATS_2002_SIGNS,
  COMMUNITY_CHECKLIST_2016,
  HOLLAND_2014_BODY,
  HOLLAND_2014_TABLE_7,
} from '../safety-sources.js';

const AFZAL_2018: Citation = {
  id: 'afzal-2018',
  text: 'Afzal S and others 2018, Arch Phys Med Rehabil, audit of the recommendation to stop below 80 % (abstract read)',
  doi: '10.1016/j.apmr.2018.07.426',
  status: 'retrieved',
};

/** When a walk test is stopped. */
export const STOP_RULES: SafetyList = {
  id: 'stop-rules',
  title: 'When to stop a walk test',
  stage: 'during-a-test',
  items: [
    rule(
      'stop-saturation-below-80',
      'Stop when SpO2 falls below 80 %',
      AFZAL_2018,
      'The evidence is thin: of 549 people (672 tests that were not stopped) 60 fell below 80 % and none came to harm. ' +
        'Record the lowest value either way.',
    ),
    rule('resume-at-saturation-85', 'The person may walk on once SpO2 is 85 % or more', HOLLAND_2014_BODY),
    sign('stop-chest-pain', 'Chest pain', [COMMUNITY_CHECKLIST_2016]),
    sign('stop-intolerable-breathlessness', 'Breathlessness that cannot be borne'),
    sign('stop-leg-cramps', 'Cramps in the legs'),
    sign('stop-staggering', 'Staggering'),
    sign('stop-sweating', 'Heavy sweating'),
    sign('stop-pale-or-ashen', 'A pale or ashen look'),
    rule(
      'iswt-ends-when-too-breathless',
      'ISWT: it ends when the person is too breathless to keep the speed',
      HOLLAND_2014_TABLE_7,
    ),
    rule(
      'iswt-ends-when-pace-is-lost',
      'ISWT: it ends when the person can no longer keep the pace of the bleeps',
      HOLLAND_2014_TABLE_7,
    ),
    rule(
      'iswt-ends-when-short-of-cone-twice',
      'ISWT: the operator ends it when the person is more than 0.5 m short of the cone at a bleep for the second time',
      HOLLAND_2014_BODY,
    ),
  ],
};

function rule(id: string, text: string, citation: Citation, note: string | null = null): SafetyItem {
  return { id, text, strength: null, canBeFound: false, note, citation, furtherSources: [] };
}

function sign(id: string, text: string, furtherSources: readonly Citation[] = []): SafetyItem {
  return {
    id,
    text,
    strength: null,
    canBeFound: true,
    note: null,
    citation: ATS_2002_SIGNS,
    furtherSources,
  };
}
