import type { Citation } from '../evidence/citation.js';

/** Where the published figures come from that stand beside a team's own. */

export const STONE_2021: Citation = {
  id: 'stone-2021',
  text: 'Stone PW and others 2021, ERJ Open Res 7:00509-2020 (abstract)',
  doi: '10.1183/23120541.00509-2020',
  status: 'retrieved',
};

export const BOUTOU_2014: Citation = {
  id: 'boutou-2014',
  text: 'Boutou AK and others 2014, BMJ Open Respir Res 1:e000051 (eight London centres, n = 787; abstract)',
  doi: '10.1136/bmjresp-2014-000051',
  status: 'retrieved',
};

export const NATIONAL_REPORT_2016: Citation = {
  id: 'national-report-2016',
  text: 'Report of 2016 on rehabilitation services of England and Wales in 2015, as a news summary of a professional society quotes it',
  doi: null,
  status: 'retrieved-indirect',
};

export const LEICESTER_2023: Citation = {
  id: 'ers-leicester-2023',
  text: 'European Respiratory Society congress abstract on rehabilitation across ethnic groups, Leicester 2022 to 2023',
  doi: null,
  status: 'retrieved',
};

export const BONDARENKO_2024: Citation = {
  id: 'bondarenko-2024',
  text: 'Bondarenko J and others 2024, Chron Respir Dis 21 (review of responders, 49 trials; abstract)',
  doi: '10.1177/14799731241277808',
  status: 'retrieved',
};
