import type { Dimension, Group } from '../cohort/dimensions.js';
import { findFigureRule } from './figure-rules.js';
import type { FigureRule } from './indicator.js';
import { leftOut } from './judge.js';

/**
 * The rule of a figure within one group: everybody else is left out, and counted as such.
 *
 * @example groupedRule(uptake, sex, female).id -> 'uptake.by-sex.female'
 */
export function groupedRule(rule: FigureRule, dimension: Dimension, group: Group): FigureRule {
  return {
    ...rule,
    id: `${rule.id}.by-${dimension.id}.${group.id}`,
    title: `${rule.title}: ${dimension.title}, ${group.words}`,
    judge: (course, context) =>
      dimension.groupOf(course.facts) === group.id
        ? rule.judge(course, context)
        : leftOut('another-group', 'In another group'),
  };
}

/**
 * The rule of a figure within a group by its id.
 *
 * @returns undefined where there is no such figure, dimension or group
 */
export function findGroupedRule(figureId: string, dimensions: readonly Dimension[]): FigureRule | undefined {
  const [, base = '', dimensionId, groupId] = /^(.+)\.by-([a-z-]+)\.([^.]+)$/.exec(figureId) ?? [];
  const rule = findFigureRule(base);
  const dimension = dimensions.find(({ id }) => id === dimensionId);
  const group = dimension?.groups.find(({ id }) => id === groupId);
  if (rule === undefined || dimension === undefined || group === undefined) return undefined;
  return groupedRule(rule, dimension, group);
}
