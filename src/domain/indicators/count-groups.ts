import type { Cohort } from '../cohort/cohorts.js';
import type { Dimension, Group } from '../cohort/dimensions.js';
import { judgeCourse } from './count.js';
import type { Figure } from './figure.js';
import { groupedRule } from './grouped-rule.js';
import type { FigureRule, JudgeContext, Judgement } from './indicator.js';
import { addTo, figureOf, newTally } from './tally.js';
import type { Tally } from './tally.js';

/** A figure within one group. */
export interface GroupFigure {
  readonly group: Group;
  readonly figure: Figure;
}

/** One figure in every group of a dimension in which somebody is, in the order of the dimension. */
export interface DimensionFigures {
  readonly dimension: Dimension;
  readonly groups: readonly GroupFigure[];
}

/**
 * Breaks one figure down by several dimensions. Each referral is judged once, whatever the number of groups.
 *
 * @returns the same figures as counting each `groupedRule` apart
 */
export function countGroups(
  rule: FigureRule,
  dimensions: readonly Dimension[],
  cohort: Cohort,
  context: JudgeContext,
): readonly DimensionFigures[] {
  const counts = dimensions.map((dimension) => ({ dimension, tallies: new Map<string, GroupTally>() }));
  const inError: Judgement[] = [];
  let counted = 0;
  for (const course of cohort.courses) {
    const judgement = judgeCourse(rule, course, context);
    if (course.isRegisteredInError) {
      inError.push(judgement);
      continue;
    }
    counted += 1;
    const { patientId } = course.facts;
    const repeatedPatient = cohort.repeatedPatientIds.has(patientId) ? patientId : null;
    for (const { dimension, tallies } of counts) {
      const tally = tallyOf(tallies, dimension.groupOf(course.facts), rule);
      tally.size += 1;
      addTo(tally.tally, judgement, repeatedPatient);
    }
  }
  return counts.map(({ dimension, tallies }) => ({
    dimension,
    groups: dimension.groups.flatMap((group) => {
      const found = tallies.get(group.id);
      if (found === undefined) return [];
      const { excluded } = found.tally;
      for (const judgement of inError) addTo(found.tally, judgement, null);
      if (counted > found.size) excluded.set('another-group', counted - found.size);
      const { id, title } = groupedRule(rule, dimension, group);
      return [{ group, figure: { ...figureOf(found.tally), id, title } }];
    }),
  }));
}

interface GroupTally {
  readonly tally: Tally;
  /** Referrals of the group, those that the rule leaves out among them. */
  size: number;
}

function tallyOf(tallies: Map<string, GroupTally>, groupId: string, rule: FigureRule): GroupTally {
  const known = tallies.get(groupId);
  if (known !== undefined) return known;
  const fresh = { tally: newTally(rule), size: 0 };
  tallies.set(groupId, fresh);
  return fresh;
}
