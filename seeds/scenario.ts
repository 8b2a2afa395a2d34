import type { Role } from '../src/domain/account/role.js';

/** Monday is 0, Sunday is 6. */
export type Weekday = 0 | 1 | 2 | 3 | 4 | 5 | 6;

/** What a site measures at both ends, besides CAT, MRC and resting values. */
export interface Battery {
  readonly walkTest: 'incremental-shuttle-walk' | 'six-minute-walk';
  readonly mood: 'hads' | 'phq-9-and-gad-7';
  readonly hasChronicRespiratoryQuestionnaire: boolean;
  /** After the incremental walk, at the speed that it sets. */
  readonly hasEnduranceWalk: boolean;
  readonly physicalTest: 'handgrip-strength' | 'four-metre-gait-speed' | null;
}

export interface SiteScenario {
  readonly name: string;
  /** Weight among the sites of the team. */
  readonly weight: number;
  readonly classDays: readonly [Weekday, Weekday];
  readonly battery: Battery;
}

export interface TeamScenario {
  readonly key: string;
  readonly name: string;
  readonly referralsPerYear: number;
  /** The first site also holds the classes by video. */
  readonly sites: readonly [SiteScenario, ...SiteScenario[]];
  readonly videoClassDays: readonly [Weekday, Weekday] | null;
  /** Supervised sessions of a programme with two classes a week. */
  readonly plannedSessions: number;
  readonly plannedWeeks: number;
  /** Written on each referral; where not, the team's setting of 12 sessions in 6 weeks applies. */
  readonly isPlanWrittenOnReferral: boolean;
  readonly commissionerWeights: readonly (readonly [string | null, number])[];
  readonly staff: Readonly<Record<Exclude<Role, 'commissioner'>, string>>;
  /** Sees the people of some sites in the place of the clinician of the team; null where there is nobody else. */
  readonly secondClinician: { readonly name: string; readonly siteNames: readonly string[] } | null;
}

export interface CommissionerScenario {
  readonly key: string;
  readonly name: string;
  readonly teamKeys: readonly string[];
  readonly reader: string;
}

/** Marram Coast and its neighbour: places, organisations and people are all invented. */
export const TEAMS: readonly TeamScenario[] = [
  {
    key: 'marram-coast',
    name: 'Marram Coast PR team',
    referralsPerYear: 400,
    sites: [
      {
        name: 'Dune Hall',
        weight: 45,
        classDays: [0, 3],
        battery: {
          walkTest: 'incremental-shuttle-walk',
          mood: 'hads',
          hasChronicRespiratoryQuestionnaire: false,
          hasEnduranceWalk: true,
          physicalTest: null,
        },
      },
      {
        name: 'Saltmarsh Centre',
        weight: 33,
        classDays: [1, 4],
        battery: {
          walkTest: 'incremental-shuttle-walk',
          mood: 'phq-9-and-gad-7',
          hasChronicRespiratoryQuestionnaire: false,
          hasEnduranceWalk: false,
          physicalTest: 'handgrip-strength',
        },
      },
      {
        name: 'Old Beacon Rooms',
        weight: 22,
        classDays: [0, 2],
        battery: {
          walkTest: 'six-minute-walk',
          mood: 'hads',
          hasChronicRespiratoryQuestionnaire: true,
          hasEnduranceWalk: false,
          physicalTest: 'four-metre-gait-speed',
        },
      },
    ],
    videoClassDays: [1, 3],
    plannedSessions: 12,
    plannedWeeks: 6,
    isPlanWrittenOnReferral: false,
    commissionerWeights: [
      ['shingle-and-dune', 68],
      ['eelgrass-lagoon', 28],
      [null, 4],
    ],
    staff: { admin: 'Thrift Dunlin', clinician: 'Samphire Whimbrel', lead: 'Heather Turnstone' },
    secondClinician: { name: 'Marigold Knot', siteNames: ['Saltmarsh Centre'] },
  },
  {
    key: 'eelgrass-lagoon',
    name: 'Eelgrass Lagoon PR team',
    referralsPerYear: 100,
    sites: [
      {
        name: 'Cordgrass Rooms',
        weight: 1,
        classDays: [2, 4],
        battery: {
          walkTest: 'incremental-shuttle-walk',
          mood: 'hads',
          hasChronicRespiratoryQuestionnaire: true,
          hasEnduranceWalk: false,
          physicalTest: null,
        },
      },
    ],
    videoClassDays: null,
    plannedSessions: 16,
    plannedWeeks: 8,
    isPlanWrittenOnReferral: true,
    commissionerWeights: [
      ['eelgrass-lagoon', 96],
      [null, 4],
    ],
    staff: { admin: 'Linnet Saltwort', clinician: 'Campion Avocet', lead: 'Rowan Oystercatcher' },
    secondClinician: null,
  },
];

export const COMMISSIONERS: readonly CommissionerScenario[] = [
  {
    key: 'shingle-and-dune',
    name: 'Shingle and Dune Commissioning',
    teamKeys: ['marram-coast'],
    reader: 'Bryony Sanderling',
  },
  {
    key: 'eelgrass-lagoon',
    name: 'Eelgrass Lagoon Commissioning',
    teamKeys: ['marram-coast', 'eelgrass-lagoon'],
    reader: 'Tansy Fulmar',
  },
];
