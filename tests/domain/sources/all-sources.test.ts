import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { evidenceMark } from '../../../src/domain/evidence/citation.js';
import type { EvidenceStatus } from '../../../src/domain/evidence/citation.js';
import { allSources, citationUses } from '../../../src/domain/sources/all-sources.js';

const STATUSES: Readonly<Record<EvidenceStatus, true>> = {
  retrieved: true,
  'retrieved-indirect': true,
  'value-from-memory': true,
  'from-memory': true,
  'common-practice': true,
  derived: true,
};

const sources = allSources();
const ids = sources.map(({ citation }) => citation.id);

describe('the list of sources', () => {
  it('names one source by one id: the same words, DOI and status wherever it is cited', () => {
    const known = new Map<string, string>();
    for (const { citation, use } of citationUses()) {
      const { id, text, doi, status } = citation;
      const words = JSON.stringify([text, doi, status]);
      expect(known.get(id) ?? words, `${id}, ${use}`).toBe(words);
      known.set(id, words);
    }
  });

  it('gives every source words, a known status and a mark unless it was read', () => {
    for (const { citation } of sources) {
      expect(citation.text.length, citation.id).toBeGreaterThan(9);
      expect(Object.keys(STATUSES), citation.id).toContain(citation.status);
      expect(evidenceMark(citation.status) === null, citation.id).toBe(citation.status === 'retrieved');
    }
  });

  it('holds each source once, sorted by id', () => {
    expect(ids).toEqual([...new Set(ids)].sort());
  });

  it('says what rests on each source, once each, sorted', () => {
    for (const { citation, usedBy } of sources) {
      expect(usedBy.length, citation.id).toBeGreaterThan(0);
      expect(usedBy, citation.id).toEqual([...new Set(usedBy)].sort());
    }
  });

  it('says for readers what rests on each source, without an id but that of a rule, which figures print', () => {
    for (const { citation, usedFor } of sources) {
      expect(usedFor.length, citation.id).toBeGreaterThan(0);
      for (const words of usedFor.filter((each) => !each.startsWith('rule ')))
        expect(words, citation.id).not.toMatch(/[a-z]+(?:-[a-z]+){2,}-\d{4}|[a-z]-total/);
    }
    const words = (id: string) => sources.find(({ citation }) => citation.id === id)?.usedFor;
    expect(words('singh-2008')).toContain('MID: Incremental shuttle walk distance');
    expect(words('enright-sherrill-1998')).toContain('prediction equation Enright Sherrill 1998');
    expect(words('phq-9-item-9')).toEqual(['prompt: item 9 of the PHQ-9']);
  });

  it.each([
    ['singh-2008', 'threshold iswd-singh-2008'],
    ['houben-2018', 'limits of cat-total'],
    ['hads-bands', 'bands hads-anxiety-three-bands'],
    ['bell-2016', 'missing items of hospital-anxiety-and-depression-scale'],
    ['hads-licence', 'terms of use of hospital-anxiety-and-depression-scale'],
    ['devlin-2018', 'limits of the forms of eq-5d-5l'],
    ['guralnik-1994', 'scoring of short-physical-performance-battery'],
    ['kroenke-2001', 'prompt phq-9-case-range'],
    ['phq-9-item-9', 'prompt phq-9-item-9'],
    ['enright-sherrill-1998', 'equation enright-sherrill-1998'],
    ['enright-sherrill-1998-lower-limit', 'lower limit of equation enright-sherrill-1998'],
    ['strassmann-2013-table', 'norm strassmann-2013'],
    ['singh-1992', 'levels of the incremental-shuttle-walk'],
    ['hill-2012', 'speed of the endurance-shuttle-walk'],
    ['singh-1994', 'estimate of peak-oxygen-uptake'],
    ['celli-2004-bode', 'index bode'],
    ['rcp-services-2017', 'rule started-within-90-days@1'],
    ['boutou-2014', 'rule completion/sessions-and-assessment@1'],
    ['holland-2014-table-4', 'checklist item unstable-angina'],
    ['community-checklist-2016', 'checklist item stop-chest-pain'],
    ['ats-2002-resting-limits', 'resting limit resting-systolic-above-180'],
    ['perez-2019', 'desaturation fall-4-and-below-90'],
    ['course-length-practice', 'caution course-length-not-usual'],
  ])('%s stands for: %s', (id, use) => {
    expect(sources.find(({ citation }) => citation.id === id)?.usedBy).toContain(use);
  });

  it('leaves out no source that a definition writes down', () => {
    const written = domainFiles('src/domain').flatMap(citationIdsIn);
    expect(written.length).toBeGreaterThan(150);
    // By a literal with a template in it, and by each of the helpers.
    expect(written).toEqual(
      expect.arrayContaining(['holland-2014-table-4', 'eswt-range', 'handgrip-range', 'hill-2011']),
    );
    expect(written.filter((id) => !ids.includes(id))).toEqual([]);
  });
});

/** Ids of the citations written in a file: as a literal with words and a status, or by one of the helpers. */
function citationIdsIn(file: string): readonly string[] {
  const text = readFileSync(file, 'utf8').replaceAll(/^\s*(?:\/?\*|\/\/).*$/gm, '');
  const literals = text.matchAll(/\bid: '([a-z0-9-]+)',\s*text:[\s\S]{1,500}?\bstatus: '/g);
  const helped = text.matchAll(/\b(?:commonPractice|fromMemory|readInReviewTable)\(\s*'([a-z0-9-]+)'/g);
  return [...literals, ...helped].map((match) => match[1] ?? '');
}

function domainFiles(folder: string): readonly string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return domainFiles(path);
    return entry.name.endsWith('.ts') ? [path] : [];
  });
}
