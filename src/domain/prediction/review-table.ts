import type { Citation } from '../evidence/citation.js';

/**
 * Cites a paper whose coefficients were read in Table 5 of the ERS/ATS review of field walking tests, not in the paper.
 * The footnotes of that table were not seen, so the coding of sex in it is inferred unless the equation says otherwise.
 *
 * @param id first author and year
 * @param paper authors, journal, year and pages of the paper, with what was and was not read in it
 * @param doi of the paper; null where none was found
 * @source Singh SJ and others 2014, Eur Respir J 44:1447-1478, Table 5, doi 10.1183/09031936.00150414
 * @example readInReviewTable('hill-2011', 'Hill K and others 2011', null).status -> 'retrieved-indirect'
 */
export function readInReviewTable(id: string, paper: string, doi: string | null): Citation {
  return {
    id,
    text: `${paper}; coefficients as printed in Singh SJ and others 2014, Eur Respir J 44:1447, Table 5`,
    doi,
    status: 'retrieved-indirect',
  };
}
